import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** LandXML. */
export const landXmlReader: Reader = {
  title: "LandXML",
  endings: ["xml", "landxml"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "LandXML", "it is not read yet")]),
};
