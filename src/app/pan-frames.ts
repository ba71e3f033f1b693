import type { Map as MapLibreMap } from "maplibre-gl";
import { frameTimes } from "./frame-times.ts";

const step_px = 6;

/** Milliseconds between frames while the map is moved a little before every one, round in a circle, and put back. */
export async function panFrames(map: MapLibreMap, frames: number): Promise<number[]> {
  const center = map.getCenter();
  const times = await frameTimes(frames, (frame) => {
    const { x, y } = map.project(map.getCenter());
    const angle = frame / 20;
    map.jumpTo({ center: map.unproject([x + step_px * Math.cos(angle), y + step_px * Math.sin(angle)]) });
  });
  map.jumpTo({ center });
  return times;
}
