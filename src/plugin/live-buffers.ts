import type { Rows } from "../core/rows/rows.ts";
import { type MercatorPoint, mercator } from "./mercator.ts";
import type { Placing } from "./placing.ts";

/** Offsets from a local origin, ready to be uploaded. */
export interface LiveBuffers {
  readonly origin: MercatorPoint;
  /** from x, from y, to x, to y: every row, in the order of the plan. */
  readonly rows: Float32Array;
  /** The same for the small ticks across both ends of every row. */
  readonly ticks: Float32Array;
  /** x, y of every vine; empty when vines are not wanted. */
  readonly vines: Float32Array;
}

/** Half the length of the tick across a row's end, as a share of the row spacing. */
export const tickShare = 0.2;

/**
 * Rows (and vines, when they are to be seen) as typed arrays for the live layer.
 * Only two points a row are converted; ticks are made square to the row in the map's own plane, which keeps angles.
 */
export function liveBuffers(rows: Rows, placing: Placing, withVines: boolean): LiveBuffers {
  const [originLng, originLat] = placing.lngLat(0, 0);
  const origin = mercator(originLng, originLat);
  const count = rows.rows.length;
  const lines = new Float32Array(count * 4);
  const ticks = new Float32Array(count * 8);
  const spacing = new Map(rows.blocks.map((block) => [block.block, block.rowSpacing_m]));
  rows.rows.forEach((row, i) => {
    const from = offset(placing, origin, row.start[0], row.start[1]);
    const to = offset(placing, origin, row.end[0], row.end[1]);
    lines.set([from.x, from.y, to.x, to.y], i * 4);
    const planLength_m = Math.hypot(row.end[0] - row.start[0], row.end[1] - row.start[1]);
    if (planLength_m === 0) return;
    const half = ((spacing.get(row.block) ?? 0) * tickShare) / planLength_m;
    const across = { x: -(to.y - from.y) * half, y: (to.x - from.x) * half };
    ticks.set([from.x - across.x, from.y - across.y, from.x + across.x, from.y + across.y], i * 8);
    ticks.set([to.x - across.x, to.y - across.y, to.x + across.x, to.y + across.y], i * 8 + 4);
  });
  return {
    origin,
    rows: lines,
    ticks,
    vines: withVines ? points(rows.vines.xy, placing, origin) : new Float32Array(0),
  };
}

function points(xy: Float64Array, placing: Placing, origin: MercatorPoint): Float32Array {
  const result = new Float32Array(xy.length);
  for (let i = 0; i + 1 < xy.length; i += 2) {
    const at = offset(placing, origin, xy[i] ?? 0, xy[i + 1] ?? 0);
    result[i] = at.x;
    result[i + 1] = at.y;
  }
  return result;
}

function offset(placing: Placing, origin: MercatorPoint, x_m: number, y_m: number): MercatorPoint {
  const [lng, lat] = placing.lngLat(x_m, y_m);
  const at = mercator(lng, lat);
  return { x: at.x - origin.x, y: at.y - origin.y };
}
