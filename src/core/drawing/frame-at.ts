import { middleOf } from "../ground/middle.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { createFrame, type Frame } from "../plane/frame.ts";
import type { Project } from "../project/project.ts";

const kept: Frame[] = [];
const most = 4;

/** A frame around an origin; the last few are kept, since one costs more than a thousand conversions. */
export function frameAt(origin: LonLat): Frame {
  const known = kept.find((frame) => frame.origin[0] === origin[0] && frame.origin[1] === origin[1]);
  if (known !== undefined) return known;
  const frame = createFrame(origin);
  kept.unshift(frame);
  kept.length = Math.min(kept.length, most);
  return frame;
}

/** The origin a project is planned around: the one it states, else the middle of its parcels; null while it has neither. */
export function originOf({ frameOrigin, parcels }: Project): LonLat | null {
  return frameOrigin ?? (parcels.length === 0 ? null : middleOf(parcels));
}
