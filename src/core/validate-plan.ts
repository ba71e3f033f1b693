import type { BlockGround } from "./ground/ground.ts";
import { isInside } from "./ground/inside.ts";
import { nothingLost } from "./nothing-lost.ts";
import type { Plan } from "./plan.ts";
import { crossingAlong, nearestOnSegment } from "./plane/segment.ts";
import type { Positions, Row } from "./rows/rows.ts";

/** A micrometre: what rounding in the plane may leave. */
const tolerance_m = 1e-6;

/**
 * The promises a plan must keep, as sentences about those it breaks; empty for a sound plan. Rows that stand already are where they are
 * and are not held to setbacks.
 */
export function validatePlan(plan: Plan): readonly string[] {
  const { ground, rows } = plan;
  if (ground === null || rows === null) return [];
  const broken: string[] = [];
  const ids = new Set(rows.rows.map((row) => row.id));
  if (ids.size !== rows.rows.length) broken.push("two rows have the same id");
  for (const [name, positions] of [
    ["vines", rows.vines],
    ["linePosts", rows.linePosts],
    ["stakes", rows.stakes],
  ] as const) {
    rows.rows.forEach((row, i) => {
      broken.push(...positionsBroken(name, row, positions, i));
    });
  }
  for (const block of rows.blocks) {
    const own = rows.rows.slice(block.first, block.first + block.count);
    const sum_m = own.reduce((sum, row) => sum + row.length_m, 0);
    if (Math.abs(sum_m - block.length_m) > tolerance_m) broken.push(`block ${block.block} is not as long as its rows`);
    const blockGround = ground.blocks.find((one) => one.block === block.block);
    if (blockGround === undefined) broken.push(`block ${block.block} has no ground`);
    else for (const row of own) if (row.given === null) broken.push(...placeBroken(row, blockGround));
  }
  return [...broken, ...nothingLost(plan)];
}

function positionsBroken(name: "vines" | "linePosts" | "stakes", row: Row, of: Positions, i: number): string[] {
  const broken: string[] = [];
  const from = Number(of.offsets[i]);
  const to = Number(of.offsets[i + 1]);
  if (to - from !== row[name]) broken.push(`row ${row.id} counts ${row[name]} ${name} and places ${to - from}`);
  for (let n = from; n < to; n++) {
    const station = Number(of.station_m[n]);
    if (station < -tolerance_m || station > row.length_m + tolerance_m)
      broken.push(`row ${row.id}: ${name} beyond its ends`);
    if (n > from && station < Number(of.station_m[n - 1])) broken.push(`row ${row.id}: ${name} out of order`);
  }
  return broken;
}

/** A row's two ends must be on the block's ground and at least each distance away; and so must the whole line between them. */
function placeBroken(row: Row, ground: BlockGround): string[] {
  const broken: string[] = [];
  const { xy, distance_m } = ground.segments;
  const middle = [(row.start[0] + row.end[0]) / 2, (row.start[1] + row.end[1]) / 2] as const;
  if (!ground.outlines.some(({ rings }) => isInside(rings, middle[0], middle[1])))
    broken.push(`row ${row.id} is outside`);
  for (let s = 0; s < distance_m.length; s++) {
    const p = [Number(xy[4 * s]), Number(xy[4 * s + 1])] as const;
    const q = [Number(xy[4 * s + 2]), Number(xy[4 * s + 3])] as const;
    const least_m = Math.min(
      crossingAlong(row.start, row.end, p, q) === null ? Infinity : 0,
      nearestOnSegment(row.start[0], row.start[1], p[0], p[1], q[0], q[1]).distance_m,
      nearestOnSegment(row.end[0], row.end[1], p[0], p[1], q[0], q[1]).distance_m,
      nearestOnSegment(p[0], p[1], row.start[0], row.start[1], row.end[0], row.end[1]).distance_m,
      nearestOnSegment(q[0], q[1], row.start[0], row.start[1], row.end[0], row.end[1]).distance_m,
    );
    if (least_m < Number(distance_m[s]) - tolerance_m)
      broken.push(`row ${row.id} is ${least_m} m from what it keeps ${distance_m[s]} m from`);
  }
  return broken;
}
