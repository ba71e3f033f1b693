import type { Map as MapLibreMap } from "maplibre-gl";
import { lonLat } from "../../core/plane/coordinate.ts";
import { createFrame, type Frame } from "../../core/plane/frame.ts";

/** Origins stand this many to a degree, so that small moves of the map leave the grid where it is. */
const perDegree = 20;

/** The plane of an empty map: around a round place near its middle. The same object for as long as that stays the nearest. */
export function createPaperFrame(map: MapLibreMap): () => Frame {
  let frame: Frame | null = null;
  return () => {
    const { lng, lat } = map.getCenter().wrap();
    const [lon_deg, lat_deg] = [Math.round(lng * perDegree) / perDegree, Math.round(lat * perDegree) / perDegree];
    if (frame && frame.origin[0] === lon_deg && frame.origin[1] === lat_deg) return frame;
    frame = createFrame(lonLat(lon_deg, lat_deg));
    return frame;
  };
}
