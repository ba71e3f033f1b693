import type { FormatName, Thing } from "../../core/exchange/choice.ts";

/** What is ticked for a format before anyone chose: what who reads it asks for most (common practice, no source). */
export const usualThings: Readonly<Record<FormatName, readonly Thing[]>> = {
  geojson: ["rows"],
  kml: ["parcels", "blocks", "rows", "route"],
  kmz: ["parcels", "blocks", "rows", "route"],
  // Vines of a block never fit an old handheld.
  gpx: ["rows", "posts"],
  csv: ["rows"],
  "survey-csv": ["marks", "posts"],
  shapefile: ["rows", "vines", "posts"],
  dxf: ["parcels", "blocks", "rows", "posts", "route"],
  "iso-task-data": ["blocks", "rows"],
  landxml: ["marks", "route", "stations"],
  xlsx: ["materials", "coils"],
  geopackage: ["parcels", "blocks", "rows", "vines", "posts", "route"],
  json: ["plan"],
};

/** What formats are called where room is short. */
export const formatWords: Readonly<Record<FormatName, string>> = {
  geojson: "GeoJSON",
  kml: "KML",
  kmz: "KMZ",
  gpx: "GPX",
  csv: "CSV",
  "survey-csv": "Survey list",
  shapefile: "Shapefile",
  dxf: "DXF",
  "iso-task-data": "ISO 11783",
  landxml: "LandXML",
  xlsx: "XLSX",
  geopackage: "GeoPackage",
  json: "JSON",
};
