import { failure, success } from "../../core/outcome.ts";
import { nothingFound } from "../file-findings.ts";
import type { Reader } from "../reading.ts";
import { delimitedLines } from "../tables/delimited-lines.ts";
import { delimiterOf } from "../tables/delimiter-of.ts";
import { readTable } from "../tables/read-table.ts";
import type { ReadLine } from "../tables/table.ts";
import { tableLetters } from "../tables/table-letters.ts";

const title = "CSV table";

/**
 * Tables as text: heads that name their places, or point, northing, easting, height, code without any; commas, semicolons, tabs, bars or spaces
 * between cells, decimal points or commas, degrees or degrees, minutes and seconds, well-known text. Findings: those of `tableLetters` and
 * `readTable`, `readers/nothing-found`.
 */
export const csvReader: Reader = {
  title,
  endings: ["csv", "txt", "tsv"],
  most_bytes: 50e6,
  // Any text may be a table; its ending says that it is meant to be one.
  begins: () => false,
  read: async (file, answers, followed) => {
    const bytes = new Uint8Array(await file.slice(0, file.size).arrayBuffer());
    const letters = tableLetters(bytes, file.name, title);
    if (!letters.ok) return letters;
    const text = letters.value.replace(/^\uFEFF/, "");
    const delimiter = delimiterOf(text);
    const lines = () => withoutRemarks(delimitedLines(text, delimiter));
    const read = await readTable(
      { layer: null, delimiter, isTyped: false, lines },
      { name: file.name, title },
      answers,
      followed,
    );
    const findings = [...letters.findings, ...read.findings];
    if (!read.ok) return failure(findings);
    const { system, features, questions } = read.value;
    if (features.length === 0 && questions.length === 0) return failure([nothingFound(file.name, title), ...findings]);
    return success({ format: title, system, features, questions }, findings);
  },
};

/** Lines that begin with # are remarks, and "sep=;" is for office programs. */
function* withoutRemarks(lines: Iterable<ReadLine>): Generator<ReadLine> {
  for (const line of lines) {
    const first = typeof line === "string" ? "" : String(line.cells[0] ?? "");
    if (first.startsWith("#") || (typeof line !== "string" && line.line === 1 && /^sep=/i.test(first))) continue;
    yield line;
  }
}
