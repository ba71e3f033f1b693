import type { RingSet } from "./overlay.ts";

/** An edge from its lower to its upper end; level edges bound no area. */
interface RisingEdge {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  /** Number of its ring set over all layers. */
  readonly set: number;
}

/**
 * Area in m² of the ground that lies in every one of the layers; a layer is the union of its ring sets, each even-odd. Exact but for
 * rounding, and without building a polygon: between two neighbouring heights at which an edge ends or two edges cross, the width of that
 * ground changes linearly, so its width half-way times the height is the area of the strip. Edges of one ring set may touch but not cross.
 */
export function coveredArea_m2(layers: readonly (readonly RingSet[])[]): number {
  const layerOf = layers.flatMap((sets, layer) => sets.map(() => layer));
  const edges = risingEdges(layers.flat());
  const heights = Float64Array.from([...edges.flatMap(({ y1, y2 }) => [y1, y2]), ...crossingHeights(edges)]).sort();
  let area_m2 = 0;
  let next = 0;
  let active: RisingEdge[] = [];
  for (let i = 0; i + 1 < heights.length; i++) {
    const [from, to] = [Number(heights[i]), Number(heights[i + 1])];
    if (from === to) continue;
    active = active.filter(({ y2 }) => y2 > from);
    for (let edge = edges[next]; edge !== undefined && edge.y1 <= from; edge = edges[++next]) {
      if (edge.y2 > from) active.push(edge);
    }
    area_m2 += (to - from) * coveredWidth(active, (from + to) / 2, layerOf, layers.length);
  }
  return area_m2;
}

/** All edges by their lower ends, relative to the first point, so that no digits are lost far from the origin. */
function risingEdges(sets: readonly RingSet[]): readonly RisingEdge[] {
  const [x0 = 0, y0 = 0] = sets[0]?.xy ?? [];
  const edges: RisingEdge[] = [];
  for (const [set, { xy, ringStart }] of sets.entries()) {
    for (let r = 0; r + 1 < ringStart.length; r++) {
      const [begin, end] = [Number(ringStart[r]), Number(ringStart[r + 1])];
      for (let p = begin; p < end; p++) {
        const q = p + 1 < end ? p + 1 : begin;
        const [px, py] = [Number(xy[2 * p]) - x0, Number(xy[2 * p + 1]) - y0];
        const [qx, qy] = [Number(xy[2 * q]) - x0, Number(xy[2 * q + 1]) - y0];
        if (py < qy) edges.push({ x1: px, y1: py, x2: qx, y2: qy, set });
        else if (qy < py) edges.push({ x1: qx, y1: qy, x2: px, y2: py, set });
      }
    }
  }
  return edges.sort((a, b) => a.y1 - b.y1);
}

/** Heights at which edges of different ring sets cross. */
function crossingHeights(edges: readonly RisingEdge[]): number[] {
  const heights: number[] = [];
  let active: RisingEdge[] = [];
  for (const edge of edges) {
    active = active.filter(({ y2 }) => y2 > edge.y1);
    for (const other of active) {
      if (other.set === edge.set) continue;
      if (Math.max(other.x1, other.x2) < Math.min(edge.x1, edge.x2)) continue;
      if (Math.min(other.x1, other.x2) > Math.max(edge.x1, edge.x2)) continue;
      const [low, high] = [Math.max(edge.y1, other.y1), Math.min(edge.y2, other.y2)];
      const atLow = across(edge, low) - across(other, low);
      const atHigh = across(edge, high) - across(other, high);
      if (atLow * atHigh < 0) heights.push(low + ((high - low) * atLow) / (atLow - atHigh));
    }
    active.push(edge);
  }
  return heights;
}

function across({ x1, y1, x2, y2 }: RisingEdge, y: number): number {
  return x1 + ((y - y1) * (x2 - x1)) / (y2 - y1);
}

/** Width at one height of what lies in every layer. */
function coveredWidth(
  active: readonly RisingEdge[],
  y: number,
  layerOf: readonly number[],
  layerCount: number,
): number {
  const crossed = active.map((edge) => ({ x: across(edge, y), set: edge.set })).sort((a, b) => a.x - b.x);
  const isWithin = new Uint8Array(layerOf.length);
  const setsWithin = new Int32Array(layerCount);
  let layersWithin = 0;
  let width_m = 0;
  let last = 0;
  for (const { x, set } of crossed) {
    if (layersWithin === layerCount) width_m += x - last;
    last = x;
    const layer = Number(layerOf[set]);
    const before = Number(setsWithin[layer]);
    isWithin[set] = 1 - Number(isWithin[set]);
    const after = before + (isWithin[set] === 1 ? 1 : -1);
    setsWithin[layer] = after;
    layersWithin += Number(after > 0) - Number(before > 0);
  }
  return width_m;
}
