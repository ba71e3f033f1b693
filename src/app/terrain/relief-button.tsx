import type { Map as MapLibreMap } from "maplibre-gl";
import { useEffect } from "preact/hooks";
import { useStore } from "../store-context.ts";
import { followWithRelief } from "./follow-with-relief.ts";
import { isRelief, switchRelief } from "./relief-choice.ts";
import { ReliefLayers } from "./relief-layers.ts";
import { startReliefWorker } from "./start-relief-worker.ts";

/** The switch for shading and contours; while it is on they follow the plan. */
export function ReliefButton({ map }: { readonly map: MapLibreMap }) {
  const store = useStore();
  const isOn = isRelief.value;
  useEffect(
    () => (isOn ? followWithRelief(store, new ReliefLayers(map), startReliefWorker) : undefined),
    [isOn, map, store],
  );
  return (
    <button type="button" aria-pressed={isOn} onClick={() => switchRelief(!isOn)}>
      Relief
    </button>
  );
}
