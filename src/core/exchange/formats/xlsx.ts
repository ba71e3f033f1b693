import type { Finding } from "../../finding.ts";
import { aboutParts } from "../about.ts";
import { columnMeanings } from "../column-meanings.ts";
import { textsCut } from "../findings.ts";
import type { Chunk, Format, HandOverJob } from "../format.ts";
import { layerKinds, type Value } from "../layers/layer.ts";
import { listKinds } from "../lists/list.ts";
import type { Table, TableColumn } from "../tables/table.ts";
import { tablesOf } from "../tables/tables.ts";
import { zipped } from "../zip.ts";
import { mostLetters, mostLines, sheetText } from "./xlsx/sheet-text.ts";
import { sheetPath, workbookParts } from "./xlsx/workbook-parts.ts";

/** XLSX workbook (Office Open XML, ECMA-376): a sheet a layer or list, numbers with their decimals, and a last sheet that says what they mean. */
export const xlsx: Format = {
  name: "xlsx",
  word: "XLSX",
  title: "XLSX workbook",
  usedFor: "the office",
  extension: "xlsx",
  mediaType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  holds: [...layerKinds, ...listKinds],
  usual: ["materials", "coils"],
  choices: ["system", "unit", "naming", "heights", "baseline"],
  naming: { one: "{id}", several: "{id}" },
  nameLength: null,
  letters: "any",
  statesItself: true,
  places: "chosen",
  write: (job) => {
    const tables = tablesOf(job);
    const [first, ...others] = tables;
    if (first === undefined) return { files: [], findings: [] };
    const name = `${others.length === 0 ? first.name : "plan"}.xlsx`;
    const sheets = [...tables.flatMap(sheetsOf), aboutSheet(job, tables, name)];
    const chunks = () => zipped([...partsOf(sheets), ...sheets.map(entryOf)], job.writtenAt);
    return {
      files: [{ name, mediaType: xlsx.mediaType, content: { kind: "chunks", chunks } }],
      findings: longTexts(job),
    };
  },
};

interface Sheet {
  readonly name: string;
  readonly columns: readonly TableColumn[];
  lines(): Iterable<readonly Value[]>;
}

/** A table as a sheet, or as several where it has more lines than a sheet holds. */
function sheetsOf(table: Table): readonly Sheet[] {
  const room = mostLines - 1;
  const sheets = Math.max(1, Math.ceil(table.count / room));
  return Array.from({ length: sheets }, (_, i) => ({
    name: sheets === 1 ? table.name : `${table.name} ${i + 1}`,
    columns: table.columns,
    lines: () => (sheets === 1 ? table.lines() : between(table.lines(), i * room, (i + 1) * room)),
  }));
}

function* between<T>(all: Iterable<T>, from: number, to: number): Generator<T> {
  let i = 0;
  for (const each of all) {
    if (i >= to) return;
    if (i >= from) yield each;
    i++;
  }
}

function partsOf(sheets: readonly Sheet[]) {
  return workbookParts(sheets.map(({ name }) => name)).map(([name, text]) => ({ name, chunks: () => [text] }));
}

function entryOf({ columns, lines }: Sheet, i: number) {
  return { name: sheetPath(i + 1), chunks: (): Iterable<Chunk> => sheetText(columns, lines()) };
}

/** What a CSV has beside it in a text. */
function aboutSheet(job: HandOverJob, tables: readonly Table[], name: string): Sheet {
  const column = (head: string): TableColumn => ({ name: head, type: "text", isFixed: false });
  return {
    name: "About",
    columns: [column("about"), column("what is said")],
    lines: () =>
      aboutParts(job, xlsx, {
        stem: name,
        files: tables.map((table) => [`Sheet ${table.name}`, table.holds]),
        columns: columnMeanings(tables),
        notes: [],
      }).flatMap(({ head, lines }) => lines.map((line) => [head, line])),
  };
}

/** Layers larger than this are called by what their blocks and rows are called, and these are looked at. */
const manyNames = 20_000;

function longTexts({ layers, lists }: HandOverJob): readonly Finding[] {
  const long = new Set<string>();
  const look = (text: string | number | null) => {
    if (typeof text === "string" && text.length > mostLetters) long.add(text);
  };
  for (const { lines } of lists) for (const cells of lines) for (const cell of cells) look(cell);
  for (const layer of layers) {
    let count = 0;
    for (const { id, parts } of layer.named()) {
      look(id);
      look(parts.own);
      look(parts.block);
      count++;
      if (count > manyNames) break;
    }
  }
  const [example] = long;
  return example === undefined ? [] : [textsCut(long.size, example.slice(0, 20), mostLetters)];
}
