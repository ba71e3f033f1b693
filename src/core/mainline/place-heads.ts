import type { Clearance } from "./clearance.ts";
import { headOf, type RowEnd } from "./heads.ts";
import type { Neighbours } from "./neighbours.ts";
import type { RouteJob } from "./route-job.ts";

/** The steepest that a line of row ends is taken into account, as the cosine of its angle to square across the rows. */
const steepest = 0.3;
/** Shares of the way past the anchor that are tried where a barrier is near; the whole first. */
const shares = [1, 0.75, 0.5] as const;

/**
 * Row ends with the trench as far past them as its distance to posts and anchors asks: where the line of ends runs at a slant the one that
 * sticks out is passed farther on, so that the straight way to its neighbour keeps the distance too.
 */
export function pushedEnds(ends: readonly RowEnd[], { rows, postDistance_m }: RouteJob, beside: Neighbours) {
  const slant = new Float64Array(ends.length).fill(1);
  for (const [side, next] of [
    [0, beside.start],
    [1, beside.end],
  ] as const) {
    next.forEach((other, row) => {
      const one = ends[2 * row + side];
      const two = ends[2 * other + side];
      if (one === undefined || two === undefined || other < 0) return;
      const [dx, dy] = [one.post[0] - two.post[0], one.post[1] - two.post[1]];
      const out_m = dx * one.outward[0] + dy * one.outward[1];
      const across_m = Math.sqrt(Math.max(0, dx * dx + dy * dy - out_m * out_m));
      const cosine = Math.max(steepest, across_m / Math.max(1e-9, Math.hypot(across_m, out_m)));
      const farther = 2 * (out_m > 0 ? row : other) + side;
      slant[farther] = Math.min(Number(slant[farther]), cosine);
    });
  }
  return ends.map((end, i): RowEnd => {
    const reach_m = Number(rows.reach_m[end.row]);
    const isBeyond = end.past_m >= reach_m + postDistance_m - 1e-9;
    return isBeyond ? { ...end, past_m: reach_m + postDistance_m / Number(slant[i]) } : end;
  });
}

/** The end with its head where the trench may be: nearer to the anchor where something is in the way; null where nothing will do. */
export function freeEnd(end: RowEnd, job: RouteJob, clearance: Clearance): RowEnd | null {
  const reach_m = Number(job.rows.reach_m[end.row]);
  if (end.past_m <= reach_m) return isFree(end, clearance) ? end : null;
  for (const share of shares) {
    const nearer = { ...end, past_m: reach_m + share * (end.past_m - reach_m) };
    if (isFree(nearer, clearance)) return nearer;
  }
  return null;
}

/** Rows that stand outside of the parcels stay where they are: only what is near counts. */
function isFree(end: RowEnd, { isUntouched }: Clearance): boolean {
  const [x, y] = headOf(end);
  return isUntouched(x, y);
}
