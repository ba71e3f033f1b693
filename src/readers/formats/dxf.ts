import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** DXF. */
export const dxfReader: Reader = {
  title: "DXF",
  endings: ["dxf"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "DXF", "it is not read yet")]),
};
