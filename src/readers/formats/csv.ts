import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** CSV table. */
export const csvReader: Reader = {
  title: "CSV table",
  endings: ["csv", "txt", "tsv"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "CSV table", "it is not read yet")]),
};
