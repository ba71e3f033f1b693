import type { Feature, MultiLineString, Position } from "geojson";
import type { Placing } from "../../plugin/placing.ts";

/** A rectangle of the plane, metres. */
export interface PlaneBox {
  readonly west_m: number;
  readonly south_m: number;
  readonly east_m: number;
  readonly north_m: number;
}

const leastGap_px = 70;
const piecesPerLine = 4;

/** Spacing of the grid: the least of 1, 2, 5, 10, … metres that leaves room between lines. */
export function gridStep_m(metresPerPixel: number): number {
  const least_m = metresPerPixel * leastGap_px;
  const decade = 10 ** Math.floor(Math.log10(Math.max(1, least_m)));
  return [1, 2, 5, 10].map((factor) => factor * decade).find((step_m) => step_m >= least_m) ?? 10 * decade;
}

/** Lines at whole multiples of the step through a box, each in a few pieces, since the plane is not the map's own. */
export function gridLines(box: PlaneBox, step_m: number, placing: Placing): Feature<MultiLineString> {
  const coordinates: Position[][] = [];
  for (const x_m of multiples(box.west_m, box.east_m, step_m)) {
    coordinates.push(line((share) => placing.lngLat(x_m, box.south_m + share * (box.north_m - box.south_m))));
  }
  for (const y_m of multiples(box.south_m, box.north_m, step_m)) {
    coordinates.push(line((share) => placing.lngLat(box.west_m + share * (box.east_m - box.west_m), y_m)));
  }
  return { type: "Feature", properties: {}, geometry: { type: "MultiLineString", coordinates } };
}

function line(at: (share: number) => Position): Position[] {
  return Array.from({ length: piecesPerLine + 1 }, (_, i) => at(i / piecesPerLine));
}

function multiples(from_m: number, to_m: number, step_m: number): number[] {
  const first = Math.ceil(from_m / step_m);
  const count = Math.max(0, Math.floor(to_m / step_m) - first + 1);
  return Array.from({ length: count }, (_, i) => (first + i) * step_m);
}
