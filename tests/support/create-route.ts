import type { Route } from "../../src/core/mainline/route.ts";
import type { Rows } from "../../src/core/rows/rows.ts";

export interface RoutePoint {
  readonly x: number;
  readonly y: number;
  /** Default the point before; -1 for the first. */
  readonly upstream?: number;
  readonly row?: number;
  readonly crossing?: number;
}

/** A route by hand: each point is fed from the one before it unless it says otherwise. Every row meets the water at its start. */
export function createRoute(points: readonly RoutePoint[], rows = 0): Route {
  const upstream = points.map((point, i) => point.upstream ?? i - 1);
  const length_m = points.reduce((sum_m, { x, y }, i) => {
    const from = points[upstream[i] ?? -1];
    return from === undefined ? sum_m : sum_m + Math.hypot(x - from.x, y - from.y);
  }, 0);
  const reached = new Set(points.map(({ row }) => row));
  return {
    source: 0,
    xy: Float64Array.from(points.flatMap(({ x, y }) => [x, y])),
    upstream: Int32Array.from(upstream),
    row: Int32Array.from(points, ({ row = -1 }) => row),
    crossing: Int32Array.from(points, ({ crossing = -1 }) => crossing),
    isDrawn: new Uint8Array(points.length),
    waterEnd: Array.from({ length: rows }, () => "start" as const),
    unreached: Array.from({ length: rows }, (_, row) => row).filter((row) => !reached.has(row)),
    length_m,
    crossings: points.filter(({ crossing = -1 }) => crossing >= 0).length,
  };
}

/** A route past the start of every row, `beyond_m` outside its end post, from a source 10 m before the first. */
export function routePastStarts({ rows }: Rows, beyond_m: number): Route {
  const [first] = rows;
  if (first === undefined) throw new Error("there are no rows");
  return createRoute(
    [
      { x: first.start[0] - 10, y: -beyond_m },
      ...rows.map(({ start }, row) => ({ x: start[0], y: start[1] - beyond_m, row })),
    ],
    rows.length,
  );
}
