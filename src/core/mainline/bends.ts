import { nearestOnSegment } from "../plane/segment.ts";
import type { Clearance } from "./clearance.ts";
import type { GraphDraft } from "./graph-draft.ts";
import type { RowEnd } from "./heads.ts";
import type { Neighbours } from "./neighbours.ts";
import type { RouteJob } from "./route-job.ts";
import { shoulders } from "./shoulders.ts";

/** Around rows so many spacings from a source ways bend closely. */
const aroundSource = 6;
/** Lines to either side whose heads a way comes to past the end of a row. */
const linesAside = 3;
/** An end stands out when it does so by so many times the distance that the trench keeps. */
const standsOut = 3;

/** What bends are added to. */
interface BendsInput {
  readonly ends: readonly RowEnd[];
  readonly heads: Int32Array;
  /** Nodes of the alleys beside each row. */
  readonly alleys: readonly (readonly number[])[];
  /** See `outerEnds`. */
  readonly outer: readonly number[];
  readonly beside: Neighbours;
  readonly clearance: Clearance;
}

/**
 * Nodes where ways bend around ends of rows, by row end: at the rim of runs, where an end stands out, near a source, and where no trench
 * can meet a row but may get past it. They are linked on along the alleys and to heads that lie farther in, however far these are.
 */
export function addBends(
  draft: GraphDraft,
  job: RouteJob,
  { ends, heads, alleys, outer, beside, clearance }: BendsInput,
): ReadonlyMap<number, readonly number[]> {
  const bends = new Map<number, readonly number[]>();
  const bent = [...outer, ...outstanding(ends, beside, job), ...endsAround(job), ...withoutHead(heads)];
  for (const i of new Set(bent)) {
    const end = ends[i];
    if (end === undefined) continue;
    const around = shoulders(end, clearance).map(draft.node);
    bends.set(i, around);
    const onward = [...(alleys[end.row] ?? []), ...headsBeside(job.rows, heads, i)];
    for (const node of around) for (const next of onward) draft.linkIfClear(node, next);
  }
  return bends;
}

/** Row ends, by index, without a neighbour on one side: where a run of heads begins and ends. */
export function outerEnds(
  heads: Int32Array,
  chains: readonly (readonly number[])[],
  beside: Neighbours,
): readonly number[] {
  const hasBefore = new Uint8Array(heads.length);
  chains.forEach((links, i) => {
    const next = Number((i % 2 === 0 ? beside.start : beside.end)[Math.floor(i / 2)]);
    if (links.length > 0) hasBefore[2 * next + (i % 2)] = 1;
  });
  return Array.from(heads.keys()).filter((i) => {
    return Number(heads[i]) >= 0 && (hasBefore[i] === 0 || chains[i]?.length === 0);
  });
}

/** Rows that a place is within so many spacings of. */
export function rowsAround(
  { posts, spacing_m }: RouteJob["rows"],
  x: number,
  y: number,
  spacings: number,
): readonly number[] {
  return Array.from(spacing_m.keys()).filter((row) => {
    const [sx = 0, sy = 0, ex = 0, ey = 0] = posts.subarray(4 * row, 4 * row + 4);
    return nearestOnSegment(x, y, sx, sy, ex, ey).distance_m < spacings * Number(spacing_m[row]);
  });
}

/** Ends, by index, that no trench can meet, though it may get past them. */
function withoutHead(heads: Int32Array): readonly number[] {
  return Array.from(heads.keys()).filter((i) => Number(heads[i]) < 0);
}

/** Ends of rows that a source stands beside. */
function endsAround({ rows, sources }: RouteJob): readonly number[] {
  return sources.flatMap(({ xy: [x, y] }) =>
    rowsAround(rows, x, y, aroundSource).flatMap((row) => [2 * row, 2 * row + 1]),
  );
}

/** Heads at the same end of the rows on the lines beside that of a row end. */
function headsBeside({ block, line }: RouteJob["rows"], heads: Int32Array, end: number): readonly number[] {
  const row = Math.floor(end / 2);
  return Array.from(line.keys())
    .filter((other) => block[other] === block[row] && Math.abs(Number(line[other]) - Number(line[row])) <= linesAside)
    .map((other) => Number(heads[2 * other + (end % 2)]));
}

/** Ends, by index, that stand out from their neighbour's by so much that a way along their side bends around them. */
function outstanding(ends: readonly RowEnd[], beside: Neighbours, { postDistance_m }: RouteJob): readonly number[] {
  return ends.flatMap((end, i) => {
    const side = i % 2;
    const next = Number((side === 0 ? beside.start : beside.end)[end.row]);
    const j = 2 * next + side;
    const other = ends[j];
    if (next < 0 || other === undefined) return [];
    const out_m = (end.post[0] - other.post[0]) * end.outward[0] + (end.post[1] - other.post[1]) * end.outward[1];
    if (Math.abs(out_m) < standsOut * postDistance_m) return [];
    return [out_m > 0 ? i : j];
  });
}
