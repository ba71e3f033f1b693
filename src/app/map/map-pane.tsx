import { useEffect, useRef, useState } from "preact/hooks";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { createMap } from "./create-map.ts";

/** The map and what is written on its edge. */
export function MapPane() {
  const store = useStore();
  const container = useRef<HTMLDivElement>(null);
  const [step_m, setStep] = useState<number | null>(null);
  useEffect(() => {
    if (!container.current) return;
    const made = createMap(container.current, store, setStep);
    return made.remove;
  }, [store]);
  const units = store.units.value;
  return (
    <div class="map-pane">
      <div class="map" ref={container} />
      {step_m !== null && (
        <p class="grid-note">
          Grid {formatQuantity("length", step_m, "metric")}
          {units === "us" && ` (${formatQuantity("length", step_m, "us", 0)})`}
        </p>
      )}
    </div>
  );
}
