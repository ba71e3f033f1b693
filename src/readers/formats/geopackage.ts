import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** GeoPackage. */
export const geoPackageReader: Reader = {
  title: "GeoPackage",
  endings: ["gpkg"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "GeoPackage", "it is not read yet")]),
};
