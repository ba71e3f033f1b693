/** A rectangle of the plane, metres. */
export interface PlaneBox {
  readonly west_m: number;
  readonly south_m: number;
  readonly east_m: number;
  readonly north_m: number;
}

/** x and y of both ends, plane metres. */
export type PlaneSegment = readonly [x1_m: number, y1_m: number, x2_m: number, y2_m: number];

const leastGap_px = 70;
const piecesPerLine = 4;

/** Spacing of the grid: the least of 1, 2, 5, 10, … metres that leaves room between lines. */
export function gridStep_m(metresPerPixel: number): number {
  const least_m = metresPerPixel * leastGap_px;
  const decade = 10 ** Math.floor(Math.log10(Math.max(1, least_m)));
  return [1, 2, 5, 10].map((factor) => factor * decade).find((step_m) => step_m >= least_m) ?? 10 * decade;
}

/** Lines at whole multiples of the step through a box, each in a few pieces, since the plane is not the map's own. */
export function gridSegments(box: PlaneBox, step_m: number): PlaneSegment[] {
  const { west_m, south_m, east_m, north_m } = box;
  return [
    ...multiples(west_m, east_m, step_m).flatMap((x_m) =>
      pieces(south_m, north_m).map(([from, to]): PlaneSegment => [x_m, from, x_m, to]),
    ),
    ...multiples(south_m, north_m, step_m).flatMap((y_m) =>
      pieces(west_m, east_m).map(([from, to]): PlaneSegment => [from, y_m, to, y_m]),
    ),
  ];
}

function pieces(from_m: number, to_m: number): (readonly [from_m: number, to_m: number])[] {
  const piece_m = (to_m - from_m) / piecesPerLine;
  return Array.from({ length: piecesPerLine }, (_, i) => [from_m + i * piece_m, from_m + (i + 1) * piece_m]);
}

function multiples(from_m: number, to_m: number, step_m: number): number[] {
  const first = Math.ceil(from_m / step_m);
  const count = Math.max(0, Math.floor(to_m / step_m) - first + 1);
  return Array.from({ length: count }, (_, i) => (first + i) * step_m);
}
