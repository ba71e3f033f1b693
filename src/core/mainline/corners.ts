import type { Clearance } from "./clearance.ts";
import type { RouteJob } from "./route-job.ts";

/** An arc around a place is walked around in pieces of at most this much. */
const piece_rad = Math.PI / 4;
/** Just outside, so that the way along the corner is clear. */
const outside_m = 1e-4;
/** Where an edge keeps no distance, the way still passes beside its corner. */
const leastBeside_m = 0.05;
/** Places nearer to one another than this are one. */
const same_m = 0.05;

/**
 * Places where a shortest way may bend, x and y in turn: around every corner of what the trench keeps from, at its distance. The
 * arc around a corner is replaced by the polygon around it, at most 8 % longer where the way turns back and less than 1 % for a turn
 * of 45 degrees.
 */
export function cornersOf({ barriers }: RouteJob, { isFree }: Pick<Clearance, "isFree">): readonly number[] {
  const { xy, distance_m } = barriers;
  const seen = new Set<string>();
  const found: number[] = [];
  const add = (x: number, y: number): void => {
    const key = `${Math.round(x / same_m)} ${Math.round(y / same_m)}`;
    if (seen.has(key) || !isFree(x, y)) return;
    seen.add(key);
    found.push(x, y);
  };
  const around = (x: number, y: number, keep_m: number, from_rad: number, sweep_rad: number): void => {
    const pieces = Math.max(1, Math.ceil(sweep_rad / piece_rad));
    const reach_m = (Math.max(keep_m, leastBeside_m) + outside_m) / Math.cos(sweep_rad / (2 * pieces));
    for (let i = 0; i < pieces; i++) {
      const towards = from_rad + (sweep_rad * (2 * i + 1)) / (2 * pieces);
      add(x + reach_m * Math.cos(towards), y + reach_m * Math.sin(towards));
    }
  };
  const directionsAt = new Map<string, { x: number; y: number; keep_m: number; away: number[] }>();
  const put = (x: number, y: number, keep_m: number, away: number | null): void => {
    const key = `${x} ${y}`;
    const known = directionsAt.get(key) ?? { x, y, keep_m, away: [] };
    known.keep_m = Math.max(known.keep_m, keep_m);
    if (away !== null) known.away.push(away);
    directionsAt.set(key, known);
  };
  distance_m.forEach((keep_m, i) => {
    const [px = 0, py = 0, qx = 0, qy = 0] = xy.subarray(4 * i, 4 * i + 4);
    const isPoint = px === qx && py === qy;
    put(px, py, keep_m, isPoint ? null : Math.atan2(qy - py, qx - px));
    if (!isPoint) put(qx, qy, keep_m, Math.atan2(py - qy, px - qx));
  });
  for (const { x, y, keep_m, away } of directionsAt.values()) {
    for (const [from_rad, gap_rad] of gapsBetween(away)) {
      // A straight way past the corner needs no bend: only what is left of a half turn is walked around.
      const turn_rad = gap_rad - Math.PI;
      if (turn_rad > 1e-6) around(x, y, keep_m, from_rad + Math.PI / 2, turn_rad);
    }
  }
  return found;
}

/** The gaps between directions, counter-clockwise, each where it begins and how wide it is. */
function gapsBetween(directions: readonly number[]): readonly (readonly [from_rad: number, gap_rad: number])[] {
  const sorted = [...directions].sort((a, b) => a - b);
  const [first] = sorted;
  if (first === undefined) return [[0, 3 * Math.PI]];
  return sorted.map((from, i) => [from, (sorted[i + 1] ?? first + 2 * Math.PI) - from]);
}
