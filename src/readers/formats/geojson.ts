import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** GeoJSON. */
export const geoJsonReader: Reader = {
  title: "GeoJSON",
  endings: ["geojson", "json"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "GeoJSON", "it is not read yet")]),
};
