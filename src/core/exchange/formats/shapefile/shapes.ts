import type { CoordinateSystem } from "../../../systems/coordinate-system.ts";
import type { LayerGeometry, Place } from "../../layers/layer.ts";
import { growingCounts, growingNumbers } from "./growing.ts";

/** The geometries of a layer as they stand in a shapefile, packed: point after point, how many a part, how many parts a shape. */
export interface Shapes {
  readonly shape: LayerGeometry["shape"];
  /** x, y and height of each point; NaN for a height that is not known. */
  readonly xyz: Float64Array;
  readonly pointsOfPart: Int32Array;
  readonly partsOfShape: Int32Array;
  /** Points whose height is known. */
  readonly withHeight: number;
}

/** Gathers geometries one by one; outer rings turn clockwise, holes the other way, and rings end where they began (technical description, page 8). */
export function shapesGathered(shape: LayerGeometry["shape"], system: CoordinateSystem) {
  const xyz = growingNumbers();
  const pointsOfPart = growingCounts();
  const partsOfShape = growingCounts();
  let withHeight = 0;

  const parts = (count: number): void => {
    const at = partsOfShape.count();
    partsOfShape.withRoom(1)[at] = count;
    partsOfShape.counted(at + 1);
  };
  const part = (places: readonly Place[]): void => {
    const at = pointsOfPart.count();
    pointsOfPart.withRoom(1)[at] = places.length;
    pointsOfPart.counted(at + 1);
    let first = xyz.count();
    const numbers = xyz.withRoom(3 * places.length);
    for (const { at: place, height_m } of places) {
      const [x, y] = system.fromLonLat(place[0], place[1]);
      numbers[first] = x;
      numbers[first + 1] = y;
      numbers[first + 2] = height_m ?? NaN;
      if (height_m !== null) withHeight++;
      first += 3;
    }
    xyz.counted(first);
  };
  return {
    add: (geometry: LayerGeometry): void => {
      if (geometry.shape === "area") {
        const rings = geometry.polygons.flatMap((polygon) => polygon.map((places, i) => closedRing(places, i === 0)));
        parts(rings.length);
        rings.forEach(part);
      } else {
        parts(1);
        part(geometry.shape === "point" ? [geometry.place] : geometry.places);
      }
    },
    all: (): Shapes => ({
      shape,
      xyz: xyz.all(),
      pointsOfPart: pointsOfPart.all(),
      partsOfShape: partsOfShape.all(),
      withHeight,
    }),
  };
}

function closedRing(places: readonly Place[], isOuter: boolean): readonly Place[] {
  const isClockwise = doubleArea(places) < 0;
  const turned = isClockwise === isOuter ? places : [...places].reverse();
  return [...turned, ...turned.slice(0, 1)];
}

/** Twice the area in square degrees, positive counter-clockwise; taken from the first place so that small rings far from zero keep their sign. */
function doubleArea(places: readonly Place[]): number {
  const [lon = 0, lat = 0] = places[0]?.at ?? [];
  let sum = 0;
  places.forEach(({ at }, i) => {
    const next = places[(i + 1) % places.length]?.at ?? at;
    sum += (at[0] - lon) * (next[1] - lat) - (next[0] - lon) * (at[1] - lat);
  });
  return sum;
}
