import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** XLSX workbook. */
export const xlsxReader: Reader = {
  title: "XLSX workbook",
  endings: ["xlsx"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "XLSX workbook", "it is not read yet")]),
};
