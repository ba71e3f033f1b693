import { formatQuantity, type MaterialLine, type Plan, type UnitSystem } from "../core/index.ts";
import { table } from "./table.ts";

/** What to buy, in packages, and how each was counted. Empty when nothing is needed. */
export function shoppingList(plan: Plan, units: UnitSystem): string {
  const lines = plan.materials?.lines ?? [];
  if (lines.length === 0) return "";
  return table([
    { head: "to buy", cells: lines.map((line) => itemText(line, units)) },
    { head: "needed", cells: lines.map((line) => amount(line, line.quantity, units)), isNumber: true },
    { head: "in packages", cells: lines.map((line) => packages(line, units)) },
    { head: "counted", cells: lines.map((line) => line.purpose) },
  ]);
}

function itemText(line: MaterialLine, units: UnitSystem): string {
  return line.diameter_mm === null ? line.item : `${line.item}, ${formatQuantity("diameter", line.diameter_mm, units)}`;
}

/** Whole metres or feet: nobody buys wire by the centimetre. */
function amount(line: MaterialLine, value: number, units: UnitSystem): string {
  return line.unit === "m" ? formatQuantity("length", Math.ceil(value), units, 0) : value.toLocaleString("en-US");
}

function packages(line: MaterialLine, units: UnitSystem): string {
  const size = (value: number) => (line.unit === "m" ? formatQuantity("length", value, units) : String(value));
  return line.packs.map((pack) => `${pack.count} of ${size(pack.size)}`).join(", ");
}
