import type { Json } from "../../core/project/project.ts";
import { formatQuantity, parseQuantity } from "../../core/units.ts";
import type { Store } from "../store.ts";
import { withShownUnit } from "../typed-quantity.ts";

/** A length as a file states it, for a field: with its unit in the shown system; empty when it is not stated. */
export function statedLength(store: Store, stated: Json | undefined): string {
  if (stated === undefined || stated === null) return "";
  if (typeof stated === "number") return formatQuantity("length", stated, store.units.peek());
  const parsed = parseQuantity("length", String(stated));
  return parsed.ok ? formatQuantity("length", parsed.value, store.units.peek()) : String(stated);
}

/** A stated length in metres; null when there is none that can be read. */
export function statedLength_m(stated: Json | undefined): number | null {
  if (typeof stated === "number") return stated;
  const parsed = typeof stated === "string" ? parseQuantity("length", stated) : null;
  return parsed?.ok ? parsed.value : null;
}

/** What was typed into a length field, as the file will hold it: null when nothing stands in it; a sentence when it is no length. */
export function typedLength(
  store: Store,
  typed: string,
  usual_m: number,
): { readonly ok: true; readonly value: string | null } | { readonly ok: false; readonly sentence: string } {
  if (typed.trim() === "") return { ok: true, value: null };
  const meant = withShownUnit(typed, "length", usual_m, store.units.peek());
  const parsed = parseQuantity("length", meant);
  return parsed.ok
    ? { ok: true, value: meant }
    : { ok: false, sentence: `“${typed}” was not understood: ${parsed.reason}.` };
}
