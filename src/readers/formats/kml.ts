import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** KML 2.2. */
export const kmlReader: Reader = {
  title: "KML 2.2",
  endings: ["kml"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "KML 2.2", "it is not read yet")]),
};
