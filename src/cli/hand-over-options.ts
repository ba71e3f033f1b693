import {
  documentKinds,
  type Format,
  formats,
  type HandOverChoice,
  layerKinds,
  listKinds,
  parseQuantity,
  type Thing,
  usualChoice,
} from "../core/index.ts";
import type { Arguments } from "./arguments.ts";
import { UsageError } from "./terminal.ts";

const things: readonly Thing[] = [...layerKinds, ...listKinds, ...documentKinds];

/** What the options of `export` choose. Throws a UsageError that names what is offered. */
export function choiceOf(args: Arguments): HandOverChoice {
  const format = formatOf(args.value("as") ?? usualChoice.as);
  return {
    ...usualChoice,
    as: format.name,
    of: thingsOf(args.value("of"), format),
    rows: args.value("rows"),
    naming: args.value("names"),
    nameLength: lengthOfNames(args.value("name-length")),
    pointsAFile: pointsAFile(args.value("points-a-file")),
    system: args.value("crs"),
    unit: oneOf("unit", args.value("unit"), ["m", "ft", "us-ft"]) ?? usualChoice.unit,
    order: oneOf("order", args.value("order"), ["northing-first", "easting-first"]) ?? usualChoice.order,
    heights: !args.has("no-heights"),
    pegBeyond_m: pegBeyond_m(args.value("peg-beyond")),
    baseline: args.value("baseline"),
    together: args.has("together"),
  };
}

function formatOf(text: string): Format {
  const found = formats.find(({ name }) => name === text.trim().toLowerCase());
  if (found !== undefined) return found;
  throw new UsageError(`There is no export as ${text}. There is ${formats.map(({ name }) => name).join(", ")}.`);
}

/** Rows, or what a format without rows holds first. */
function thingsOf(text: string | null, { holds }: Format): readonly Thing[] {
  if (text === null) return holds.includes("rows") ? ["rows"] : holds.slice(0, 1);
  return text.split(",").map((part) => {
    const found = things.find((thing) => thing === part.trim().toLowerCase());
    if (found !== undefined) return found;
    throw new UsageError(`There is no export of ${part.trim()}. There is ${things.join(", ")}.`);
  });
}

/** Longest name that "none" stands for: longer than any. */
const anyLength = 250;

function lengthOfNames(text: string | null): number | null {
  if (text === null) return null;
  return text.trim().toLowerCase() === "none" ? anyLength : wholeNumber("name-length", text);
}

function pointsAFile(text: string | null): number | null {
  return text === null ? null : wholeNumber("points-a-file", text);
}

function wholeNumber(option: string, text: string): number {
  const number = Number(text);
  if (Number.isInteger(number) && number > 0) return number;
  throw new UsageError(`--${option} is a whole number, not "${text}".`);
}

function pegBeyond_m(text: string | null): number {
  if (text === null) return usualChoice.pegBeyond_m;
  const read = parseQuantity("length", text);
  if (read.ok) return read.value;
  throw new UsageError(`--peg-beyond is a length, such as 1 m or "3 ft", not "${text}": ${read.reason}.`);
}

function oneOf<T extends string>(option: string, text: string | null, offered: readonly T[]): T | null {
  if (text === null) return null;
  const found = offered.find((each) => each === text.trim().toLowerCase());
  if (found !== undefined) return found;
  throw new UsageError(`--${option} is ${offered.join(", ")}, not "${text}".`);
}
