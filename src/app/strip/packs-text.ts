import type { MaterialLine } from "../../core/materials/material-line.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";
import { grouped } from "./count.ts";
import { wholeLength } from "./whole-length.ts";

/** What to ask for in the shop: "4 × 1,000 ft", or the count for things sold by the piece. */
export function packsText(line: MaterialLine, units: UnitSystem): string {
  if (line.packs.length === 0) {
    return line.unit === "m" ? wholeLength(line.quantity, units) : grouped(Math.ceil(line.quantity - 1e-9));
  }
  return line.packs
    .map(({ size, count }) => {
      const content = line.unit === "m" ? formatQuantity("length", size, units) : grouped(size);
      return `${grouped(count)} × ${content}`;
    })
    .join(" + ");
}
