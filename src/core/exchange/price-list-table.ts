import { failure, type Outcome } from "../outcome.ts";
import type { PriceEntry } from "../project/project.ts";
import { type Delimiter, delimitedLines, delimiterOf } from "./delimited.ts";
import { priceListUnreadable } from "./findings.ts";
import { priceEntries, type ReadEntry } from "./price-entries.ts";

/** What the columns may be headed, in lower case. */
const heads = {
  article: ["article"],
  size: ["size"],
  unit: ["unit"],
  price: ["price"],
  mass: ["mass_kg", "mass"],
  note: ["note"],
} as const;
type Column = keyof typeof heads;

/** A price list from a table with a line of heads; columns in any order, others than ours passed over. */
export function readPriceTable(written: string): Outcome<readonly PriceEntry[]> {
  const delimiter = delimiterOf(written.trimStart());
  const [head, ...lines] = delimitedLines(written, delimiter);
  if (head === undefined) return failure([priceListUnreadable("it is empty")]);
  const names = head.cells.map((cell) => cell.toLowerCase());
  const place = (column: Column) => {
    const wanted: readonly string[] = heads[column];
    return names.findIndex((name) => wanted.includes(name));
  };
  const missing = (["article", "size", "price"] as const).filter((column) => place(column) < 0);
  if (missing.length > 0) {
    return failure([priceListUnreadable(`its first line has no column named ${missing.join(", ")}`)]);
  }
  return priceEntries(
    lines.map(({ line, cells }) => {
      const cell = (column: Column) => cells[place(column)] ?? "";
      return entryOf(`line ${line}`, cell, delimiter);
    }),
  );
}

function entryOf(place: string, cell: (column: Column) => string, delimiter: Delimiter): ReadEntry {
  const [article, note] = [asText(cell("article")), asText(cell("note"))];
  const [size, price, mass] = [cell("size"), cell("price"), cell("mass")].map((each) => withPoint(each, delimiter));
  const unit = cell("unit").toLowerCase();
  if (article === "") return { place, wrong: "it names no article" };
  if (size === undefined || size === "") return { place, wrong: "its size is empty" };
  if (/[\p{Sc}]/u.test(price ?? "") || /^[a-z]+\s*\d|\d\s*[a-z]+$/i.test(price ?? "")) {
    return { place, wrong: "its price must be a bare number, without a currency" };
  }
  if (price !== undefined && price !== "" && !/^\d+(?:\.\d+)?$|^\.\d+$/.test(price)) {
    return { place, wrong: "its price is no number, or under 0" };
  }
  if (delimiter === ";" && /^\d{1,3}\.\d{3}$/.test(price ?? "")) {
    return { place, wrong: "its price may be thousands or a decimal, write it with a comma for decimals" };
  }
  const isBare = /^[\d.]+$/.test(size);
  const pieces = /^(?:pieces?|pcs?)$/;
  if (unit !== "" && unit !== "m" && unit !== "ft" && !pieces.test(unit)) {
    return { place, wrong: "its unit must be m, ft or pieces" };
  }
  return {
    place,
    stated: {
      article,
      size: isBare && unit === "ft" ? `${size} ft` : size.replace(/\s*(?:pieces?|pcs?)$/i, ""),
      ...(price === undefined || price === "" ? {} : { price: Number(price) }),
      ...(mass === undefined || mass === "" ? {} : { mass }),
      ...(note === "" ? {} : { note }),
    },
  };
}

/** Text as it was before an apostrophe kept a spreadsheet from running it as a formula. */
function asText(cell: string): string {
  return cell.replace(/^'(?=[=+\-@])/, "");
}

/**
 * A number with a decimal point. Where semicolons part the cells, commas are decimal and points part thousands; else commas part
 * thousands. What is neither stays as it is, to be refused with its line.
 */
function withPoint(cell: string, delimiter: Delimiter): string {
  if (delimiter === ";") {
    return cell
      .replace(/^(\d{1,3}(?:\.\d{3})+)(?=,\d)/, (thousands) => thousands.replaceAll(".", ""))
      .replace(/^(\d+),(\d+)/, "$1.$2");
  }
  return cell.replace(/^\d{1,3}(?:,\d{3})+(?!\d|,)/, (thousands) => thousands.replaceAll(",", ""));
}
