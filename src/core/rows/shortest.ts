import type { RowSettings } from "../project/project.ts";
import { vineCount } from "./vines.ts";

/** True when a plantable piece is long enough to be a row: not under the shortest row, and with room for a vine where rows end at vines. */
export function isLongEnough(piece_m: number, settings: RowSettings): boolean {
  const { minRow, rowEnd } = settings;
  const vines = () => vineCount(piece_m, settings.endGap_m, settings.vineSpacing_m);
  if (rowEnd !== "all" && vines() === 0) return false;
  switch (minRow.kind) {
    case "length":
      return piece_m >= minRow.length_m - 1e-9;
    case "vines":
      return vines() >= minRow.vines;
  }
}
