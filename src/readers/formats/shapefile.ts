import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** ESRI shapefile. */
export const shapefileReader: Reader = {
  title: "ESRI shapefile",
  endings: ["zip", "shp"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "ESRI shapefile", "it is not read yet")]),
};
