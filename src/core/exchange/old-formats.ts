import type { FeatureCollection } from "geojson";
import type { Plan } from "../plan.ts";
import { listCsv, postsCsv, rowsCsv, stakesCsv, vinesCsv } from "./csv.ts";
import { geoJsonText, postsGeoJson, rowsGeoJson, stakesGeoJson, vinesGeoJson } from "./geojson.ts";
import { listOf } from "./lists/lists.ts";
import { planJson } from "./plan-json.ts";
import { priceListJson } from "./price-list.ts";
import { routeGeoJson, stationsGeoJson } from "./route-geojson.ts";
import { stationsCsv } from "./stations-csv.ts";

/** One file that a plan can be handed over as. */
export interface ExportFormat {
  /** What is in it. */
  readonly of: "rows" | "vines" | "posts" | "stakes" | "route" | "stations" | "materials" | "coils" | "prices" | "plan";
  /** Which format it is in; also the extension of its file. */
  readonly as: "geojson" | "csv" | "json";
  readonly mediaType: string;
  /** True when it belongs to the set of files handed over without being asked for one by one. */
  readonly isDelivered: boolean;
  text(plan: Plan): string;
  /** The features before they are text, for formats that are GeoJSON; else null. */
  readonly collection: ((plan: Plan) => FeatureCollection) | null;
}

/** Everything a plan can be written as; a new format is a new line here. */
export const formats: readonly ExportFormat[] = [
  geoJson("rows", rowsGeoJson, true),
  geoJson("vines", vinesGeoJson, true),
  geoJson("posts", postsGeoJson, true),
  geoJson("stakes", stakesGeoJson, false),
  geoJson("route", routeGeoJson, true),
  geoJson("stations", stationsGeoJson, false),
  csv("rows", rowsCsv, true),
  csv("vines", vinesCsv, false),
  csv("posts", postsCsv, false),
  csv("stakes", stakesCsv, false),
  csv("stations", stationsCsv, true),
  csv("materials", (plan) => listCsv(listOf.materials(plan)), true),
  csv("coils", (plan) => listCsv(listOf.coils(plan)), true),
  csv("prices", (plan) => listCsv(listOf.prices(plan)), false),
  json("prices", priceListJson, false),
  json("plan", (plan) => `${JSON.stringify(planJson(plan), null, 2)}\n`, true),
];

/** File name of an export, such as "rows.geojson". */
export function fileName(format: ExportFormat): string {
  return `${format.of}.${format.as}`;
}

function geoJson(
  of: ExportFormat["of"],
  collection: (plan: Plan) => FeatureCollection,
  isDelivered: boolean,
): ExportFormat {
  const text = (plan: Plan) => geoJsonText(collection(plan));
  return { of, as: "geojson", mediaType: "application/geo+json", isDelivered, text, collection };
}

function csv(of: ExportFormat["of"], text: (plan: Plan) => string, isDelivered: boolean): ExportFormat {
  return { of, as: "csv", mediaType: "text/csv; charset=utf-8; header=present", isDelivered, text, collection: null };
}

function json(of: ExportFormat["of"], text: (plan: Plan) => string, isDelivered: boolean): ExportFormat {
  return { of, as: "json", mediaType: "application/json", isDelivered, text, collection: null };
}
