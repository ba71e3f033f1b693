import { type ComparedTotal, type Comparison, formatQuantity, text, type UnitSystem } from "../core/index.ts";
import { findingsReport } from "./findings-report.ts";
import { money } from "./money.ts";
import { table } from "./table.ts";
import { wholeLength } from "./whole-length.ts";

interface Names {
  readonly left: string;
  readonly right: string;
}

/** Two plans side by side: numbers of the whole, articles that differ, and what only one of them has to say. */
export function comparisonReport(
  comparison: Comparison,
  names: Names,
  currency: string | null,
  units: UnitSystem,
): string {
  const { lines, onlyLeft, onlyRight, unpriced } = comparison;
  const differing = lines.filter(
    (line) => line.left !== line.right || line.leftPacks !== line.rightPacks || line.leftPrice !== line.rightPrice,
  );
  const isPriced = lines.some(({ leftPrice, rightPrice }) => leftPrice !== null || rightPrice !== null);
  const totals = comparison.totals.filter(({ kind }) => kind !== "money" || isPriced);
  const amount = (unit: "m" | "pieces", value: number | null) =>
    value === null ? "none" : unit === "m" ? wholeLength(value, units) : value.toLocaleString("en-US");
  const price = (value: number | null) => (value === null ? "" : money(value, null));
  const name = ({ item, spec }: (typeof lines)[number]) =>
    [item, shortened(text(spec, units))].filter((part) => part !== "").join(", ");
  const column = (head: string, cells: readonly string[]) => ({ head, cells, isNumber: true as const });
  return [
    `first:  ${names.left}\nsecond: ${names.right}\n\n`,
    table([
      { head: "", cells: totals.map((total) => total.name) },
      column(
        "first",
        totals.map((total) => shown(total, total.left, currency, units)),
      ),
      column(
        "second",
        totals.map((total) => shown(total, total.right, currency, units)),
      ),
      column(
        "difference",
        totals.map((total) => signed(total, currency, units)),
      ),
    ]),
    unpriced === 0 || !isPriced ? "" : `${unpriced} of the lines have no price and are not in the cost.\n`,
    "\n",
    differing.length === 0
      ? "The shopping lists are the same.\n"
      : table([
          { head: "what differs", cells: differing.map(name) },
          column(
            "first",
            differing.map((line) => amount(line.unit, line.left)),
          ),
          column(
            "second",
            differing.map((line) => amount(line.unit, line.right)),
          ),
          column(
            "packages",
            differing.map((line) => `${line.leftPacks} / ${line.rightPacks}`),
          ),
          ...(isPriced
            ? [
                column(
                  "price",
                  differing.map((line) => price(line.leftPrice)),
                ),
                column(
                  "price of second",
                  differing.map((line) => price(line.rightPrice)),
                ),
              ]
            : []),
        ]),
    onlyLeft.length === 0 ? "" : `\nOnly the first says:\n${findingsReport(onlyLeft, units)}`,
    onlyRight.length === 0 ? "" : `\nOnly the second says:\n${findingsReport(onlyRight, units)}`,
  ].join("");
}

function shown({ kind }: ComparedTotal, value: number, currency: string | null, units: UnitSystem): string {
  switch (kind) {
    case "count":
      return value.toLocaleString("en-US");
    case "money":
      return money(value, currency);
    case "length":
      return wholeLength(value, units);
    case "earth":
      return formatQuantity("earth", value, units, 1);
    case "mass":
      return formatQuantity("mass", value, units, 0);
    default:
      return kind satisfies never;
  }
}

function signed(total: ComparedTotal, currency: string | null, units: UnitSystem): string {
  const difference = total.right - total.left;
  if (Math.abs(difference) < 1e-6) return "";
  return `${difference > 0 ? "+" : "-"}${shown(total, Math.abs(difference), currency, units)}`;
}

/** A name in a column: the first two parts of its spec say which one it is. */
function shortened(spec: string): string {
  return spec.split(", ").slice(0, 2).join(", ");
}
