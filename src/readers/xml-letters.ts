import type { Finding } from "../core/finding.ts";
import { failure, type Outcome, success } from "../core/outcome.ts";
import { brokenFile, lettersDiffer } from "./file-findings.ts";
import { windows1252 } from "./windows-1252.ts";

/**
 * The text of an XML file: by its byte order mark, else by the encoding that its first line states, else UTF-8. What states UTF-8 and is not is read as
 * Windows-1252, and told. Source: W3C XML 1.0, appendix F. Findings: `readers/broken-file`, `readers/letters-differ`.
 */
export function xmlLetters(bytes: Uint8Array, name: string, title: string): Outcome<string> {
  const stated = statedEncoding(bytes);
  const findings: Finding[] = [];
  try {
    return success(
      stated === "windows-1252" ? windows1252(bytes) : new TextDecoder(stated, { fatal: true }).decode(bytes),
    );
  } catch (problem) {
    if (problem instanceof RangeError) {
      return failure([
        brokenFile(name, title, `it says that it is written in "${stated.slice(0, 40)}", which is not known`),
      ]);
    }
    if (stated !== "utf-8") return failure([brokenFile(name, title, `it is not written in ${stated}, as it says`)]);
    findings.push(lettersDiffer(name, "UTF-8", "Windows-1252"));
    return success(windows1252(bytes), findings);
  }
}

function statedEncoding(bytes: Uint8Array): string {
  const [first, second, third, fourth] = bytes;
  if (first === 0xff && second === 0xfe) return "utf-16le";
  if (first === 0xfe && second === 0xff) return "utf-16be";
  if (first === 0x3c && second === 0 && third === 0x3f && fourth === 0) return "utf-16le";
  if (first === 0 && second === 0x3c && third === 0 && fourth === 0x3f) return "utf-16be";
  const head = new TextDecoder("windows-1252").decode(bytes.subarray(0, 200));
  const encoding = /^(?:\u{ef}\u{bb}\u{bf})?\s*<\?xml[^>]*\sencoding\s*=\s*["']([^"']+)["']/u.exec(head)?.[1];
  return encoding?.toLowerCase().replace(/^utf8$/, "utf-8") ?? "utf-8";
}
