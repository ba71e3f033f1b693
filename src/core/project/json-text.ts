import { failure, type Outcome, success } from "../outcome.ts";
import { emptyFile, notANumber, notJson, projectTooLarge, tooDeep, truncatedFile } from "./findings.ts";
import { jsonFault } from "./json-fault.ts";
import type { Json } from "./project.ts";

/** More brackets within brackets than this are refused: code that walks the value by calling itself could run out of stack. */
const deepest = 200;

/** Largest project file that is read: a project of 40 ha with a grid of heights has a hundredth of it. Reading takes ten times as much memory. */
export const mostProject_bytes = 50e6;

/**
 * The value of a JSON text; a byte order mark in front of it is passed over.
 * Findings: `project/too-large`, `project/empty-file`, `project/truncated`, `project/not-a-number`, `project/not-json`, `project/too-deep`.
 */
export function readJson(text: string): Outcome<Json> {
  if (text.length > mostProject_bytes) return failure([projectTooLarge(text.length, mostProject_bytes)]);
  const json = text.startsWith("\uFEFF") ? text.slice(1) : text;
  if (!/\S/.test(json)) return failure([emptyFile()]);
  if (isTooDeep(json)) return failure([tooDeep(deepest)]);
  try {
    const value: Json = JSON.parse(json);
    return success(value);
  } catch {
    const { kind, found, line, column } = jsonFault(json);
    if (kind === "ended-early") return failure([truncatedFile(line)]);
    if (kind === "not-a-number") return failure([notANumber(found, line, column)]);
    return failure([notJson(found, line, column)]);
  }
}

/** Looks at the brackets outside strings before the text is parsed: a hostile one could exhaust memory already there. */
function isTooDeep(json: string): boolean {
  let depth = 0;
  for (let i = 0; i < json.length; i++) {
    const mark = json.charCodeAt(i);
    if (mark === 0x22) {
      const end = closingQuote(json, i);
      if (end < 0) return false;
      i = end;
    } else if (mark === 0x5b || mark === 0x7b) {
      depth++;
      if (depth > deepest) return true;
    } else if (mark === 0x5d || mark === 0x7d) depth--;
  }
  return false;
}

function closingQuote(json: string, open: number): number {
  for (let i = json.indexOf('"', open + 1); i >= 0; i = json.indexOf('"', i + 1)) {
    let slashes = 0;
    while (json.charCodeAt(i - 1 - slashes) === 0x5c) slashes++;
    if (slashes % 2 === 0) return i;
  }
  return -1;
}
