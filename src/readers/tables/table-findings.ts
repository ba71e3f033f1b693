import { type Finding, listed, say, unplaced } from "../../core/finding.ts";

/** "sheet posts of plan.xlsx", or the file's name. */
export function tableName(name: string, layer: string | null): string {
  return layer === null ? name : `sheet ${layer} of ${name}`;
}

/** No two columns say where something is. */
export function columnsWithoutPlace(name: string, heads: readonly string[]): Finding {
  return unplaced(
    "readers/columns-without-place",
    "error",
    say`${name} has no columns that say where something is.`,
    say`Its first line is ${listed(heads.slice(0, 20).map(quoted), 8)}. Places stand in columns headed longitude and latitude, easting and northing, or x and y; without heads in point, northing, easting, height, code.`,
    say`Head the columns so, or choose another file.`,
  );
}

/** Sheets of a workbook that hold no places, beside others that do. */
export function sheetsWithoutPlace(name: string, sheets: readonly string[]): Finding {
  return unplaced(
    "readers/sheets-without-place",
    "note",
    say`Of ${name} nothing was read from ${listed(sheets.map(quoted))}.`,
    say`No columns there say where something is.`,
    say`If there should be places, head their columns longitude and latitude, or easting and northing.`,
  );
}

/** Lines that no place was made of; `why` has a few of them with the reason. */
export function linesWithoutPlace(name: string, count: number, why: readonly string[]): Finding {
  return unplaced(
    "readers/lines-without-place",
    "warning",
    count === 1
      ? say`Of ${name} one line was left out: ${why.join("; ")}.`
      : say`Of ${name} ${count} lines were left out: ${why.join("; ")}${count > why.length ? `; and ${count - why.length} more` : ""}.`,
    say`What has no place cannot be taken in.`,
    say`Correct the lines in the file and read it again, if something is missing.`,
  );
}

/** Lines above the heads. */
export function linesBeforeHeads(name: string, count: number): Finding {
  return unplaced(
    "readers/lines-before-heads",
    "note",
    count === 1
      ? say`The first line of ${name} stands above the heads and was left out.`
      : say`The first ${count} lines of ${name} stand above the heads and were left out.`,
    say`They are taken for a title.`,
    say`If they hold places, put the heads above them.`,
  );
}

/** A number whose mark may be of decimals or of thousands, or both marks for decimals. */
export function decimalsDoubtful(name: string, example: string): Finding {
  return unplaced(
    "readers/decimals-doubtful",
    "error",
    example === ""
      ? say`In ${name} some numbers have a decimal point and some a decimal comma.`
      : say`In ${name} it cannot be told whether ${quoted(example)} has decimals or thousands.`,
    say`Taken wrongly, every place would be far off; nothing is guessed.`,
    say`Have the file written with decimal points and without marks for thousands.`,
  );
}

/** Numbers are read with commas as decimal marks. */
export function decimalCommas(name: string): Finding {
  return unplaced(
    "readers/decimal-commas",
    "note",
    say`In ${name} commas are read as decimal marks.`,
    say`"38,2921" is a little more than 38.`,
    say`If the commas mark thousands, have the file written without them.`,
  );
}

/** More lines, or cells, than are read. */
export function tooManyLines(name: string, most: number, what: "lines" | "cells"): Finding {
  return unplaced(
    "readers/too-many-lines",
    "error",
    say`${name} has more than ${most} ${what}.`,
    say`What is made of them may not fit into memory, and then the page and what is in it would be lost.`,
    say`Have only the ground around the parcel written to a file.`,
  );
}

function quoted(text: string): string {
  return `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`;
}
