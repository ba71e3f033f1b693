import type { EndAssembly } from "../trellis/trellis.ts";

/** How deep an anchor is drawn, m: what holds it depends on its kind and soil and is not planned. */
export const anchorDrawn_m = 0.45;

/** Something straight seen from the side: stations from the start of the row, heights over the ground under each. */
export interface SideLine {
  readonly from_m: number;
  readonly fromHeight_m: number;
  readonly to_m: number;
  readonly toHeight_m: number;
}

/** What holds one end of a row. */
export interface SideEnd {
  readonly end: "start" | "end";
  readonly kind: EndAssembly["kind"];
  /** Where the anchor is, and its tie-back from the post; null without one. */
  readonly tie: (SideLine & { readonly strands: number }) | null;
  /** Rail or strut, from the end post inward. */
  readonly brace: SideLine | null;
  /** The diagonal wire of an H-brace, or the ground wire of an inside brace. */
  readonly braceWire: SideLine | null;
}

/**
 * One end of a row as it stands there. `inward` is 1 at the start, -1 at the end. The diagonal wire of an H-brace goes from the head of the
 * brace post to the foot of the end post; the ground wire of an inside brace from the strut's foot to the end post's.
 */
export function sideEnd(end: "start" | "end", length_m: number, { kind, tie, brace }: EndAssembly): SideEnd {
  const [foot_m, inward] = end === "start" ? [0, 1] : [length_m, -1];
  const inside_m = foot_m + inward * (brace?.inside_m ?? 0);
  return {
    end,
    kind,
    tie: tie && {
      from_m: foot_m - inward * tie.postOut_m,
      fromHeight_m: tie.height_m,
      to_m: foot_m - inward * tie.anchorOut_m,
      toHeight_m: 0,
      strands: tie.strands,
    },
    brace: brace && {
      from_m: foot_m,
      fromHeight_m: brace.height_m,
      to_m: inside_m,
      toHeight_m: kind === "h-brace" ? brace.height_m : 0,
    },
    braceWire:
      brace === null || kind === "slant-brace"
        ? null
        : { from_m: inside_m, fromHeight_m: kind === "h-brace" ? brace.height_m : 0, to_m: foot_m, toHeight_m: 0 },
  };
}
