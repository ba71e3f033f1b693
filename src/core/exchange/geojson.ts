import type { Feature, FeatureCollection, LineString, MultiLineString, Point } from "geojson";
import type { Plan } from "../plan.ts";
import { lineGeometry } from "./line-geometry.ts";
import { placed, postsOf, rowLabel, type Stake, stakesOf, vinesOf } from "./positions.ts";
import { millimetres, position } from "./rounding.ts";
import { sketchProperty } from "./sketch.ts";

/**
 * Row lines as GeoJSON (RFC 7946), start to end, 8 decimals; lengths in properties are rounded to the millimetre. A row that crosses
 * the antimeridian is cut there into two lines, as RFC 7946 section 3.1.9 asks. Rows on an outline that was walked have `sketch: true`.
 * Empty when the plan has no rows.
 */
export function rowsGeoJson(plan: Plan): FeatureCollection<LineString | MultiLineString> {
  const features = (plan.rows?.rows ?? []).map((row, index): Feature<LineString | MultiLineString> => {
    const wire_m = Object.entries(plan.trellis?.rows[index]?.wire_m ?? {});
    return {
      type: "Feature",
      id: `row-${row.id}`,
      geometry: lineGeometry([placed(plan, row.start), placed(plan, row.end)]),
      properties: {
        role: "row",
        block: row.block,
        row: rowLabel(row),
        length_m: millimetres(row.length_m),
        groundLength_m: millimetres(row.groundLength_m),
        waterEnd: plan.mainline?.waterEnd[index] ?? null,
        vines: row.vines,
        linePosts: row.linePosts,
        lateral_m: millimetres(plan.drip?.rows[index]?.lateral_m ?? 0),
        ...Object.fromEntries(wire_m.map(([purpose, length_m]) => [`${purpose}Wire_m`, millimetres(length_m)])),
        ...sketchProperty(plan),
      },
    };
  });
  return { type: "FeatureCollection", features };
}

/** Every vine as a point with its row, its number in the row and its station. */
export function vinesGeoJson(plan: Plan): FeatureCollection<Point> {
  return points(vinesOf(plan), plan);
}

/** Every end post and line post as a point; the kind is the `role`. */
export function postsGeoJson(plan: Plan): FeatureCollection<Point> {
  return points(postsOf(plan), plan);
}

/** Every training stake as a point. */
export function stakesGeoJson(plan: Plan): FeatureCollection<Point> {
  return points(stakesOf(plan), plan);
}

/** A collection as text with one feature a line, so that two plans can be compared line by line. */
export function geoJsonText(collection: FeatureCollection): string {
  const lines = collection.features.map((feature) => JSON.stringify(feature));
  return `{"type":"FeatureCollection","features":[${lines.length === 0 ? "" : `\n${lines.join(",\n")}\n`}]}\n`;
}

function points(stakes: Iterable<Stake>, plan: Plan): FeatureCollection<Point> {
  const sketch = sketchProperty(plan);
  const features: Feature<Point>[] = [];
  for (const { id, kind, row, number, station_m, at } of stakes) {
    features.push({
      type: "Feature",
      id,
      geometry: { type: "Point", coordinates: position(at) },
      properties: {
        role: kind,
        block: row.block,
        row: rowLabel(row),
        number,
        station_m: millimetres(station_m),
        ...sketch,
      },
    });
  }
  return { type: "FeatureCollection", features };
}
