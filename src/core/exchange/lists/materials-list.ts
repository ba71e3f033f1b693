import type { Plan } from "../../plan.ts";
import { formatQuantity, text } from "../../units.ts";
import { millimetres, rounded } from "../rounding.ts";
import type { Cell, List } from "./list.ts";

/**
 * The shopping list: amounts in the unit of their line, the packages as one would ask for them in the project's units. An empty price is not
 * priced, an empty mass not known; both are of the whole line. `currency` is the person's own label.
 */
export function materialsList(plan: Plan): List {
  const { units, materials } = plan.project;
  const lines = (plan.materials?.lines ?? []).map((line): readonly Cell[] => {
    const packages = (count: number, size: number) => {
      if (line.unit === "m") return `${count} of ${formatQuantity("length", size, units)}`;
      return size === 1 ? `${count} single` : `${count} of ${size}`;
    };
    return [
      line.article,
      line.item,
      text(line.spec, units),
      line.unit,
      millimetres(line.needed),
      millimetres(line.spare),
      millimetres(line.onHand),
      millimetres(line.toBuy),
      line.packs.length === 0
        ? "nothing to buy"
        : line.packs.map(({ size, count }) => packages(count, size)).join(" and "),
      line.packs.reduce((sum, { count }) => sum + count, 0),
      line.price === null ? null : rounded(line.price, 2),
      line.price === null ? null : materials.currency,
      line.mass_kg === null ? null : rounded(line.mass_kg, 1),
      line.isTwoPersonLift ? "two people or machine" : null,
      line.diameter_mm,
      line.purpose,
    ];
  });
  return { kind: "materials", heads, lines };
}

const heads = [
  "article",
  "item",
  "spec",
  "unit",
  "needed",
  "spare",
  "onHand",
  "toBuy",
  "packages",
  "packageCount",
  "price",
  "currency",
  "mass_kg",
  "lift",
  "diameter_mm",
  "purpose",
] as const;
