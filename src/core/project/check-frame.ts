import { type LonLat, lonLat } from "../plane/coordinate.ts";
import { createFrame, type Frame } from "../plane/frame.ts";

let last: Frame | null = null;

/** A frame to check shapes in; the last one is kept, since a frame costs more than a thousand conversions. */
export function checkFrame(lon_deg: number, lat_deg: number): Frame {
  if (last === null || last.origin[0] !== lon_deg || last.origin[1] !== lat_deg) {
    last = createFrame(lonLat(lon_deg, lat_deg));
  }
  return last;
}

/** An origin near a place on a grid of 0.05 degrees, so that dragging one corner does not make every feature be checked anew. */
export function checkOrigin([lon_deg, lat_deg]: LonLat): readonly [lon_deg: number, lat_deg: number] {
  return [Math.round(lon_deg * 20) / 20, Math.round(lat_deg * 20) / 20];
}
