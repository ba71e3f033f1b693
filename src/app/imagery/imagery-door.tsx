import type { Map as MapLibreMap } from "maplibre-gl";
import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { useStore } from "../store-context.ts";
import { keptImagery } from "./kept-imagery.ts";

interface DeskProps {
  readonly map: MapLibreMap;
}

/** Fetches what shows the person's own picture of the ground, when there is one or when one is asked for. */
export function ImageryDoor({ map }: DeskProps) {
  const { drawing } = useStore();
  const [loaded, setLoaded] = useState<{ readonly ImageryDesk: ComponentType<DeskProps> } | null>(null);
  const isWanted = drawing.isImageryOpen.value || keptImagery(location.href) !== null;
  useEffect(() => {
    if (isWanted && !loaded) import("./imagery-desk.tsx").then(setLoaded, () => undefined);
  }, [isWanted, loaded]);
  return loaded && <loaded.ImageryDesk map={map} />;
}
