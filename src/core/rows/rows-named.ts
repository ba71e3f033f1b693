import { listed } from "../finding.ts";

/** "row 3", "rows 3, 7 and 9": rows in a sentence, the first few of many. */
export function rowsNamed(rows: readonly string[]): string {
  return `${rows.length === 1 ? "row" : "rows"} ${listed(rows)}`;
}
