import { type Phrase, quantity, say } from "../finding.ts";
import type { SideEnd } from "./side-ends.ts";

/** A distance to write beside the drawing, from one station to another. */
export interface SideDimension {
  readonly kind: "end-gap" | "vine-spacing" | "anchor-out" | "brace" | "bay" | "row";
  readonly from_m: number;
  readonly to_m: number;
  readonly label: Phrase;
}

/** Row length, both end gaps, one vine spacing, every bay, and how far anchors and braces reach. */
export function sideDimensions(
  length_m: number,
  vines: readonly number[],
  linePosts: readonly number[],
  vineSpacing_m: number,
  ends: readonly SideEnd[],
): readonly SideDimension[] {
  const [first, second, last] = [vines[0], vines[1], vines.at(-1)];
  const along = (kind: SideDimension["kind"], a_m: number, b_m: number): SideDimension => ({
    kind,
    from_m: Math.min(a_m, b_m),
    to_m: Math.max(a_m, b_m),
    label: say`${quantity("length", Math.abs(b_m - a_m))}`,
  });
  const posts = [0, ...linePosts, length_m];
  return [
    along("row", 0, length_m),
    ...(first === undefined ? [] : [along("end-gap", 0, first)]),
    ...(first === undefined || second === undefined ? [] : [along("vine-spacing", first, first + vineSpacing_m)]),
    ...(last === undefined ? [] : [along("end-gap", last, length_m)]),
    ...posts.slice(1).map((to_m, n) => along("bay", Number(posts[n]), to_m)),
    ...ends.flatMap(({ end, tie, brace }) => {
      const foot_m = end === "start" ? 0 : length_m;
      return [
        ...(tie === null ? [] : [along("anchor-out", foot_m, tie.to_m)]),
        ...(brace === null ? [] : [along("brace", foot_m, brace.to_m)]),
      ];
    }),
  ];
}
