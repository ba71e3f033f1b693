import { parseQuantity, type QuantityKind } from "../units.ts";

/** A quantity of our own tables as it is spoken of, in SI: si("length", "8 ft") is 2.4384. */
export function si(kind: QuantityKind, text: string): number {
  const parsed = parseQuantity(kind, text);
  if (!parsed.ok) throw new Error(`"${text}": ${parsed.reason}`);
  return parsed.value;
}
