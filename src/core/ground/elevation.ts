/**
 * Heights of the ground over the plane, plain data. Flat ground has the same height everywhere; spot heights are joined by triangles
 * (Delaunay), within which the ground is a plane.
 */
export type Elevation =
  | { readonly kind: "flat" }
  | {
      readonly kind: "spot-heights";
      /** x, y pairs, plane metres. */
      readonly xy: Float64Array;
      readonly height_m: Float64Array;
      /** Three corners a triangle, and for every side the same side of its neighbour, or -1. */
      readonly triangles: Uint32Array;
      readonly halfedges: Int32Array;
    };

export const flatGround: Elevation = { kind: "flat" };
