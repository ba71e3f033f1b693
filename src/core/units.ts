/** Everything that is converted, read or written with a unit goes through here; SI elsewhere. */

import { fromSi } from "./units/factors.ts";
import { formatQuantity } from "./units/format-quantity.ts";
import type { QuantityKind, UnitSystem } from "./units/kind.ts";
import { unitNamed } from "./units/unit-names.ts";

export { formatQuantity } from "./units/format-quantity.ts";
export { type QuantityKind, type UnitSystem, unitSystems } from "./units/kind.ts";
export { type ParsedQuantity, parseQuantity } from "./units/parse-quantity.ts";
export { gaugeDiameter_mm, gaugeOfDiameter, wireGauges } from "./units/wire-gauge.ts";

/**
 * A sentence with its quantities written in the reader's units.
 * The phrase is the `Phrase` of finding.ts; it is spelled out here because finding.ts stands on this module.
 */
export function text(
  phrase: readonly (string | { readonly kind: QuantityKind; readonly value: number })[],
  units: UnitSystem,
): string {
  return phrase
    .map((part) => (typeof part === "string" ? part : formatQuantity(part.kind, part.value, units)))
    .join("");
}

/** An SI value as a bare number in a unit by its spelling, for columns headed with the unit: `inUnit("area", 10_000, "acre")` is 2.4710538. */
export function inUnit(kind: QuantityKind, value: number, spelling: string): number {
  const unit = unitNamed(kind, spelling.toLowerCase());
  if (unit === null) throw new Error(`No unit "${spelling}" for ${kind}`);
  return fromSi(value, unit.factor);
}
