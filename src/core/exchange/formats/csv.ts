import { aboutFile } from "../about.ts";
import { columnMeanings } from "../column-meanings.ts";
import { csvCell, csvLine } from "../csv.ts";
import { type Format, featuresAChunk, type HandOverJob, type OutFile } from "../format.ts";
import { layerKinds, type Value } from "../layers/layer.ts";
import { listKinds } from "../lists/list.ts";
import { fixed, type Table, type TableColumn } from "../tables/table.ts";
import { tablesOf } from "../tables/tables.ts";

/**
 * CSV tables (RFC 4180: CRLF, quotes where needed, one line of heads), a file a layer or list, UTF-8 without a byte order mark. Text that an
 * office program would run as a formula has an apostrophe before it; numbers never have one.
 */
export const csvTables: Format = {
  name: "csv",
  word: "CSV",
  title: "CSV tables",
  usedFor: "spreadsheets, and survey controllers that read heads",
  extension: "csv",
  mediaType: "text/csv; charset=utf-8; header=present",
  holds: [...layerKinds, ...listKinds],
  usual: ["rows"],
  choices: ["system", "unit", "naming", "heights", "baseline"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: false,
  places: "chosen",
  write: (job) => {
    const tables = tablesOf(job);
    const files = tables.map(fileOf);
    return { files: job.layers.length === 0 ? files : [...files, about(job, tables)], findings: [] };
  },
};

function fileOf(table: Table): OutFile {
  return {
    name: `${table.name}.csv`,
    mediaType: csvTables.mediaType,
    content: { kind: "chunks", chunks: () => chunksOf(table) },
  };
}

function about(job: HandOverJob, tables: readonly Table[]): OutFile {
  const [first, ...others] = tables;
  return aboutFile(job, csvTables, {
    stem: first !== undefined && others.length === 0 ? first.name : "plan",
    files: tables.map(({ name, holds }) => [`${name}.csv`, holds]),
    columns: columnMeanings(tables),
    notes: [],
  });
}

function* chunksOf({ columns, lines }: Table): Generator<string> {
  const cellsOf = columns.map(cellOf);
  let chunk = csvLine(columns.map(({ name }) => csvCell(name)));
  let count = 0;
  for (const values of lines()) {
    chunk += csvLine(values.map((value, i) => cellsOf[i]?.(value) ?? ""));
    count++;
    if (count % featuresAChunk === 0) {
      yield chunk;
      chunk = "";
    }
  }
  if (chunk !== "") yield chunk;
}

/** How the values of a column become text. */
function cellOf({ isFixed, decimals = 0 }: TableColumn): (value: Value) => string {
  if (isFixed) return (value) => (typeof value === "number" ? (fixed(value, decimals) ?? "") : "");
  return (value) => (typeof value === "boolean" ? (value ? "yes" : "") : csvCell(value));
}
