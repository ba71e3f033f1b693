import type { Positions, Row, Rows } from "../core/rows/rows.ts";
import { type MercatorPoint, mercator, mercatorOfMetre } from "./mercator.ts";
import type { Placing } from "./placing.ts";

/** Rows as offsets from a local origin, ready to be uploaded. */
export interface RowBuffers {
  readonly origin: MercatorPoint;
  /** How many rows there are. */
  readonly count: number;
  /** from x, from y, to x, to y: first every row, in the order of the plan, then the small ticks across both ends of each. */
  readonly segments: Float32Array;
  /** Least distance between rows, in the same measure. */
  readonly spacing: number;
}

/** Points along rows, with where those of each row begin; one more at the end. */
export interface PlacesByRow {
  /** x, y of every point. */
  readonly places: Float32Array;
  readonly offsets: Uint32Array;
}

/** A part of the map in offsets from the local origin. */
export interface OffsetBox {
  readonly west: number;
  readonly north: number;
  readonly east: number;
  readonly south: number;
}

/** Half the length of the tick across a row's end, as a share of the row spacing. */
const tickShare = 0.2;

/** Only two points a row are converted; ticks are made square to the row in the map's own plane, which keeps angles. */
export function rowBuffers(rows: Rows, placing: Placing): RowBuffers {
  const [originLng, originLat] = placing.lngLat(0, 0);
  const origin = mercator(originLng, originLat);
  const count = rows.rows.length;
  const segments = new Float32Array(count * 12);
  const spacing = new Map(rows.blocks.map((block) => [block.block, block.rowSpacing_m]));
  rows.rows.forEach((row, i) => {
    const from = offset(placing, origin, row.start[0], row.start[1]);
    const to = offset(placing, origin, row.end[0], row.end[1]);
    segments.set([from.x, from.y, to.x, to.y], i * 4);
    const planLength_m = Math.hypot(row.end[0] - row.start[0], row.end[1] - row.start[1]);
    if (planLength_m === 0) return;
    const half = ((spacing.get(row.block) ?? 0) * tickShare) / planLength_m;
    const across = { x: -(to.y - from.y) * half, y: (to.x - from.x) * half };
    const ticks = count * 4 + i * 8;
    segments.set([from.x - across.x, from.y - across.y, from.x + across.x, from.y + across.y], ticks);
    segments.set([to.x - across.x, to.y - across.y, to.x + across.x, to.y + across.y], ticks + 4);
  });
  const least_m = Math.min(...spacing.values());
  return { origin, count, segments, spacing: Number.isFinite(least_m) ? least_m * mercatorOfMetre(originLat) : 0 };
}

/** Every vine. */
export function vinePlaces(rows: Rows, buffers: RowBuffers): PlacesByRow {
  return placesAlong(rows, buffers, rows.vines, false);
}

/** Both end posts of every row, and its line posts. */
export function postPlaces(rows: Rows, buffers: RowBuffers): PlacesByRow {
  return placesAlong(rows, buffers, rows.linePosts, true);
}

/**
 * Positions put on the drawn line of their row by their share of its way: without a conversion for each of tens of thousands. In the map's
 * plane that is off by less than 1 cm where a row is 500 m long.
 */
function placesAlong({ rows }: Rows, { segments }: RowBuffers, positions: Positions, withEnds: boolean): PlacesByRow {
  const ends = withEnds ? 2 * rows.length : 0;
  const result = new Float32Array(2 * ends + positions.xy.length);
  const offsets = new Uint32Array(rows.length + 1);
  let n = 0;
  rows.forEach((row, r) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = segments.subarray(4 * r, 4 * r + 4);
    if (withEnds) {
      result.set([x1, y1, x2, y2], n);
      n += 4;
    }
    const [dx, dy, scale] = direction(row);
    for (let i = positions.offsets[r] ?? 0; i < (positions.offsets[r + 1] ?? 0); i++) {
      const along_m =
        ((positions.xy[2 * i] ?? 0) - row.start[0]) * dx + ((positions.xy[2 * i + 1] ?? 0) - row.start[1]) * dy;
      result[n++] = x1 + along_m * scale * (x2 - x1);
      result[n++] = y1 + along_m * scale * (y2 - y1);
    }
    offsets[r + 1] = n / 2;
  });
  return { places: result, offsets };
}

/** Ranges of the points of rows that may reach into a box, first and one after the last in turn; neighbours are one range. */
export function rangesWithin({ segments, count }: RowBuffers, { offsets }: PlacesByRow, box: OffsetBox): number[] {
  const ranges: number[] = [];
  for (let r = 0; r < count; r++) {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = segments.subarray(4 * r, 4 * r + 4);
    if (Math.max(x1, x2) < box.west || Math.min(x1, x2) > box.east) continue;
    if (Math.max(y1, y2) < box.north || Math.min(y1, y2) > box.south) continue;
    const [first, end] = [offsets[r] ?? 0, offsets[r + 1] ?? 0];
    if (ranges.at(-1) === first) ranges[ranges.length - 1] = end;
    else ranges.push(first, end);
  }
  return ranges;
}

/** Unit vector along a row, and what a metre is of its way. */
function direction(row: Row): readonly [dx: number, dy: number, scale: number] {
  const [dx, dy] = [row.end[0] - row.start[0], row.end[1] - row.start[1]];
  const length_m = Math.hypot(dx, dy);
  return length_m === 0 ? [0, 0, 0] : [dx / length_m, dy / length_m, 1 / length_m];
}

function offset(placing: Placing, origin: MercatorPoint, x_m: number, y_m: number): MercatorPoint {
  const [lng, lat] = placing.lngLat(x_m, y_m);
  const at = mercator(lng, lat);
  return { x: at.x - origin.x, y: at.y - origin.y };
}
