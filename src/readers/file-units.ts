import { unitLength_m } from "../core/systems/unit-length.ts";

/** What files count lengths in. */
export type FileUnit = "m" | "ft" | "us-ft" | "in" | "mm" | "cm" | "dm" | "km" | "yd";

interface FileUnitFacts {
  readonly metres: number;
  readonly words: string;
  /** True for what nobody draws a field in by choice, but programs write when nobody chose. */
  readonly isSmall: boolean;
}

/** All of them. */
export const fileUnits: Readonly<Record<FileUnit, FileUnitFacts>> = {
  m: { metres: 1, words: "metres", isSmall: false },
  ft: { metres: unitLength_m.ft, words: "feet (0.3048 m)", isSmall: false },
  "us-ft": { metres: unitLength_m["us-ft"], words: "US survey feet (1200/3937 m)", isSmall: false },
  in: { metres: 0.0254, words: "inches", isSmall: false },
  mm: { metres: 0.001, words: "millimetres", isSmall: true },
  cm: { metres: 0.01, words: "centimetres", isSmall: true },
  dm: { metres: 0.1, words: "decimetres", isSmall: true },
  km: { metres: 1000, words: "kilometres", isSmall: false },
  yd: { metres: 0.9144, words: "yards", isSmall: false },
};

/** A field in a drawing is longer than a shed and shorter than a district; common practice, no source. */
export const leastDrawn_m = 20;
export const largestDrawn_m = 20_000;

export function isFileUnit(unit: string): unit is FileUnit {
  return Object.hasOwn(fileUnits, unit);
}
