import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** ISO 11783-10 task data. */
export const isoTaskDataReader: Reader = {
  title: "ISO 11783-10 task data",
  endings: ["zip", "xml"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "ISO 11783-10 task data", "it is not read yet")]),
};
