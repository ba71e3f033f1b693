import type { Format } from "./format.ts";
import { csvTables } from "./formats/csv.ts";
import { dxf } from "./formats/dxf.ts";
import { geoJson } from "./formats/geojson.ts";
import { geoPackage } from "./formats/geopackage.ts";
import { gpx } from "./formats/gpx.ts";
import { isoTaskData } from "./formats/iso-task-data.ts";
import { json } from "./formats/json.ts";
import { kml } from "./formats/kml.ts";
import { kmz } from "./formats/kmz.ts";
import { landXml } from "./formats/landxml.ts";
import { shapefile } from "./formats/shapefile.ts";
import { surveyCsv } from "./formats/survey-csv.ts";
import { xlsx } from "./formats/xlsx.ts";

/** Everything a plan can be written as; a new format is a new file and a new line here. */
export const formats: readonly Format[] = [
  geoJson,
  kml,
  kmz,
  gpx,
  csvTables,
  surveyCsv,
  shapefile,
  dxf,
  isoTaskData,
  landXml,
  xlsx,
  geoPackage,
  json,
];

/** The format of a name that stands in the list. */
export function formatNamed(name: string): Format {
  const found = formats.find((format) => format.name === name);
  if (found === undefined) throw new Error(`no format is called ${name}`);
  return found;
}
