import { failure, type Outcome, success } from "../../../core/outcome.ts";
import { brokenFile, lettersDiffer } from "../../file-findings.ts";
import { windows1252 } from "../../windows-1252.ts";

/**
 * The text of a JSON file: UTF-8 (RFC 8259 section 8.1), UTF-16 where its first bytes say so; what is none of them is read as Windows-1252, and told.
 * Findings: `readers/letters-differ`, `readers/broken-file`.
 */
export function jsonLetters(bytes: Uint8Array, name: string, title: string): Outcome<string> {
  const [first, second] = bytes;
  const wide = first === 0xff && second === 0xfe ? "utf-16le" : first === 0xfe && second === 0xff ? "utf-16be" : null;
  try {
    return success(new TextDecoder(wide ?? "utf-8", { fatal: true }).decode(bytes));
  } catch {
    if (wide !== null) return failure([brokenFile(name, title, "its letters are damaged, or it is cut off")]);
    return success(windows1252(bytes), [lettersDiffer(name, "UTF-8", "Windows-1252")]);
  }
}
