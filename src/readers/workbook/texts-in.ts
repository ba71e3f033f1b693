import { plainText } from "../xml-steps.ts";
import { elementsIn } from "./elements-in.ts";

const texts = elementsIn("t");
/** How a word is said stands behind the text, and is no part of it. */
const spoken = /<(?:[\w.-]+:)?rPh[\s>]/;

/** The text of a cell or of a shared string, its pieces put together. */
export function textsIn(content: string): string {
  const end = spoken.exec(content)?.index ?? content.length;
  let text = "";
  for (const { inside } of texts(content.slice(0, end))) text += plainText(inside) ?? inside;
  return cellText(text);
}

/** Text as it stands in a cell: "_x0041_" stands for the letter of that number. */
export function cellText(text: string): string {
  if (!text.includes("_x")) return ownText(text.trim());
  return text
    .replace(/_x([0-9A-Fa-f]{4})_/g, (_, digits: string) => String.fromCharCode(Number.parseInt(digits, 16)))
    .trim();
}

/** Longer pieces of a text hold on to the whole text, which is a piece of a sheet. */
const longestCopied = 12;
const encoder = new TextEncoder();
const decoder = new TextDecoder();

function ownText(text: string): string {
  return text.length <= longestCopied ? text : decoder.decode(encoder.encode(text));
}
