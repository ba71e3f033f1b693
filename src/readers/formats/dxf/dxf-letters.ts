import type { Finding } from "../../../core/finding.ts";
import { lettersDiffer } from "../../file-findings.ts";
import { windows1252 } from "../../windows-1252.ts";

/** A drawing as text, with what there is to say about its letters. */
export interface DrawingLetters {
  readonly text: string;
  readonly findings: readonly Finding[];
}

/**
 * The text of a drawing: UTF-8 from AC1021 on, before that in the code page that `$DWGCODEPAGE` names; without one, and where what is stated does not
 * hold, UTF-8 when it is that, else Windows-1252. Source: DXF reference, `$DWGCODEPAGE`. Findings: `readers/letters-differ`.
 */
export function drawingLetters(bytes: Uint8Array, name: string): DrawingLetters {
  const head = new TextDecoder("latin1").decode(bytes.subarray(0, 65_536));
  const version = headerValue(head, "$ACADVER")?.toUpperCase() ?? "";
  const page = headerValue(head, "$DWGCODEPAGE")?.toUpperCase() ?? null;
  const stated =
    version >= "AC1021" ? "utf-8" : page === null ? null : (codePages.get(page.replace(/^ANSI_|^DOS/, "")) ?? null);
  const utf8 = wholly(bytes, "utf-8");
  // Letters beyond ASCII that are UTF-8 throughout are never so by chance.
  if (utf8 !== null) {
    const isPlain = stated === null || stated === "utf-8" || !/[\u0080-\uffff]/.test(utf8);
    return { text: utf8, findings: isPlain ? [] : [lettersDiffer(name, page ?? "", "UTF-8")] };
  }
  const taken = stated === null || stated === "utf-8" ? "windows-1252" : stated;
  const findings = stated === taken ? [] : [lettersDiffer(name, page ?? "UTF-8", "Windows-1252")];
  return { text: taken === "windows-1252" ? windows1252(bytes) : new TextDecoder(taken).decode(bytes), findings };
}

function headerValue(head: string, variable: string): string | null {
  const at = head.indexOf(variable);
  if (at < 0) return null;
  return /^[^\n]*\n[^\n]*\n\s*([^\r\n]*)/.exec(head.slice(at, at + 200))?.[1]?.trim() ?? null;
}

function wholly(bytes: Uint8Array, encoding: string): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** Code pages by their number, in the names of the Encoding standard. */
const codePages: ReadonlyMap<string, string> = new Map([
  ["874", "windows-874"],
  ["932", "shift_jis"],
  ["936", "gbk"],
  ["949", "euc-kr"],
  ["950", "big5"],
  ...[1250, 1251, 1252, 1253, 1254, 1255, 1256, 1257, 1258].map((page) => [String(page), `windows-${page}`] as const),
  ["866", "ibm866"],
]);
