import type { Plan } from "../plan.ts";
import { type LonLat, type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { Positions, Row } from "../rows/rows.ts";

/** One thing that is set in the ground. */
export interface Stake {
  /** Stable and unique within a plan, such as "vine-14a-3". */
  readonly id: string;
  readonly kind: "vine" | "end-post" | "line-post" | "stake";
  readonly row: Row;
  /** Counted from the start of the row, 1 first; end posts count with the line posts between them. */
  readonly number: number;
  readonly station_m: number;
  readonly at: LonLat;
}

/** Every vine, row by row, stations ascending. Nothing when the plan has no rows. */
export function* vinesOf(plan: Plan): Generator<Stake> {
  if (plan.rows !== null) yield* along(plan, plan.rows.vines, "vine");
}

/** Every training stake, row by row, stations ascending. */
export function* stakesOf(plan: Plan): Generator<Stake> {
  if (plan.rows !== null) yield* along(plan, plan.rows.stakes, "stake");
}

/** Every post, row by row from the end post at the start to the one at the end. */
export function* postsOf(plan: Plan): Generator<Stake> {
  const { rows } = plan;
  if (rows === null) return;
  for (const [index, row] of rows.rows.entries()) {
    const id = (number: number) => `post-${row.id}-${number}`;
    const last = row.linePosts + 2;
    yield { id: id(1), kind: "end-post", row, number: 1, station_m: 0, at: placed(plan, row.start) };
    for (const { number, station_m, at } of ofRow(plan, rows.linePosts, index)) {
      yield { id: id(number + 1), kind: "line-post", row, number: number + 1, station_m, at };
    }
    yield { id: id(last), kind: "end-post", row, number: last, station_m: row.length_m, at: placed(plan, row.end) };
  }
}

/** A place of the plan's plane in degrees; the plan has a ground wherever it has rows. */
export function placed(plan: Plan, at: PlanePoint): LonLat {
  if (plan.ground === null) throw new Error("a plan with rows has a ground");
  return plan.ground.frame.toLonLat(at);
}

/** The row's number as it stands in a project file, without its block: "14a". */
export function rowLabel(row: Row): string {
  const prefix = `${row.block}-`;
  return row.id.startsWith(prefix) ? row.id.slice(prefix.length) : row.id;
}

function* along(plan: Plan, positions: Positions, kind: "vine" | "stake"): Generator<Stake> {
  for (const [index, row] of (plan.rows?.rows ?? []).entries()) {
    for (const { number, station_m, at } of ofRow(plan, positions, index)) {
      yield { id: `${kind}-${row.id}-${number}`, kind, row, number, station_m, at };
    }
  }
}

function* ofRow(plan: Plan, positions: Positions, index: number) {
  const first = positions.offsets[index] ?? 0;
  const behind = positions.offsets[index + 1] ?? first;
  for (let i = first; i < behind; i++) {
    const at = planePoint(positions.xy[2 * i] ?? 0, positions.xy[2 * i + 1] ?? 0);
    yield { number: i - first + 1, station_m: positions.station_m[i] ?? 0, at: placed(plan, at) };
  }
}
