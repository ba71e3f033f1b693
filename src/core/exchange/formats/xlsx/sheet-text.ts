import { featuresAChunk } from "../../format.ts";
import type { Value } from "../../layers/layer.ts";
import { fixed, type TableColumn } from "../../tables/table.ts";
import { xmlText } from "../../xml.ts";
import { headStyle, numberStyle, textStyle } from "./workbook-parts.ts";

/** Letters that a cell holds, and lines that a sheet holds (ECMA-376 and the office programs; from memory). */
export const mostLetters = 32_767;
export const mostLines = 1_048_576;

const beginning =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">';

/** One sheet as XML, piece by piece: a bold line of heads that stays in view, then the lines. Text cells are text, never formulas. */
export function* sheetText(columns: readonly TableColumn[], lines: Iterable<readonly Value[]>): Generator<string> {
  const letters = columns.map((_, i) => columnLetters(i));
  const widths = columns.map(({ name, type }, i) => {
    const width = Math.max(name.length, type === "text" ? 14 : 10) + 2;
    return `<col min="${i + 1}" max="${i + 1}" width="${width}" customWidth="1"/>`;
  });
  const heads = columns.map(({ name }, i) => textCell(`${letters[i]}1`, name, headStyle));
  let chunk = `${beginning}<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><cols>${widths.join("")}</cols><sheetData><row r="1">${heads.join("")}</row>`;
  let line = 1;
  for (const values of lines) {
    line++;
    let cells = "";
    for (const [i, column] of columns.entries()) cells += cellOf(`${letters[i]}${line}`, values[i] ?? null, column);
    chunk += `<row r="${line}">${cells}</row>`;
    if (line % featuresAChunk === 0) {
      yield chunk;
      chunk = "";
    }
  }
  yield `${chunk}</sheetData></worksheet>`;
}

function cellOf(at: string, value: Value, { isFixed, decimals = 0 }: TableColumn): string {
  if (value === null || value === false) return "";
  if (value === true) return textCell(at, "yes", textStyle);
  if (typeof value === "string") return value === "" ? "" : textCell(at, value, textStyle);
  const number = isFixed ? fixed(value, decimals) : Number.isFinite(value) ? String(value) : null;
  return number === null ? "" : `<c r="${at}" s="${numberStyle(decimals)}"><v>${number}</v></c>`;
}

function textCell(at: string, text: string, style: number): string {
  const kept = cut(text);
  // Spaces at either end, and line ends, are dropped by readers unless they are told to keep them.
  const space = kept.trim() !== kept || kept.includes("\n") ? ' xml:space="preserve"' : "";
  return `<c r="${at}" s="${style}" t="inlineStr"><is><t${space}>${xmlText(escaped(kept))}</t></is></c>`;
}

function cut(text: string): string {
  const plain = text.replace(/\r\n?/g, "\n");
  if (plain.length <= mostLetters) return plain;
  return plain.slice(0, mostLetters).replace(/[\ud800-\udbff]$/, "");
}

/** Readers take "_x0041_" in a text for the letter A; its underline is written so that they do not. */
function escaped(text: string): string {
  return text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_");
}

/** 0 is A, 26 is AA. */
function columnLetters(i: number): string {
  const last = String.fromCharCode(65 + (i % 26));
  return i < 26 ? last : columnLetters(Math.floor(i / 26) - 1) + last;
}
