import type { SystemUnit } from "../systems/coordinate-system.ts";

/** What a system's numbers count, in words that leave no doubt which foot is meant. */
export const unitWords: Readonly<Record<SystemUnit, string>> = {
  deg: "degrees",
  m: "metres",
  ft: "international feet (0.3048 m)",
  "us-ft": "US survey feet (1200/3937 m)",
};
