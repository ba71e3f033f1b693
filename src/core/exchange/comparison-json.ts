import { text, type UnitSystem } from "../units.ts";
import type { Comparison } from "../variants.ts";
import { type FindingJson, findingJson } from "./plan-json.ts";

/** Goes up when a member changes its meaning or goes away. */
export const comparisonJsonVersion = 1;

export interface ComparisonJson {
  readonly schema: "tautrow-comparison";
  readonly version: typeof comparisonJsonVersion;
  readonly left: string;
  readonly right: string;
  readonly totals: Comparison["totals"];
  readonly lines: readonly (Omit<Comparison["lines"][number], "spec"> & { readonly spec: string })[];
  readonly leftPrice: number;
  readonly rightPrice: number;
  readonly unpriced: number;
  readonly onlyLeft: readonly FindingJson[];
  readonly onlyRight: readonly FindingJson[];
}

/** Two plans side by side as one plain object of the documented schema; numbers are SI and not rounded. */
export function comparisonJson(
  comparison: Comparison,
  names: { readonly left: string; readonly right: string },
  units: UnitSystem,
): ComparisonJson {
  return {
    schema: "tautrow-comparison",
    version: comparisonJsonVersion,
    ...names,
    ...comparison,
    lines: comparison.lines.map((line) => ({ ...line, spec: text(line.spec, units) })),
    onlyLeft: comparison.onlyLeft.map((finding) => findingJson(finding, units)),
    onlyRight: comparison.onlyRight.map((finding) => findingJson(finding, units)),
  };
}
