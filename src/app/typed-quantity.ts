import { formatQuantity, type QuantityKind, type UnitSystem } from "../core/units.ts";

/**
 * What was typed with the unit it was meant in: a number alone takes the unit that the field shows, so that "8" beside "6 ft" is 8 ft.
 * Anything else is left as it is, for the core to read or to refuse.
 */
export function withShownUnit(typed: string, kind: QuantityKind, inForce: number, units: UnitSystem): string {
  const bare = typed.trim();
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(bare)) return bare;
  const unit = /[^\d.,\s-].*$/.exec(formatQuantity(kind, inForce, units))?.[0] ?? "";
  return `${bare} ${unit}`.trim();
}
