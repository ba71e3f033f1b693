import type { BlockGround, Outline, Passable, Segments } from "../ground/ground.ts";
import { type Axes, turn } from "../plane/axes.ts";
import { sweepBands } from "../plane/band.ts";
import { intersected, nothing, shortened, subtracted, withCauses } from "../plane/intervals.ts";
import type { LineIntervals, Lines } from "../plane/lines.ts";
import { sweepRings, united } from "../plane/sweep.ts";

/** The block's ground turned to a bearing: everything ready to be cut along lines of any spacing. */
export interface TurnedGround {
  readonly axes: Axes;
  readonly outlines: readonly TurnedOutline[];
  /** The block lies in every one of these, in any area of each. */
  readonly bounds: readonly (readonly TurnedOutline[])[];
  readonly closed: readonly TurnedOutline[];
  readonly segments: Segments;
  readonly passable: readonly TurnedPassable[];
  /** Extent of the outlines across the rows. */
  readonly lowest_m: number;
  readonly highest_m: number;
}

interface TurnedOutline {
  readonly uv: Float64Array;
  readonly ringStart: Int32Array;
  readonly cause: Int32Array;
}

interface TurnedPassable {
  readonly segments: Segments;
  readonly closed: readonly TurnedOutline[];
  readonly largestGap_m: number;
}

/** What is left of each line for rows; `cause` indexes `Ground.causes`. */
export interface RowPieces {
  readonly pieces: LineIntervals;
  /** Gaps within pieces that wires run through and no vine stands in; `nothing` when there are none. */
  readonly gaps: LineIntervals;
}

/** What a row needs of the ground beyond its distances. */
export interface Clearance {
  readonly headland_m: number;
  /** End post to anchor when distances count to the anchor, else 0. */
  readonly anchorOut_m: number;
  /** Longest gap carried through where a passable feature does not say. */
  readonly usualGap_m: number;
}

/** The ground of a block turned to axes. */
export function turnedGround(ground: BlockGround, axes: Axes, usualGap_m: number): TurnedGround {
  const outlines = ground.outlines.map((outline) => turnedOutline(outline, axes));
  let lowest_m = Infinity;
  let highest_m = -Infinity;
  const areas = ground.areas.map((outline) => turnedOutline(outline, axes));
  const extent = ground.isDrawn ? areas : outlines;
  for (const { uv } of extent) {
    for (let i = 1; i < uv.length; i += 2) {
      lowest_m = Math.min(lowest_m, Number(uv[i]));
      highest_m = Math.max(highest_m, Number(uv[i]));
    }
  }
  return {
    axes,
    outlines,
    bounds: areas.length === 0 ? [] : ground.isDrawn ? [areas] : areas.map((area) => [area]),
    closed: ground.closed.map((outline) => turnedOutline(outline, axes)),
    segments: turnedSegments(ground.segments, axes),
    passable: ground.passable.map((feature) => turnedPassable(feature, axes, usualGap_m)),
    lowest_m,
    highest_m,
  };
}

function turnedOutline(outline: Outline, axes: Axes): TurnedOutline {
  return { uv: turn(outline.rings.xy, axes), ringStart: outline.rings.ringStart, cause: outline.cause };
}

function turnedSegments(segments: Segments, axes: Axes): Segments {
  return { xy: turn(segments.xy, axes), distance_m: segments.distance_m, cause: segments.cause };
}

function turnedPassable(feature: Passable, axes: Axes, usualGap_m: number): TurnedPassable {
  return {
    segments: turnedSegments(feature.segments, axes),
    closed: feature.closed.map((outline) => turnedOutline(outline, axes)),
    largestGap_m: feature.largestGap_m ?? usualGap_m,
  };
}

/**
 * The pieces of the lines that may be planted, exactly: inside the outlines less the headland measured along the line, less
 * everything within its distance of an edge or obstacle, less areas that are closed. Method: ARCHITECTURE in DEVELOPERS.md; no polygon is
 * ever built.
 */
export function rowPieces(ground: TurnedGround, lines: Lines, clearance: Clearance): RowPieces {
  const { headland_m, anchorOut_m } = clearance;
  let inside = shortened(within(ground.outlines, lines), headland_m);
  // Neighbouring blocks share one headland at a border between them.
  for (const areas of ground.bounds) inside = intersected(inside, shortened(within(areas, lines), headland_m / 2));
  for (const area of ground.closed) inside = subtracted(inside, within([area], lines));
  if (ground.segments.distance_m.length > 0) {
    const { xy, distance_m, cause } = ground.segments;
    inside = subtracted(inside, sweepBands(xy, distance_m, cause, lines));
  }
  const { pieces, gaps } = passed(inside, ground.passable, lines);
  return { pieces: shortened(pieces, anchorOut_m), gaps };
}

/** Inside any of the outlines, each even-odd. */
function within(outlines: readonly TurnedOutline[], lines: Lines): LineIntervals {
  let sum: LineIntervals | null = null;
  for (const { uv, ringStart, cause } of outlines) {
    const inside = withCauses(sweepRings(uv, ringStart, lines), cause);
    sum = sum === null ? inside : united(sum, inside, lines.count);
  }
  return sum ?? nothing(lines.count);
}

/**
 * Features that wires run past make a gap where the row is carried through, if the gap lies within the piece and is not longer than
 * allowed; else they cut the row as any obstacle does.
 */
function passed(inside: LineIntervals, features: readonly TurnedPassable[], lines: Lines): RowPieces {
  let pieces = inside;
  let gaps = nothing(lines.count);
  for (const feature of features) {
    const { xy, distance_m, cause } = feature.segments;
    const closed = within(feature.closed, lines);
    // Gaps of neighbours that touch are one gap, and are judged as one.
    const taken = united(united(closed, sweepBands(xy, distance_m, cause, lines), lines.count), gaps, lines.count);
    pieces = subtracted(pieces, selected(taken, pieces, feature.largestGap_m, false));
    gaps = selected(taken, pieces, feature.largestGap_m, true);
  }
  return { pieces, gaps };
}

/** Those of `taken` that a piece may carry through (`carry`), or those that it may not. */
function selected(taken: LineIntervals, pieces: LineIntervals, largest_m: number, carry: boolean): LineIntervals {
  const count = taken.start.length - 1;
  const start = new Int32Array(count + 1);
  const u: number[] = [];
  const cause: number[] = [];
  for (let i = 0; i < count; i++) {
    for (let n = Number(taken.start[i]); n < Number(taken.start[i + 1]); n++) {
      const from = Number(taken.u[2 * n]);
      const to = Number(taken.u[2 * n + 1]);
      let isWithin = false;
      for (let k = Number(pieces.start[i]); k < Number(pieces.start[i + 1]); k++) {
        if (Number(pieces.u[2 * k]) < from && to < Number(pieces.u[2 * k + 1])) isWithin = true;
      }
      if ((isWithin && to - from <= largest_m) !== carry) continue;
      u.push(from, to);
      cause.push(Number(taken.cause[2 * n]), Number(taken.cause[2 * n + 1]));
    }
    start[i + 1] = u.length / 2;
  }
  return { start, u: Float64Array.from(u), cause: Int32Array.from(cause) };
}
