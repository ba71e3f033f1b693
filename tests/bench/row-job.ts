import { type Axes, axesAt, turn, turnBack } from "../../src/core/plane/axes.ts";
import { sweepBands } from "../../src/core/plane/band.ts";
import type { BandSet } from "../../src/core/plane/band-outline.ts";
import { subtracted } from "../../src/core/plane/intervals.ts";
import type { LineIntervals, Lines } from "../../src/core/plane/lines.ts";
import type { RingSet } from "../../src/core/plane/overlay.ts";
import { sweepRings } from "../../src/core/plane/sweep.ts";
import type { Point, TestParcel } from "../support/parcels.ts";

/** Rows to be cut out of a parcel: the same lines for every contestant, long enough to stick out on both sides. */
export interface RowJob {
  readonly parcel: TestParcel;
  readonly axes: Axes;
  readonly lines: Lines;
  /** Every line as two points in the plane. */
  readonly drawn: readonly (readonly [Point, Point])[];
}

/** A number of rows evenly over the parcel at a bearing, none of them through a corner by design. */
export function createRowJob(parcel: TestParcel, bearing_deg: number, rows: number): RowJob {
  const axes = axesAt([0, 0], bearing_deg);
  const uv = turn(parcel.rings.xy, axes);
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i + 1 < uv.length; i += 2) {
    left = Math.min(left, uv[i] ?? 0);
    right = Math.max(right, uv[i] ?? 0);
    low = Math.min(low, uv[i + 1] ?? 0);
    high = Math.max(high, uv[i + 1] ?? 0);
  }
  const spacing_m = (high - low) / rows;
  const lines = { first_m: low + spacing_m / 2, spacing_m, count: rows };
  const drawn = Array.from({ length: rows }, (_, i) => {
    const v = lines.first_m + i * spacing_m;
    return [turnBack(left - 10, v, axes), turnBack(right + 10, v, axes)] as const;
  });
  return { parcel, axes, lines, drawn };
}

/** Rows inside the rings: what the core does, from plane coordinates on. */
export function cutByRings({ parcel, axes, lines }: RowJob): LineIntervals {
  return cutRings(parcel.rings, axes, lines);
}

export function cutRings(rings: RingSet, axes: Axes, lines: Lines): LineIntervals {
  return sweepRings(turn(rings.xy, axes), rings.ringStart, lines);
}

/** Rows inside the rings less the setback of every edge. */
export function cutWithSetbacks({ parcel, axes, lines }: RowJob): LineIntervals {
  return cutBands(parcel.rings, parcel.bands, axes, lines);
}

export function cutBands(rings: RingSet, bands: BandSet, axes: Axes, lines: Lines): LineIntervals {
  const inside = cutRings(rings, axes, lines);
  const owner = new Int32Array(bands.distance_m.length);
  return subtracted(inside, sweepBands(turn(bands.xy, axes), bands.distance_m, owner, lines));
}

/** Sum of the pieces and how many there are. */
export interface Cut {
  readonly length_m: number;
  readonly pieces: number;
}

export function summed({ u }: LineIntervals): Cut {
  let length_m = 0;
  for (let i = 0; i + 1 < u.length; i += 2) length_m += (u[i + 1] ?? 0) - (u[i] ?? 0);
  return { length_m, pieces: u.length / 2 };
}
