import type { OutFile } from "../../core/exchange/format.ts";

const mostLines = 12;
const mostLetters = 1500;

/** How a file of text begins, as it will be written; null for packed ones and databases. */
export function textBeginning({ content }: OutFile): string | null {
  if (content.kind !== "chunks") return null;
  let text = "";
  for (const chunk of content.chunks()) {
    if (typeof chunk !== "string") return null;
    text += chunk;
    if (text.length > mostLetters || text.split("\n").length > mostLines) break;
  }
  const lines = text.slice(0, mostLetters).split(/\r?\n/);
  const isWhole = text.length <= mostLetters && lines.length <= mostLines;
  return isWhole ? text : `${lines.slice(0, mostLines).join("\n")}\n…`;
}
