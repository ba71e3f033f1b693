import type { EndAssemblySettings } from "../project/project.ts";
import type { EndAssembly } from "./trellis.ts";

/**
 * One end of a row, from its settings, the height that its tie or brace is at unless they say another, and how far out the anchor sits,
 * metres. Tie-back: angle and length from where it meets the post to the anchor, base to anchor = h (cot a + cot b) for a post leaning out.
 * Brace: rail or strut between the end post and a place inside the row, twice its height away when not said (common practice, no source:
 * 1.5 to 2 heights). Geometry. Gives no findings.
 */
export function endAssembly(settings: EndAssemblySettings, highest_m: number, anchorOut_m: number): EndAssembly {
  const { kind, tieStrands: strands } = settings;
  const tie_m = settings.tieHeight_m ?? highest_m;
  switch (kind) {
    case "vertical":
    case "leaning":
    case "buried-anchor": {
      const postOut_m = tie_m * reachPerHeight(settings);
      const { angle_deg, diagonal_m } = slope(tie_m, anchorOut_m - postOut_m);
      return {
        kind,
        tie: { height_m: tie_m, postOut_m, anchorOut_m, angle_deg, length_m: diagonal_m, strands },
        brace: null,
      };
    }
    case "h-brace":
    case "slant-brace":
    case "inside-brace": {
      const height_m = settings.braceHeight_m ?? tie_m;
      const inside_m = settings.braceLength_m ?? 2 * height_m;
      return { kind, tie: null, brace: { height_m, inside_m, ...slope(height_m, inside_m) } };
    }
    case "single":
      return { kind, tie: null, brace: null };
    default:
      return kind satisfies never;
  }
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
