import type { Role } from "../../core/project/project.ts";

/** What a thing is taken as. */
export const roleWords: Readonly<Record<Role, string>> = {
  parcel: "parcel",
  block: "block",
  edge: "edge of the parcel",
  obstacle: "obstacle",
  "no-plant": "no-plant line or area",
  "cross-alley": "cross alley",
  row: "row that stands",
  "keep-row": "row to keep",
  mark: "mark",
  source: "water source",
  "main-line": "main line",
  elevation: "spot height",
};
