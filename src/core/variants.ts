import type { Finding, Phrase } from "./finding.ts";
import type { Plan } from "./plan.ts";

/** One thing of two plans side by side; null where a plan has none. */
export interface ComparedLine {
  readonly article: string;
  readonly item: string;
  readonly spec: Phrase;
  readonly unit: "m" | "pieces";
  /** What the structure takes, with spare. */
  readonly left: number | null;
  readonly right: number | null;
  /** Packages to buy, added up. */
  readonly leftPacks: number;
  readonly rightPacks: number;
  readonly leftPrice: number | null;
  readonly rightPrice: number | null;
}

/** Two finished plans side by side. */
export interface Comparison {
  readonly lines: readonly ComparedLine[];
  readonly leftPrice: number;
  readonly rightPrice: number;
  /** Lines without a price, of either. */
  readonly unpriced: number;
  /** Findings that only one of them has, by code and sentence. */
  readonly onlyLeft: readonly Finding[];
  readonly onlyRight: readonly Finding[];
}

/** What differs between two plans in quantities, cost and what there is to say. */
export function comparePlans(_left: Plan, _right: Plan): Comparison {
  return { lines: [], leftPrice: 0, rightPrice: 0, unpriced: 0, onlyLeft: [], onlyRight: [] };
}
