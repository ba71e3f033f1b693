import { useEffect, useRef, useState } from "preact/hooks";
import { formatQuantity } from "../../core/units.ts";
import { DrawingDoor } from "../drawing/drawing-door.tsx";
import { useStore } from "../store-context.ts";
import { createMap, type PlanMap } from "./create-map.ts";

/** The map and what is written on its edge. */
export function MapPane() {
  const store = useStore();
  const container = useRef<HTMLDivElement>(null);
  const [made, setMade] = useState<PlanMap | null>(null);
  const [step_m, setStep] = useState<number | null>(null);
  useEffect(() => {
    if (!container.current) return;
    const planMap = createMap(container.current, store, setStep);
    setMade(planMap);
    return planMap.remove;
  }, [store]);
  const units = store.units.value;
  return (
    <div class="map-pane">
      <div class="map" ref={container} />
      {made && <DrawingDoor map={made.map} />}
      {step_m !== null && (
        <p class="grid-note">
          Grid {formatQuantity("length", step_m, "metric")}
          {units === "us" && ` (${formatQuantity("length", step_m, "us", 0)})`}
        </p>
      )}
    </div>
  );
}
