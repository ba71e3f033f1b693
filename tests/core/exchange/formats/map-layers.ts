import type { Layer } from "../../../../src/core/exchange/layers/layer.ts";
import { createLayer, createLayerFeature, placeOf } from "../../../support/create-hand-over-job.ts";

/** Letters that formats stumble over, all in names. */
export const names = {
  parcel: "Söhne & Töchter <oben>",
  two: "Viña – dos partes",
  row: `Row "1" 'x'`,
  mark: "=1+1",
  pin: "Gate\u{0}\u{b}pin",
} as const;

/** An area with a hole, one of two parts, a line, a point with a height of 0 and one with none; with texts, numbers and a yes. Invented. */
export function mapLayers(): readonly Layer[] {
  const square = (lon: number, lat: number, size: number) => [
    placeOf(lon, lat),
    placeOf(lon + size, lat),
    placeOf(lon + size, lat + size),
    placeOf(lon, lat + size),
  ];
  const hole = [...square(-122.715512345678, 38.293012345678, 0.0002)].reverse();
  const columns = [
    { name: "role", type: "text" },
    { name: "length_m", type: "number", decimals: 3 },
    { name: "rows", type: "whole" },
    { name: "sketch", type: "yes" },
  ] as const;
  return [
    createLayer({ kind: "parcels", shape: "area", columns }, [
      createLayerFeature(
        "parcel-1",
        names.parcel,
        { shape: "area", polygons: [[square(-122.716512345678, 38.292112345678, 0.002), hole]] },
        ["parcel", 12.345, 0, true],
      ),
      createLayerFeature(
        "parcel-2",
        names.two,
        { shape: "area", polygons: [[square(-122.713, 38.292, 0.001)], [square(-122.711, 38.292, 0.001)]] },
        ["parcel", null, null, null],
      ),
    ]),
    createLayer({ kind: "rows", shape: "line", columns }, [
      createLayerFeature(
        "row-1",
        names.row,
        {
          shape: "line",
          places: [
            placeOf(-122.716412345678, 38.292156789012, 101.123456),
            placeOf(-122.714112345678, 38.292156789012, 99),
          ],
        },
        ["row", 0, 1, null],
      ),
    ]),
    createLayer({ kind: "marks", shape: "point", columns }, [
      createLayerFeature(
        "mark-1",
        names.mark,
        { shape: "point", place: placeOf(-122.716512345678, 38.292012345678, 0) },
        ["mark", null, null, null],
      ),
      createLayerFeature("mark-2", names.pin, { shape: "point", place: placeOf(0.0000000123, -0.0000000123) }, [
        "mark",
        1e-7,
        null,
        null,
      ]),
    ]),
  ];
}
