import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { Clearance } from "./clearance.ts";
import type { GraphDraft } from "./graph-draft.ts";
import { headOf, type RowEnd } from "./heads.ts";
import type { Neighbours } from "./neighbours.ts";
import type { RouteJob } from "./route-job.ts";

/** An alley is trenched rather than the headland only where that is shorter by more than this. */
const alleyFactor = 1.02;

/** Half spacings that a place in an alley is tried farther in. */
const stepsBack = [0, 1, 2, 4, 8] as const;

/**
 * Ways along the alleys: on either side of every row half a spacing away, abreast of its two heads, so that a way gets from one end of
 * the rows to the other, and past heads without touching them. Neighbours have the alley between them in common. The gap between two
 * pieces of a row is a way too. Gives the nodes of the alleys beside each row.
 */
export function linkAlleys(
  draft: GraphDraft,
  { rows }: RouteJob,
  ends: readonly RowEnd[],
  heads: Int32Array,
  beside: Neighbours,
  clearance: Pick<Clearance, "isUntouched">,
): readonly (readonly number[])[] {
  const nodes: (readonly number[])[] = [];
  /** Nodes of each alley, by block and the line before it. */
  const gaps = new Map<string, number[]>();
  const hands = handsOf(rows, ends, beside);
  const before = { start: new Map<number, number>(), end: new Map<number, number>() };
  const nodeBeside = (row: number, side: 0 | 1, towards: 1 | -1): number => {
    const end = ends[2 * row + side];
    if (end === undefined) return -1;
    const [x, y] = headOf(end);
    // Towards the next line: outward points back at the start and onward at the end.
    const turn = (side === 0 ? -1 : 1) * towards * (hands.get(Number(rows.block[row])) ?? 1);
    const half_m = Number(rows.spacing_m[row]) / 2;
    const [ax, ay] = [x + turn * half_m * end.outward[1], y - turn * half_m * end.outward[0]];
    // Where ends run at a slant the place abreast of a head may be outside: the alley is entered farther in.
    const back_m = stepsBack
      .map((step) => step * half_m)
      .find((by_m) => {
        return clearance.isUntouched(ax - by_m * end.outward[0], ay - by_m * end.outward[1]);
      });
    return draft.node(planePoint(ax - (back_m ?? 0) * end.outward[0], ay - (back_m ?? 0) * end.outward[1]));
  };
  for (let row = 0; row < rows.line.length; row++) {
    const own: number[] = [];
    for (const towards of [1, -1] as const) {
      const known = towards === -1 ? [before.start.get(row), before.end.get(row)] : [];
      const start = known[0] ?? nodeBeside(row, 0, towards);
      const end = known[1] ?? nodeBeside(row, 1, towards);
      own.push(start, end);
      const gap = `${rows.block[row]} ${Number(rows.line[row]) + (towards === 1 ? 0 : -1)}`;
      gaps.set(gap, [...(gaps.get(gap) ?? []), start, end]);
      for (const [node, side, next] of [
        [start, 0, beside.start],
        [end, 1, beside.end],
      ] as const) {
        const other = Number(next[row]);
        draft.linkIfClear(node, Number(heads[2 * row + side]));
        if (towards === -1) continue;
        if (other >= 0) {
          draft.linkIfClear(node, Number(heads[2 * other + side]));
          (side === 0 ? before.start : before.end).set(other, node);
        }
      }
    }
    nodes.push(own);
    const [startRight = -1, endRight = -1, startLeft = -1, endLeft = -1] = own;
    draft.linkIfClear(startRight, startLeft);
    draft.linkIfClear(endRight, endLeft);
    const onward = Number(beside.onward[row]);
    if (onward >= 0) draft.linkIfClear(Number(heads[2 * row + 1]), Number(heads[2 * onward]));
  }
  for (const gap of gaps.values()) linkAlong(draft, gap);
  return nodes;
}

/** Links the places of one alley, each with the next along it. */
function linkAlong(draft: GraphDraft, gap: readonly number[]): void {
  const places = [...new Set(gap)].filter((node) => node >= 0).map((node) => ({ node, at: draft.placeOf(node) }));
  const [first, ...others] = places;
  if (first === undefined) return;
  const away_m = (from: PlanePoint, to: PlanePoint) => Math.hypot(to[0] - from[0], to[1] - from[1]);
  const end = others.reduce((far, each) => (away_m(first.at, each.at) > away_m(first.at, far.at) ? each : far), first);
  const along = places.toSorted((a, b) => away_m(end.at, a.at) - away_m(end.at, b.at));
  along.slice(1).forEach(({ node }, i) => {
    draft.linkIfClear(along[i]?.node ?? -1, node, alleyFactor);
  });
}

/** For each block 1 where its next line lies to the right of a row, seen from its start; -1 where to the left. */
function handsOf(
  { line, block }: RouteJob["rows"],
  ends: readonly RowEnd[],
  beside: Neighbours,
): ReadonlyMap<number, 1 | -1> {
  const hands = new Map<number, 1 | -1>();
  for (let row = 0; row < line.length; row++) {
    const [end, other] = [ends[2 * row + 1], ends[2 * Number(beside.end[row]) + 1]];
    if (hands.has(Number(block[row])) || end === undefined || other === undefined) continue;
    const [dx, dy] = [other.post[0] - end.post[0], other.post[1] - end.post[1]];
    hands.set(Number(block[row]), dx * end.outward[1] - dy * end.outward[0] >= 0 ? 1 : -1);
  }
  return hands;
}
