import type { Finding, Phrase } from "./finding.ts";
import type { MaterialLine } from "./materials/material-line.ts";
import type { Plan } from "./plan.ts";
import { text } from "./units.ts";

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

/** A number of the whole plan, of both. */
export interface ComparedTotal {
  readonly name: string;
  /** Which unit it is in: a count, metres, cubic metres of earth, kilograms, or money in the project's currency. */
  readonly kind: "count" | "length" | "earth" | "mass" | "money";
  readonly left: number;
  readonly right: number;
}

/** Two finished plans side by side. */
export interface Comparison {
  readonly totals: readonly ComparedTotal[];
  /** Articles of either, in the order of the left list; those only the right has at the end. */
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
export function comparePlans(left: Plan, right: Plan): Comparison {
  const [before, after] = [left.materials?.lines ?? [], right.materials?.lines ?? []];
  const byArticle = new Map(after.map((line) => [line.article, line]));
  const known = new Set(before.map(({ article }) => article));
  const lines = [
    ...before.map((line) => compared(line, byArticle.get(line.article) ?? null)),
    ...after.filter(({ article }) => !known.has(article)).map((line) => compared(null, line)),
  ].flatMap((line) => (line === null ? [] : [line]));
  return {
    totals: totalsOf(left, right),
    lines,
    leftPrice: left.materials?.cost.price ?? 0,
    rightPrice: right.materials?.cost.price ?? 0,
    unpriced: lines.filter(
      ({ left: l, right: r, leftPrice, rightPrice }) =>
        (l !== null && leftPrice === null) || (r !== null && rightPrice === null),
    ).length,
    onlyLeft: onlyIn(left, right),
    onlyRight: onlyIn(right, left),
  };
}

function compared(left: MaterialLine | null, right: MaterialLine | null): ComparedLine | null {
  const either = left ?? right;
  if (either === null) return null;
  const packs = (line: MaterialLine | null) => line?.packs.reduce((sum, { count }) => sum + count, 0) ?? 0;
  return {
    article: either.article,
    item: either.item,
    spec: either.spec,
    unit: either.unit,
    left: left?.quantity ?? null,
    right: right?.quantity ?? null,
    leftPacks: packs(left),
    rightPacks: packs(right),
    leftPrice: left?.price ?? null,
    rightPrice: right?.price ?? null,
  };
}

function totalsOf(left: Plan, right: Plan): readonly ComparedTotal[] {
  const both = (name: string, kind: ComparedTotal["kind"], of: (plan: Plan) => number): ComparedTotal => ({
    name,
    kind,
    left: of(left),
    right: of(right),
  });
  return [
    both("Rows", "count", ({ rows }) => rows?.rows.length ?? 0),
    both("Row length", "length", ({ rows }) => rows?.rows.reduce((sum_m, { length_m }) => sum_m + length_m, 0) ?? 0),
    both("Vines", "count", ({ rows }) => rows?.vines.station_m.length ?? 0),
    both("Wire", "length", ({ trellis }) => trellis?.wires.reduce((sum_m, { length_m }) => sum_m + length_m, 0) ?? 0),
    both("Hose", "length", ({ drip }) => drip?.lateral_m ?? 0),
    both("Trench to dig", "length", ({ trench }) => trench?.earth.dug_m ?? 0),
    both("Earth to dig", "earth", ({ trench }) => trench?.earth.cut_m3 ?? 0),
    both("Cost of what is priced", "money", ({ materials }) => materials?.cost.price ?? 0),
    both("Mass of what is known", "mass", ({ materials }) => materials?.cost.mass_kg ?? 0),
  ];
}

/** What is taken as usual differs with every setting that is stated: no news. */
const noNews = "project/defaults-used";

/** By code and sentence: the same finding with other numbers is another one. */
function onlyIn(one: Plan, other: Plan): readonly Finding[] {
  const key = ({ code, message }: Finding) => `${code} ${text(message, "metric")}`;
  const known = new Set(other.findings.map(key));
  return one.findings.filter((finding) => finding.code !== noNews && !known.has(key(finding)));
}
