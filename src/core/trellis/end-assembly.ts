import type { EndAssemblySettings } from "../project/project.ts";
import type { EndAssembly } from "./trellis.ts";

/** One end of a row, from its settings, the height its tie or brace is wished at, and how far out the anchor sits. */
export function endAssembly(settings: EndAssemblySettings, height_m: number, anchorOut_m: number): EndAssembly {
  const { kind } = settings;
  const postOut_m = height_m * reachPerHeight(settings);
  if (kind === "h-brace" || kind === "slant-brace" || kind === "inside-brace") {
    const at_m = settings.braceHeight_m ?? height_m;
    const inside_m = settings.braceLength_m ?? 2 * at_m;
    return { kind, tie: null, brace: { height_m: at_m, inside_m, ...slope(at_m, inside_m) } };
  }
  if (kind === "single") return { kind, tie: null, brace: null };
  const { angle_deg, diagonal_m } = slope(height_m, anchorOut_m - postOut_m);
  const strands = settings.tieStrands;
  return { kind, tie: { height_m, postOut_m, anchorOut_m, angle_deg, length_m: diagonal_m, strands }, brace: null };
}

/** How far outward a leaning post goes for every metre up: the cotangent of its angle, below 0 when it leans over the row. */
export function reachPerHeight({ kind, postAngle_deg, leanDirection }: EndAssemblySettings): number {
  if (kind !== "leaning" || postAngle_deg === 90) return 0;
  const out = 1 / Math.tan((postAngle_deg * Math.PI) / 180);
  return leanDirection === "out" ? out : -out;
}

function slope(height_m: number, along_m: number): { readonly angle_deg: number; readonly diagonal_m: number } {
  return {
    angle_deg: (Math.atan2(height_m, along_m) * 180) / Math.PI,
    diagonal_m: Math.hypot(height_m, along_m),
  };
}
