import { failure } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { Reader } from "../reading.ts";

/** KMZ. */
export const kmzReader: Reader = {
  title: "KMZ",
  endings: ["kmz"],
  most_bytes: 50e6,
  begins: () => false,
  read: async ({ name }) => failure([brokenFile(name, "KMZ", "it is not read yet")]),
};
