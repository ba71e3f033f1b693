import {
  Clipper,
  Clipper64,
  ClipType,
  FillRule,
  type Path64,
  type Paths64,
  type PolyPath64,
  PolyTree64,
} from "clipper2-ts";
import { type BandSet, bandOutlines } from "./band-outline.ts";

/** Closed rings in plane metres: x, y pairs, ring r takes points ringStart[r] to ringStart[r + 1]; the closing edge is implied. */
export interface RingSet {
  readonly xy: Float64Array;
  readonly ringStart: Int32Array;
}

/** What the planting area is worked out from: plain data, so that it can be worked out elsewhere. */
export interface PlantingParts {
  /** Even-odd within one, united over the list. */
  readonly outlines: readonly RingSet[];
  /** What planting stays out of, even-odd each. */
  readonly closed: readonly RingSet[];
  readonly segments: BandSet;
}

/** Polygons in plane metres, each outer ring first (counter-clockwise), then its holes (clockwise); rings are x, y pairs without a closing point. */
export interface Overlay {
  readonly area_m2: number;
  readonly polygons: readonly (readonly Float64Array[])[];
}

/**
 * The ground that planting may use: outlines − closed areas − everything within its distance of a segment.
 * For drawing and for its area only; rows never come from it. Corners lie on a grid of 0.1 mm or finer for parcels up to 4 km across
 * (1 mm up to 40 km); arcs stand off by at most 1 mm and keep their area.
 */
export function plantingArea(parts: PlantingParts): Overlay {
  const grid = gridFor(parts.outlines);
  const land = united(parts.outlines, grid);
  const taken = united(parts.closed, grid);
  for (const outline of bandOutlines(withinReach(parts.segments, grid))) {
    const path = toPath(outline, 0, outline.length / 2, grid);
    // On the grid a sliver may turn over; counted backwards it would open a hole where two lie on each other.
    if (Clipper.area(path) > 0) taken.push(path);
  }
  const tree = new PolyTree64();
  const clipper = new Clipper64();
  clipper.addSubject(land);
  clipper.addClip(inGroups(taken));
  clipper.execute(ClipType.Difference, FillRule.NonZero, tree);
  const polygons: Float64Array[][] = [];
  collect(tree, grid, polygons);
  return { area_m2: tree.area() / grid.scale ** 2, polygons };
}

/**
 * The ground of the outlines that lies within any of some areas (null: anywhere) and outside all of others; even-odd within one set,
 * united over each list. For drawing and handing over; corners lie on the same grid as those of `plantingArea`.
 */
export function sharedLand(
  outlines: readonly RingSet[],
  within: readonly RingSet[] | null,
  without: readonly RingSet[],
): Overlay {
  const grid = gridFor([...outlines, ...(within ?? []), ...without]);
  const land = united(outlines, grid);
  const kept = within === null ? land : clipped(ClipType.Intersection, land, united(within, grid));
  const tree = new PolyTree64();
  const clipper = new Clipper64();
  clipper.addSubject(kept);
  clipper.addClip(united(without, grid));
  clipper.execute(ClipType.Difference, FillRule.NonZero, tree);
  const polygons: Float64Array[][] = [];
  collect(tree, grid, polygons);
  return { area_m2: tree.area() / grid.scale ** 2, polygons };
}

function clipped(type: ClipType, subject: Paths64, clip: Paths64): Paths64 {
  const clipper = new Clipper64();
  clipper.addSubject(subject);
  clipper.addClip(clip);
  const left: Paths64 = [];
  clipper.execute(type, FillRule.NonZero, left);
  return left;
}

/** Paths that are united at once; neighbours along an outline, which overlap each other and nothing else. */
const groupSize = 32;

/**
 * The same ground as the paths, each counter-clockwise, cover: united group by group, so that the thousands of bands along a crooked
 * outline are not all looked at together wherever two of them cross.
 */
function inGroups(paths: Paths64): Paths64 {
  if (paths.length <= groupSize) return paths;
  const groups: Paths64 = [];
  for (let i = 0; i < paths.length; i += groupSize) {
    groups.push(...Clipper.union(paths.slice(i, i + groupSize), FillRule.NonZero));
  }
  return groups;
}

/** Whole-number grid around the outlines; a power of two so that scaling back is exact. */
interface Grid {
  readonly x: number;
  readonly y: number;
  /** Steps a metre. */
  readonly scale: number;
  readonly halfWidth_m: number;
  readonly halfHeight_m: number;
}

/** The overlay multiplies differences of grid coordinates; up to this they stay whole numbers in a double. */
const widestGrid = 8e7;

function gridFor(outlines: readonly RingSet[]): Grid {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { xy } of outlines) {
    for (let i = 0; i + 1 < xy.length; i += 2) {
      const [x, y] = [xy[i] ?? 0, xy[i + 1] ?? 0];
      if (x < west) west = x;
      if (x > east) east = x;
      if (y < south) south = y;
      if (y > north) north = y;
    }
  }
  if (!(east >= west)) [west, south, east, north] = [0, 0, 0, 0];
  const extent_m = Math.max(east - west, north - south, 1);
  return {
    x: (west + east) / 2,
    y: (south + north) / 2,
    scale: 2 ** Math.floor(Math.log2(widestGrid / extent_m)),
    halfWidth_m: (east - west) / 2,
    halfHeight_m: (north - south) / 2,
  };
}

function toPath(xy: Float64Array, from: number, to: number, { x, y, scale }: Grid): Path64 {
  const path: Path64 = [];
  for (let i = from; i < to; i++) {
    path.push({ x: Math.round(((xy[2 * i] ?? 0) - x) * scale), y: Math.round(((xy[2 * i + 1] ?? 0) - y) * scale) });
  }
  return path;
}

/** Union of ring sets, outer rings counter-clockwise and holes clockwise, so that it holds under the non-zero rule. */
function united(sets: readonly RingSet[], grid: Grid): Paths64 {
  const each = sets.map(({ xy, ringStart }) => {
    const paths: Paths64 = [];
    for (let r = 0; r + 1 < ringStart.length; r++) {
      paths.push(toPath(xy, ringStart[r] ?? 0, ringStart[r + 1] ?? 0, grid));
    }
    return Clipper.union(paths, FillRule.EvenOdd);
  });
  const [only] = each;
  return each.length === 1 && only !== undefined ? only : Clipper.union(each.flat(), FillRule.NonZero);
}

/** Segments whose band can touch the outlines. */
function withinReach({ xy, distance_m }: BandSet, grid: Grid): BandSet {
  const kept: number[] = [];
  distance_m.forEach((distance, i) => {
    const [x1, y1, x2, y2] = xy.subarray(4 * i, 4 * i + 4);
    if (x1 === undefined || y1 === undefined || x2 === undefined || y2 === undefined) return;
    const awayX = Math.max(Math.min(x1, x2) - grid.x, grid.x - Math.max(x1, x2)) - grid.halfWidth_m;
    const awayY = Math.max(Math.min(y1, y2) - grid.y, grid.y - Math.max(y1, y2)) - grid.halfHeight_m;
    if (Math.max(awayX, awayY) < distance) kept.push(i);
  });
  return {
    xy: Float64Array.from(kept.flatMap((i) => [...xy.subarray(4 * i, 4 * i + 4)])),
    distance_m: Float64Array.from(kept, (i) => distance_m[i] ?? 0),
  };
}

/** Outer rings at odd depth of the tree, each with the holes right under it; islands in holes are polygons of their own. */
function collect(parent: PolyPath64, grid: Grid, polygons: Float64Array[][]): void {
  for (let i = 0; i < parent.count; i++) {
    const outer = parent.child(i);
    const polygon: Float64Array[] = [fromPath(outer.poly ?? [], grid)];
    polygons.push(polygon);
    for (let k = 0; k < outer.count; k++) {
      const hole = outer.child(k);
      polygon.push(fromPath(hole.poly ?? [], grid));
      collect(hole, grid, polygons);
    }
  }
}

function fromPath(path: Path64, { x, y, scale }: Grid): Float64Array {
  const xy = new Float64Array(2 * path.length);
  path.forEach((point, i) => {
    xy[2 * i] = point.x / scale + x;
    xy[2 * i + 1] = point.y / scale + y;
  });
  return xy;
}
