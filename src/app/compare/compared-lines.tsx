import { useState } from "preact/hooks";
import type { MaterialLine } from "../../core/materials/material-line.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import type { ComparedLine, ComparedTotal, Comparison } from "../../core/variants.ts";
import { amountText, lineName, packsText } from "../materials/line-text.ts";
import { money } from "../materials/money.ts";
import { useStore } from "../store-context.ts";
import { count, grouped } from "../strip/count.ts";
import { wholeLength } from "../strip/whole-length.ts";

interface ComparedLinesProps {
  readonly left: Plan;
  readonly right: Plan;
  readonly comparison: Comparison;
  /** What the right side is called. */
  readonly otherName: string;
}

/** What is needed, bought and paid in two plans, a line an article; those that are the same are folded away. */
export function ComparedLines({ left, right, comparison, otherName }: ComparedLinesProps) {
  const units = useStore().units.value;
  const [isWhole, setWhole] = useState(false);
  const { currency } = left.project.materials;
  const lines = comparison.lines.filter((line) => isWhole || differs(line, left, right, units));
  const same = comparison.lines.length - lines.length;
  const price = (value: number | null) => (value === null ? "not priced" : money(value, currency));
  return (
    <>
      <section class="compared-scroll" {...takesFocus} aria-label="Side by side">
        <table class="compared">
          <caption class="unseen">This project and the other, side by side</caption>
          <thead>
            <tr>
              <th scope="col">Thing</th>
              <th scope="col">Now</th>
              <th scope="col">{otherName}</th>
              <th scope="col">Differs by</th>
            </tr>
          </thead>
          <tbody>
            {comparison.totals
              .filter(({ kind, left: one, right: two }) => kind !== "money" && (isWhole || one !== two))
              .map((each) => (
                <tr key={each.name}>
                  <th scope="row">{each.name}</th>
                  <td>{totalText(each.kind, each.left, units)}</td>
                  <td>{totalText(each.kind, each.right, units)}</td>
                  <td>{totalDifference(each, units)}</td>
                </tr>
              ))}
            {lines.map((line) => (
              <tr key={line.article}>
                <th scope="row">{lineName(line, units)}</th>
                <Side
                  amount={line.left}
                  line={lineOf(left, line.article)}
                  units={units}
                  price={line.leftPrice}
                  currency={currency}
                />
                <Side
                  amount={line.right}
                  line={lineOf(right, line.article)}
                  units={units}
                  price={line.rightPrice}
                  currency={currency}
                />
                <td>{differenceText(line, units)}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">
                Price
                {comparison.unpriced > 0 && (
                  <small>{count(comparison.unpriced, "line")} not priced, and not in it</small>
                )}
              </th>
              <td>{total(left, price)}</td>
              <td>{total(right, price)}</td>
              <td>{priceDifference(comparison, currency)}</td>
            </tr>
          </tfoot>
        </table>
      </section>
      {lines.length === 0 && <p>Nothing on the shopping list changes.</p>}
      {(same > 0 || isWhole) && (
        <button type="button" class="quiet-button" aria-pressed={isWhole} onClick={() => setWhole(!isWhole)}>
          {isWhole ? "Show what differs" : `Show the ${count(same, "line")} that stay the same`}
        </button>
      )}
    </>
  );
}

/** What is scrolled by arrow keys takes the focus. */
const takesFocus = { tabIndex: 0 } as const;

interface SideProps {
  readonly amount: number | null;
  readonly line: MaterialLine | null;
  readonly units: UnitSystem;
  readonly price: number | null;
  readonly currency: string | null;
}

function Side({ amount, line, units, price, currency }: SideProps) {
  if (amount === null || line === null) return <td>none</td>;
  return (
    <td>
      <span class="one-line">{amountText(amount, line.unit, units)}</span>
      <small>
        buy {packsText(line, units)}
        {price !== null && `: ${money(price, currency)}`}
      </small>
    </td>
  );
}

function lineOf(plan: Plan, article: string): MaterialLine | null {
  return plan.materials?.lines.find((line) => line.article === article) ?? null;
}

/** By what is shown: a billionth of a metre is no difference. */
function differs(
  { article, left, right, unit, leftPrice, rightPrice }: ComparedLine,
  one: Plan,
  other: Plan,
  units: UnitSystem,
): boolean {
  if (left === null || right === null) return true;
  const [here, there] = [lineOf(one, article), lineOf(other, article)];
  if (here === null || there === null || leftPrice !== rightPrice) return true;
  return (
    amountText(left, unit, units) !== amountText(right, unit, units) ||
    packsText(here, units) !== packsText(there, units)
  );
}

function differenceText({ left, right, unit }: ComparedLine, units: UnitSystem): string {
  const by = (right ?? 0) - (left ?? 0);
  const told = amountText(Math.abs(by), unit, units);
  if (told === amountText(0, unit, units)) return "the same";
  return `${told} ${by > 0 ? "more" : "less"}`;
}

function priceDifference({ leftPrice, rightPrice }: Comparison, currency: string | null): string {
  const by = rightPrice - leftPrice;
  if (by === 0) return leftPrice === 0 ? "not known" : "the same";
  return `${money(Math.abs(by), currency)} ${by > 0 ? "more" : "less"}`;
}

function totalText(kind: ComparedTotal["kind"], value: number, units: UnitSystem): string {
  if (kind === "length") return wholeLength(value, units);
  if (kind === "earth") return formatQuantity("earth", value, units, 1);
  return kind === "mass" ? formatQuantity("mass", value, units) : grouped(value);
}

function totalDifference({ kind, left, right }: ComparedTotal, units: UnitSystem): string {
  const told = totalText(kind, Math.abs(right - left), units);
  return told === totalText(kind, 0, units) ? "the same" : `${told} ${right > left ? "more" : "less"}`;
}

function total(plan: Plan, price: (value: number | null) => string): string {
  const cost = plan.materials?.cost;
  if (!cost) return "";
  return cost.price === 0 && cost.unpriced > 0 ? "not priced yet" : price(cost.price);
}
