import { type PlanePoint, planePoint } from "../../../plane/coordinate.ts";
import type { Frame } from "../../../plane/frame.ts";
import type { LayerGeometry } from "../../layers/layer.ts";
import { placesOf } from "../../layers/places-of.ts";

/** Area of a shape in the local plane, holes taken off; 0 of points and lines. */
export function areaOf_m2(geometry: LayerGeometry, frame: Frame): number {
  return ringsOf(geometry, frame).reduce((sum_m2, ring) => sum_m2 + signedArea_m2(ring), 0);
}

/** Whether a place lies in an area: outer rings and holes count alike, a place between them is in. */
export function isIn([x, y]: PlanePoint, geometry: LayerGeometry, frame: Frame): boolean {
  let isInside = false;
  for (const ring of ringsOf(geometry, frame)) {
    for (const [i, [x1, y1]] of ring.entries()) {
      const [x0, y0] = ring[i === 0 ? ring.length - 1 : i - 1] ?? [x1, y1];
      if (y0 > y !== y1 > y && x < ((x1 - x0) * (y - y0)) / (y1 - y0) + x0) isInside = !isInside;
    }
  }
  return isInside;
}

/** The mean of a shape's places. */
export function middleOf(geometry: LayerGeometry, frame: Frame): PlanePoint {
  const places = placesOf(geometry).map(({ at }) => frame.toPlane(at));
  const mean = (axis: 0 | 1) => places.reduce((sum, place) => sum + place[axis], 0) / Math.max(1, places.length);
  return planePoint(mean(0), mean(1));
}

function ringsOf(geometry: LayerGeometry, frame: Frame): readonly (readonly PlanePoint[])[] {
  if (geometry.shape !== "area") return [];
  return geometry.polygons.flat().map((ring) => ring.map(({ at }) => frame.toPlane(at)));
}

/** Above 0 counter-clockwise, as outer rings are; holes come off. */
function signedArea_m2(ring: readonly PlanePoint[]): number {
  const twice_m2 = ring.reduce((sum_m2, [x1, y1], i) => {
    const [x0, y0] = ring[i === 0 ? ring.length - 1 : i - 1] ?? [x1, y1];
    return sum_m2 + x0 * y1 - x1 * y0;
  }, 0);
  return twice_m2 / 2;
}
