import type { Finding } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import { brokenFile, lettersDiffer } from "../file-findings.ts";

/**
 * The text of a table: UTF-8, UTF-16 with a byte order mark or of plain letters, else Windows-1252, which is told. A file cut in the middle of a
 * letter keeps what is before it. Findings: `readers/broken-file`, `readers/letters-differ`.
 */
export function tableLetters(bytes: Uint8Array, name: string, title: string): Outcome<string> {
  const wide = wideEncoding(bytes);
  if (wide !== null) return success(new TextDecoder(wide).decode(bytes));
  if (bytes.subarray(0, 4096).includes(0)) return failure([brokenFile(name, title, "it is no text")]);
  for (const short of [0, 1, 2, 3]) {
    try {
      return success(new TextDecoder("utf-8", { fatal: true }).decode(bytes.subarray(0, bytes.length - short)));
    } catch {
      // A letter of UTF-8 has four bytes at most: what fails without the last three is not cut, it is something else.
    }
  }
  const findings: readonly Finding[] = [lettersDiffer(name, "UTF-8", "Windows-1252")];
  return success(new TextDecoder("windows-1252").decode(bytes), findings);
}

function wideEncoding(bytes: Uint8Array): string | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return "utf-16le";
  if (first === 0xfe && second === 0xff) return "utf-16be";
  const looked = bytes.subarray(0, 200);
  const zeros = (from: number) => looked.filter((byte, i) => i % 2 === from && byte === 0).length;
  const half = looked.length / 2;
  if (half < 2) return null;
  if (zeros(1) > 0.8 * half && zeros(0) === 0) return "utf-16le";
  return zeros(0) > 0.8 * half && zeros(1) === 0 ? "utf-16be" : null;
}
