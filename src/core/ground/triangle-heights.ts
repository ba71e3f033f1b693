/** Spot heights joined by triangles. */
export interface TriangleGround {
  readonly kind: "spot-heights";
  /** x, y pairs, plane metres. */
  readonly xy: Float64Array;
  readonly height_m: Float64Array;
  /** Three corners a triangle, and for every side the same side of its neighbour, or -1. */
  readonly triangles: Uint32Array;
  readonly halfedges: Int32Array;
}

/** A place so little outside all triangles is on the outermost line: rows may end there. */
const onEdge_m = 1e-3;
/** Twice the area by which rounding may take a place out of a triangle. */
const rounding_m2 = 1e-7;

/** Reads heights between spot heights: walks from triangle to triangle, from where the last one was found. */
export function triangleHeights({
  xy,
  height_m,
  triangles,
  halfedges,
}: TriangleGround): (x_m: number, y_m: number) => number | null {
  /** Twice the area between a side and a place, above 0 on the inner side: triangles turn with the clock in the plane. */
  const inward_m2 = (side: number, x: number, y: number): number => {
    const p = 2 * Number(triangles[side]);
    const q = 2 * Number(triangles[side % 3 === 2 ? side - 2 : side + 1]);
    const px = Number(xy[p]);
    const py = Number(xy[p + 1]);
    return (Number(xy[q + 1]) - py) * (x - px) - (Number(xy[q]) - px) * (y - py);
  };
  const sideLength_m = (side: number): number => {
    const p = 2 * Number(triangles[side]);
    const q = 2 * Number(triangles[side % 3 === 2 ? side - 2 : side + 1]);
    return Math.hypot(Number(xy[q]) - Number(xy[p]), Number(xy[q + 1]) - Number(xy[p + 1]));
  };
  /** Mean of the corners by how near they are, never outside their heights; null where the triangle is not even near. */
  const heightIn = (triangle: number, x_m: number, y_m: number): number | null => {
    let sum = 0;
    let x = 0;
    let y = 0;
    let weights = 0;
    for (let side = 3 * triangle; side < 3 * triangle + 3; side++) {
      const corner = Number(triangles[side % 3 === 0 ? side + 2 : side - 1]);
      const weight = Math.max(0, inward_m2(side, x_m, y_m));
      sum += weight * Number(height_m[corner]);
      x += weight * Number(xy[2 * corner]);
      y += weight * Number(xy[2 * corner + 1]);
      weights += weight;
    }
    // Past a sharp corner a place is near the lines of both sides and far from the triangle.
    return Math.hypot(x / weights - x_m, y / weights - y_m) > onEdge_m ? null : sum / weights;
  };
  let last = 0;
  return (x_m, y_m) => {
    // A walk towards the place crosses every triangle of a Delaunay net once at most.
    for (let steps = 0; steps <= triangles.length; steps++) {
      let out = -1;
      let farthest_m2 = rounding_m2;
      for (let side = 3 * last; side < 3 * last + 3; side++) {
        const outside_m2 = -inward_m2(side, x_m, y_m);
        if (outside_m2 > farthest_m2) {
          farthest_m2 = outside_m2;
          out = side;
        }
      }
      if (out === -1) return heightIn(last, x_m, y_m);
      const next = Number(halfedges[out]);
      if (next === -1) return farthest_m2 / sideLength_m(out) > onEdge_m ? null : heightIn(last, x_m, y_m);
      last = Math.floor(next / 3);
    }
    return null;
  };
}
