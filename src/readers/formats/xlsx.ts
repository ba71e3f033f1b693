import type { Finding } from "../../core/finding.ts";
import { failure, success } from "../../core/outcome.ts";
import { nothingFound } from "../file-findings.ts";
import type { FoundFeature, Question, Reader } from "../reading.ts";
import { readTable } from "../tables/read-table.ts";
import { sheetsWithoutPlace } from "../tables/table-findings.ts";
import { unzipped } from "../unzip.ts";
import { sheetLines } from "../workbook/sheet-lines.ts";
import { isPartOfWorkbook, workbookOf } from "../workbook/workbook.ts";

const title = "XLSX workbook";

/** What is unpacked of a workbook: the sheets of a quarter of a million points, and no more than fits into memory twice. */
const mostUnpacked_bytes = 120e6;

/**
 * Workbooks: every sheet with columns that say where something is. What formulas came to is read, formulas are not. Findings: those of `unzipped`,
 * `workbookOf` and `readTable`, `readers/sheets-without-place`, `readers/nothing-found`.
 */
export const xlsxReader: Reader = {
  title,
  endings: ["xlsx"],
  most_bytes: 30e6,
  begins: (head) => head.startsWith("PK") && /xl\/(?:workbook|worksheets|styles|sharedStrings|_rels)/.test(head),
  read: async (file, answers, followed) => {
    const bytes = new Uint8Array(await file.slice(0, file.size).arrayBuffer());
    const files = unzipped(bytes, file.name, isPartOfWorkbook, mostUnpacked_bytes);
    if (!files.ok) return files;
    const workbook = workbookOf(files.value, file.name, title);
    if (!workbook.ok) return workbook;
    const features: FoundFeature[] = [];
    const questions = new Map<Question["about"], Question>();
    const systems = new Set<string>();
    const findings: Finding[] = [];
    const placeless: { readonly sheet: string; readonly finding: Finding }[] = [];
    for (const { name, bytes: sheet } of workbook.value.sheets) {
      const table = { layer: name, delimiter: null, isTyped: true, lines: () => sheetLines(sheet, workbook.value) };
      const read = await readTable(table, { name: file.name, title }, answers, followed);
      const [first] = read.findings;
      if (!read.ok && first?.code === "readers/columns-without-place") {
        placeless.push({ sheet: name, finding: first });
        continue;
      }
      findings.push(...read.findings);
      if (!read.ok) return failure(findings);
      for (const feature of read.value.features) features.push(feature);
      for (const question of read.value.questions)
        questions.set(question.about, questions.get(question.about) ?? question);
      systems.add(read.value.system);
    }
    if (features.length === 0 && questions.size === 0) {
      return failure([nothingFound(file.name, title), ...placeless.map(({ finding }) => finding), ...findings]);
    }
    if (placeless.length > 0)
      findings.push(
        sheetsWithoutPlace(
          file.name,
          placeless.map(({ sheet }) => sheet),
        ),
      );
    return success(
      { format: title, system: [...systems].join("; "), features, questions: [...questions.values()] },
      findings,
    );
  },
};
