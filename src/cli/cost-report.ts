import { formatQuantity, type MaterialCost, type Plan, perVineAndArea, type UnitSystem } from "../core/index.ts";
import { countOf } from "./count-of.ts";
import { money } from "./money.ts";

/** What the priced lines come to: by block, in all, a vine and an acre or hectare. Empty when nothing is priced. */
export function costReport(plan: Plan, units: UnitSystem): string {
  const { materials, rows, project } = plan;
  if (materials === null || rows === null || materials.lines.every(({ price }) => price === null)) return "";
  const { currency } = project.materials;
  const said = ({ price, unpriced }: MaterialCost) =>
    `${money(price, currency)}${unpriced === 0 ? "" : `, and ${countOf(unpriced, "line")} not priced`}`;
  const { perVine, perArea_m2 } = perVineAndArea(materials.cost, rows);
  const [area_m2, name] = units === "us" ? [4046.8564224, "acre"] : [10_000, "hectare"];
  return [
    ...(rows.blocks.length > 1
      ? project.blocks.map(({ name }, i) => {
          const cost = materials.blockCosts[i];
          return cost === undefined ? "" : `${name}: ${said(cost)}\n`;
        })
      : []),
    `In all ${said(materials.cost)}`,
    materials.cost.mass_kg > 0
      ? `; ${formatQuantity("mass", materials.cost.mass_kg, units, 0)} of what has a known mass`
      : "",
    ".\n",
    perVine === null || perArea_m2 === null
      ? ""
      : `That is ${money(perVine, currency)} a vine and ${money(perArea_m2 * area_m2, currency)} a planted ${name}.\n`,
  ].join("");
}
