import type { MaterialLine } from "../../core/materials/material-line.ts";
import { formatQuantity, text, type UnitSystem } from "../../core/units.ts";
import { grouped } from "../strip/count.ts";
import { wholeLength } from "../strip/whole-length.ts";

/** "Wire, 13 ga": what to ask for and which one. */
export function lineName({ item, spec }: Pick<MaterialLine, "item" | "spec">, units: UnitSystem): string {
  const which = text(spec, units);
  return which === "" ? item : `${item}, ${which}`;
}

/** An amount of a line in its unit: metres or feet of wire and hose, pieces of all else. */
export function amountText(amount: number, unit: MaterialLine["unit"], units: UnitSystem): string {
  // Adding nothing turns the negative nothing that rounding up gives into nothing.
  return unit === "m" ? wholeLength(amount, units) : grouped(Math.ceil(amount - 1e-9) + 0);
}

/** What one package holds: "1,000 ft", "200 pieces", "1 piece". */
export function sizeText(size: number, unit: MaterialLine["unit"], units: UnitSystem): string {
  if (unit === "m") return formatQuantity("length", size, units);
  return size === 1 ? "1 piece" : `${grouped(size)} pieces`;
}

/** What to ask for in the shop: "4 × 1,000 ft", the count for things sold by the piece, "nothing" when all is there. */
export function packsText({ packs, unit }: Pick<MaterialLine, "packs" | "unit">, units: UnitSystem): string {
  if (packs.length === 0) return "nothing";
  return packs
    .map(({ size, count }) => {
      if (unit === "pieces" && size === 1) return grouped(count);
      return `${grouped(count)} × ${unit === "m" ? formatQuantity("length", size, units) : grouped(size)}`;
    })
    .join(" + ");
}
