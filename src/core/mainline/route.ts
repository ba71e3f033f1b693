import type { RouteJob } from "./route-job.ts";

/**
 * Where the main line runs: a tree of points with straight legs between them, from the source outward. Plain data.
 * Point 0 is the source; every other point comes after the one it is fed from.
 */
export interface Route {
  /** Index into the job's sources. */
  readonly source: number;
  /** x, y pairs, plane metres. */
  readonly xy: Float64Array;
  /** The point that each is fed from; -1 for the source. */
  readonly upstream: Int32Array;
  /** The row that has its tee at the point, or -1. */
  readonly row: Int32Array;
  /** The feature (of the job's barriers) that the leg up to the point crosses, or -1. */
  readonly crossing: Int32Array;
  /** 1 where the leg up to the point is part of a line that the person drew. */
  readonly isDrawn: Uint8Array;
  /** For every row, the end that meets the water; rows that are not reached take the end nearer to the source. */
  readonly waterEnd: readonly ("start" | "end")[];
  /** Rows, by index, that no trench can get to. */
  readonly unreached: readonly number[];
  /** Horizontal, all legs together. */
  readonly length_m: number;
  readonly crossings: number;
}

/** Works a route out; null: not now. */
export type RouteOf = (job: RouteJob) => Route | null;

/** Horizontal length of the leg up to each point; 0 for the source. */
export function legLengths_m({ xy, upstream }: Pick<Route, "xy" | "upstream">): Float64Array {
  return Float64Array.from(upstream, (from, i) =>
    from < 0 ? 0 : Math.hypot(at(xy, 2 * i) - at(xy, 2 * from), at(xy, 2 * i + 1) - at(xy, 2 * from + 1)),
  );
}

function at(xy: Float64Array, i: number): number {
  return xy[i] ?? 0;
}
