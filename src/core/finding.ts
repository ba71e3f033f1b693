import type { LonLat } from "./plane/coordinate.ts";
import type { QuantityKind } from "./units.ts";

/**
 * What the plan wants the person to know. On screen: a note, a warning or an error.
 * Each stage makes its findings in its own `findings.ts`, one function a code, so text, reason and remedy stand in one place.
 */
export type Severity = "error" | "warning" | "note";

/** A number with its kind, written in the reader's units only when the sentence is shown (`text` in units.ts). */
export interface Quantity {
  readonly kind: QuantityKind;
  readonly value: number;
}

/** A sentence with the quantities still in SI. */
export type Phrase = readonly (string | Quantity)[];

export interface Finding {
  /** `stage/what`; never renamed once released. */
  readonly code: `${string}/${string}`;
  readonly severity: Severity;
  /** The place on the map, or null when the finding is about the whole file. */
  readonly at: LonLat | null;
  /** The feature's id, or "#3" for the fourth feature of a file whose features have no id; null when it is about none. */
  readonly feature: string | null;
  /** What is wrong, for a grower. */
  readonly message: Phrase;
  /** Why it matters. */
  readonly reason: Phrase;
  /** What would fix it. */
  readonly remedy: Phrase;
}

/**
 * Builds a phrase from a template; strings, plain counts and quantities may stand in it.
 * `say\`Row ${"14"} is ${quantity("length", 3.2)} long\``
 */
export function say(parts: TemplateStringsArray, ...values: readonly (string | number | Quantity)[]): Phrase {
  const phrase: (string | Quantity)[] = [];
  parts.forEach((part, i) => {
    if (part !== "") phrase.push(part);
    const value = values[i];
    if (value === undefined) return;
    phrase.push(typeof value === "number" ? String(value) : value);
  });
  return phrase;
}

/** "3, 7 and 9", "3, 7, 9 and 12 more": names in a sentence, the first few of many. */
export function listed(names: readonly string[], most = 5): string {
  const shown = names.length > most ? [...names.slice(0, most), `${names.length - most} more`] : names;
  const [last = "", ...before] = [...shown].reverse();
  return before.length === 0 ? last : `${before.reverse().join(", ")} and ${last}`;
}

/** A number of a kind, in that kind's SI unit (see `QuantityKind`). */
export function quantity(kind: QuantityKind, value: number): Quantity {
  return { kind, value };
}

/** A finding that has no place on the map: a setting is at fault, not a spot. */
export function unplaced(
  code: Finding["code"],
  severity: Severity,
  message: Phrase,
  reason: Phrase,
  remedy: Phrase,
): Finding {
  return { code, severity, at: null, feature: null, message, reason, remedy };
}

/** True when one of the findings is an error. */
export function hasError(findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.severity === "error");
}
