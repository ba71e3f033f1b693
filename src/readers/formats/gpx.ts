import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** GPX 1.1. */
export const gpxReader: Reader = {
  title: "GPX 1.1",
  endings: ["gpx"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "GPX 1.1", "it is not read yet")]),
};
