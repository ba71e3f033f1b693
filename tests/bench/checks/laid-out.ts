import { type Axes, axesAt, turn, turnBack } from "../../../src/core/plane/axes.ts";
import type { LineIntervals, Lines } from "../../../src/core/plane/lines.ts";
import type { RingSet } from "../../../src/core/plane/overlay.ts";
import { rowPieces, type TurnedGround } from "../../../src/core/rows/row-pieces.ts";
import { type Point, type Pose, posed, posedParcel, type TestParcel } from "../../support/parcels.ts";
import { between, createRandom } from "../../support/random.ts";

/** A parcel in one pose with rows cut out of it. */
export interface LaidOut {
  readonly parcel: TestParcel;
  readonly axes: Axes;
  readonly lines: Lines;
  readonly pieces: LineIntervals;
}

/** How rows run over a parcel before it is posed: they turn with it. */
export interface RowWish {
  readonly bearing_deg: number;
  readonly spacing_m: number;
  /** Where the first line lies, across from the parcel's origin. */
  readonly first_m: number;
  readonly count: number;
}

/** Rows at a random bearing, 1.5 to 4 m apart, over all of the parcel: in general position, so that none meets a corner. */
export function randomRows(parcel: TestParcel, seed: number): RowWish {
  const random = createRandom(seed ^ 0x5eed);
  const bearing_deg = between(random, 0, 180);
  const spacing_m = between(random, 1.5, 4);
  const uv = turn(parcel.rings.xy, axesAt([0, 0], bearing_deg));
  const across = Array.from({ length: uv.length / 2 }, (_, i) => uv[2 * i + 1] ?? 0);
  const first_m = Math.min(...across) - between(random, 0, spacing_m);
  return { bearing_deg, spacing_m, first_m, count: Math.ceil((Math.max(...across) - first_m) / spacing_m) + 1 };
}

/** The rows as the core cuts them, without headland. */
export function laidOut(unposed: TestParcel, wish: RowWish, pose: Pose, withSetbacks: boolean): LaidOut {
  const parcel = posedParcel(unposed, pose);
  // The plane turns counter-clockwise, bearings count clockwise.
  const axes = axesAt([pose.x_m, pose.y_m], wish.bearing_deg - pose.turn_deg);
  const lines = { first_m: wish.first_m, spacing_m: wish.spacing_m, count: wish.count };
  const ground = turnedGroundOf([parcel.rings], axes);
  const segments = withSetbacks
    ? { xy: turn(parcel.bands.xy, axes), distance_m: parcel.bands.distance_m, cause: ground.segments.cause }
    : ground.segments;
  const { pieces } = rowPieces({ ...ground, segments }, lines, { headland_m: 0, anchorOut_m: 0, usualGap_m: 0 });
  return { parcel, axes, lines, pieces };
}

/** Ground of outlines alone; each edge has itself for a cause. */
export function turnedGroundOf(outlines: readonly RingSet[], axes: Axes): TurnedGround {
  const points = outlines.reduce((sum, { xy }) => sum + xy.length / 2, 0);
  return {
    axes,
    outlines: outlines.map(({ xy, ringStart }) => ({
      uv: turn(xy, axes),
      ringStart,
      cause: Int32Array.from({ length: xy.length / 2 }, (_, i) => i),
    })),
    bounds: [],
    closed: [],
    segments: {
      xy: new Float64Array(0),
      distance_m: new Float64Array(0),
      cause: Int32Array.from({ length: points }, (_, i) => i),
    },
    passable: [],
    lowest_m: Number.NEGATIVE_INFINITY,
    highest_m: Number.POSITIVE_INFINITY,
  };
}

/** Every piece as two points of the plane. */
export function drawnPieces({ axes, lines, pieces }: LaidOut): (readonly [Point, Point])[] {
  const drawn: (readonly [Point, Point])[] = [];
  eachPiece(pieces, (line, from_m, to_m) => {
    const v = lines.first_m + line * lines.spacing_m;
    drawn.push([turnBack(from_m, v, axes), turnBack(to_m, v, axes)]);
  });
  return drawn;
}

export function eachPiece(pieces: LineIntervals, see: (line: number, from_m: number, to_m: number) => void): void {
  for (let line = 0; line + 1 < pieces.start.length; line++) {
    for (let n = pieces.start[line] ?? 0; n < (pieces.start[line + 1] ?? 0); n++) {
      see(line, pieces.u[2 * n] ?? 0, pieces.u[2 * n + 1] ?? 0);
    }
  }
}

/** Ring sets turned and shifted. */
export function posedRings({ xy, ringStart }: RingSet, pose: Pose): RingSet {
  return { xy: posed(xy, pose), ringStart };
}
