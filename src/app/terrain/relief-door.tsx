import type { Map as MapLibreMap } from "maplibre-gl";
import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { useStore } from "../store-context.ts";

interface ButtonProps {
  readonly map: MapLibreMap;
}

/** Fetches the switch for the relief as soon as there are heights to draw; there is none while the ground counts as flat. */
export function ReliefDoor({ map }: ButtonProps) {
  const [loaded, setLoaded] = useState<{ readonly ReliefButton: ComponentType<ButtonProps> } | null>(null);
  const isWanted = (useStore().shownPlan.value?.ground?.elevation.kind ?? "flat") !== "flat";
  useEffect(() => {
    if (isWanted) import("./relief-button.tsx").then(setLoaded, () => undefined);
  }, [isWanted]);
  return isWanted && loaded ? <loaded.ReliefButton map={map} /> : null;
}
