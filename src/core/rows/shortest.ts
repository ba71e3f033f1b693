import type { RowSettings } from "../project/project.ts";
import { vineCount } from "./vines.ts";

/** True when a plantable piece is long enough to be a row: not under the shortest row, and with room for a vine where rows end at vines. */
export function isLongEnough(piece_m: number, settings: RowSettings): boolean {
  const { minRow, rowEnd } = settings;
  if (rowEnd === "all" && minRow.kind === "length") return piece_m >= minRow.length_m - 1e-9;
  const room = vineCount(piece_m, settings.endGap_m, settings.vineSpacing_m);
  const vines = rowEnd === "bays" ? room - (room % settings.bay_vines) : room;
  if (rowEnd !== "all" && vines === 0) return false;
  switch (minRow.kind) {
    case "length":
      return piece_m >= minRow.length_m - 1e-9;
    case "vines":
      return vines >= minRow.vines;
  }
}
