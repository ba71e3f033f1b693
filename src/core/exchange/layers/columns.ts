import type { Column } from "./layer.ts";

/** A column of words. */
export function textColumn(name: string): Column {
  return { name, type: "text" };
}

/** A column of lengths, in whole millimetres. */
export function lengthColumn(name: string): Column {
  return { name, type: "number", decimals: 3 };
}
