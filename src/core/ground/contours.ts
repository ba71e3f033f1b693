import type { Elevation } from "./elevation.ts";
import type { PlaneBox } from "./plane-box.ts";
import { type SampledHeights, sampledHeights } from "./sampled-heights.ts";

/** One line of equal height. */
export interface Contour {
  readonly height_m: number;
  /** Every fifth level: drawn stronger. */
  readonly isMain: boolean;
  /** x, y pairs, plane metres; the first place again at the end where the line is closed. */
  readonly xy: Float64Array;
}

const leastSize_m = 1e-6;

/** Places along the longer side of the box that contours are drawn from. */
const samples = 200;

/**
 * Lines of equal height over a box, at whole multiples of the interval (marching squares on heights sampled from any kind of ground, the
 * crossing of each side by straight interpolation). Higher ground lies to the left of a line. Where the diagonals of a square disagree, its
 * middle decides. None over flat ground; a line ends where heights are not known.
 */
export function contours(elevation: Elevation, box: PlaneBox, interval_m: number): readonly Contour[] {
  if (elevation.kind === "flat") return [];
  const step_m = Math.max(box.east_m - box.west_m, box.north_m - box.south_m) / samples;
  if (!(step_m > 0) || !(interval_m > 0)) return [];
  const sampled = sampledHeights(elevation, box, step_m);
  const [least_m, most_m] = rangeOf(sampled.height_m);
  const lines: Contour[] = [];
  for (let level = Math.ceil(least_m / interval_m); level * interval_m <= most_m; level++) {
    const height_m = level * interval_m;
    for (const xy of linesAt(sampled, height_m)) lines.push({ height_m, isMain: level % 5 === 0, xy });
  }
  return lines;
}

/**
 * The interval that draws from 5 to 15 lines over a box: 1, 2 or 5 times a power of ten of the unit asked for (`unit_m`: 1, or 0.3048
 * for feet). null where the ground is flat, or not known, or rises less than a hundredth of the unit.
 */
export function contourInterval_m(elevation: Elevation, box: PlaneBox, unit_m = 1): number | null {
  if (elevation.kind === "flat") return null;
  const step_m = Math.max(box.east_m - box.west_m, box.north_m - box.south_m) / 50;
  if (!(step_m > 0)) return null;
  const [least_m, most_m] = rangeOf(sampledHeights(elevation, box, step_m).height_m);
  const rise = (most_m - least_m) / unit_m;
  if (!(rise > 0.01)) return null;
  // Ten lines or somewhat fewer: the next rounder interval above a twelfth of the rise makes at most 12 lines and at least 5.
  const wanted = rise / 12;
  const power = 10 ** Math.floor(Math.log10(wanted));
  const factor = [1, 2, 5, 10].find((each) => each * power >= wanted * (1 - 1e-9)) ?? 10;
  return factor * power * unit_m;
}

function rangeOf(heights: Float64Array): readonly [least_m: number, most_m: number] {
  let [least, most] = [Infinity, -Infinity];
  for (const height of heights) {
    if (height < least) least = height;
    if (height > most) most = height;
  }
  return [least, most];
}

/**
 * Sides of the lattice are numbered: the side from place p eastward is 2p, that northward is 2p + 1. In every square a piece of line runs
 * from one side to another, with the higher ground on its left; pieces that share a side are joined.
 *
 *     nw --n-- ne
 *     |        |
 *     w        e
 *     |        |
 *     sw --s-- se
 */
function linesAt({ columns, rows, west_m, south_m, step_m, height_m }: SampledHeights, level_m: number) {
  const next = new Map<number, number>();
  const isBehind = new Set<number>();
  for (let row = 0; row + 1 < rows; row++) {
    for (let column = 0; column + 1 < columns; column++) {
      const at = row * columns + column;
      const [sw, se] = [Number(height_m[at]), Number(height_m[at + 1])];
      const [nw, ne] = [Number(height_m[at + columns]), Number(height_m[at + columns + 1])];
      if (Number.isNaN(sw + se + nw + ne)) continue;
      const high =
        (sw >= level_m ? 1 : 0) + (se >= level_m ? 2 : 0) + (ne >= level_m ? 4 : 0) + (nw >= level_m ? 8 : 0);
      if (high === 0 || high === 15) continue;
      const sides = { south: 2 * at, west: 2 * at + 1, north: 2 * (at + columns), east: 2 * (at + 1) + 1 };
      const isMiddleHigh = (sw + se + nw + ne) / 4 >= level_m;
      const joined = isMiddleHigh ? joinedPieces[high] : undefined;
      for (const [from, to] of joined ?? pieces[high] ?? []) {
        next.set(sides[from], sides[to]);
        isBehind.add(sides[to]);
      }
    }
  }
  const place = (side: number, to: number[]) => {
    const at = side >> 1;
    const [column, row] = [at % columns, Math.floor(at / columns)];
    const isEastward = (side & 1) === 0;
    const [from, until] = [Number(height_m[at]), Number(height_m[at + (isEastward ? 1 : columns)])];
    const share = (level_m - from) / (until - from);
    to.push(west_m + (column + (isEastward ? share : 0)) * step_m, south_m + (row + (isEastward ? 0 : share)) * step_m);
  };
  const lines: Float64Array[] = [];
  const follow = (first: number) => {
    const xy: number[] = [];
    let side: number | undefined = first;
    while (side !== undefined) {
      place(side, xy);
      const after = next.get(side);
      next.delete(side);
      side = after;
    }
    // A summit of just this height has a ring without a size.
    if (xy.some((each, i) => Math.abs(each - Number(xy[i % 2])) > leastSize_m)) lines.push(Float64Array.from(xy));
  };
  // Lines with ends first; what is left then are rings.
  for (const from of [...next.keys()]) if (!isBehind.has(from)) follow(from);
  for (const from of [...next.keys()]) if (next.has(from)) follow(from);
  return lines;
}

type Side = "south" | "west" | "north" | "east";
type Pieces = readonly (readonly [from: Side, to: Side])[];

/** The pieces of line in one square by which of its corners are high: 1 south-west, 2 south-east, 4 north-east, 8 north-west. */
const pieces: readonly Pieces[] = [
  [],
  [["south", "west"]],
  [["east", "south"]],
  [["east", "west"]],
  [["north", "east"]],
  [
    ["south", "west"],
    ["north", "east"],
  ],
  [["north", "south"]],
  [["north", "west"]],
  [["west", "north"]],
  [["south", "north"]],
  [
    ["east", "south"],
    ["west", "north"],
  ],
  [["east", "north"]],
  [["west", "east"]],
  [["south", "east"]],
  [["west", "south"]],
  [],
];
/** Where two corners across are high and the middle is too: the high ground hangs together. */
const joinedPieces: Readonly<Record<number, Pieces>> = {
  5: [
    ["south", "east"],
    ["north", "west"],
  ],
  10: [
    ["east", "north"],
    ["west", "south"],
  ],
};
