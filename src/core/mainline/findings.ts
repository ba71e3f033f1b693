import { type Finding, listed, say } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";

/** Rows that no trench can get to. */
export function rowsUnreached(at: LonLat, rows: readonly string[]): Finding {
  return {
    code: "mainline/rows-unreached",
    severity: "warning",
    at,
    feature: null,
    message: say`No trench gets to ${rows.length === 1 ? "row" : "rows"} ${listed(rows)} without crossing what it must keep from.`,
    reason: say`These rows would have no water, and nothing is counted for them.`,
    remedy: say`Say which roads, streams or fences may be crossed, let the trench run closer to things, or draw the main line there.`,
  };
}
