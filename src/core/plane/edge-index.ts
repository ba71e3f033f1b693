import Flatbush from "flatbush";
import { nearestOnSegment } from "./segment.ts";

/** Closed rings of one area in plane metres: x and y in turn, the closing edge implied; even-odd over all rings. */
export type PlaneRings = readonly Float64Array[];

export interface Edge {
  readonly ring: number;
  /** Number of the edge within its ring: that of the point it begins at. */
  readonly number: number;
  readonly px: number;
  readonly py: number;
  readonly qx: number;
  readonly qy: number;
}

/** The edges of rings, found by place in logarithmic time. */
export interface EdgeIndex {
  readonly edges: readonly Edge[];
  readonly box: readonly [minX: number, minY: number, maxX: number, maxY: number];
  /** Edges whose box comes within a distance of the box of an edge. */
  near(edge: Pick<Edge, "px" | "py" | "qx" | "qy">, reach_m: number): readonly Edge[];
  /** Even-odd; on the boundary either answer may come. */
  isInside(x: number, y: number): boolean;
  isOnBoundary(x: number, y: number, reach_m: number): boolean;
}

/** An index over rings that have at least one edge in all. */
export function createEdgeIndex(rings: PlaneRings): EdgeIndex {
  const edges = rings.flatMap((xy, ring) => edgesOf(xy, ring));
  const tree = new Flatbush(Math.max(1, edges.length));
  for (const { px, py, qx, qy } of edges) {
    tree.add(Math.min(px, qx), Math.min(py, qy), Math.max(px, qx), Math.max(py, qy));
  }
  if (edges.length === 0) tree.add(0, 0, 0, 0);
  tree.finish();
  const found = (minX: number, minY: number, maxX: number, maxY: number): readonly Edge[] => {
    const list: Edge[] = [];
    for (const i of tree.search(minX, minY, maxX, maxY)) {
      const edge = edges[i];
      if (edge !== undefined) list.push(edge);
    }
    return list;
  };
  return {
    edges,
    box: [tree.minX, tree.minY, tree.maxX, tree.maxY],
    near: ({ px, py, qx, qy }, reach_m) =>
      found(
        Math.min(px, qx) - reach_m,
        Math.min(py, qy) - reach_m,
        Math.max(px, qx) + reach_m,
        Math.max(py, qy) + reach_m,
      ),
    isInside: (x, y) => {
      let inside = false;
      for (const { px, py, qx, qy } of found(x, y, Number.POSITIVE_INFINITY, y)) {
        if (py > y !== qy > y && x < px + ((y - py) * (qx - px)) / (qy - py)) inside = !inside;
      }
      return inside;
    },
    isOnBoundary: (x, y, reach_m) =>
      found(x - reach_m, y - reach_m, x + reach_m, y + reach_m).some(
        ({ px, py, qx, qy }) => nearestOnSegment(x, y, px, py, qx, qy).distance_m <= reach_m,
      ),
  };
}

const indexes = new WeakMap<Float64Array, EdgeIndex>();

/** The index over one ring, kept as long as the ring: it is asked for crossings, for each hole and for each neighbour. */
export function ringIndex(ring: Float64Array): EdgeIndex {
  const known = indexes.get(ring);
  if (known !== undefined) return known;
  const index = createEdgeIndex([ring]);
  indexes.set(ring, index);
  return index;
}

function edgesOf(xy: Float64Array, ring: number): Edge[] {
  const points = xy.length / 2;
  return Array.from({ length: points }, (_, i) => {
    const j = i + 1 < points ? i + 1 : 0;
    return { ring, number: i, px: at(xy, 2 * i), py: at(xy, 2 * i + 1), qx: at(xy, 2 * j), qy: at(xy, 2 * j + 1) };
  });
}

function at(xy: Float64Array, i: number): number {
  return xy[i] ?? 0;
}
