import { type Phrase, type Quantity, quantity, say } from "./finding.ts";
import type { QuantityKind } from "./units.ts";

/** One thing that a number was worked out from. */
export interface AccountInput {
  readonly name: string;
  readonly value: Phrase;
  /** SI, as it goes into the formula; null for what is only told. */
  readonly number: number | null;
}

/** How a number came about, for a person who asks: the formula in words, what went into it, and where the formula is from. */
export interface Account {
  readonly formula: Phrase;
  readonly inputs: readonly AccountInput[];
  /** Where the formula or the habit is from: "geometry", "common practice, no source", a published source. */
  readonly source: string;
  /** What the formula makes of the inputs, SI; null where the answer is no number. Held against the plan by tests. */
  readonly value: number | null;
}

/** A count has no unit; everything else is a quantity. */
export type AccountKind = QuantityKind | "count";

/** An account whose value is reckoned from the very numbers that are shown: `by` takes those of the inputs that have one, in their order. */
export function account(
  told: Pick<Account, "formula" | "source" | "inputs">,
  by: (...numbers: number[]) => number,
): Account {
  const numbers = told.inputs.flatMap(({ number }) => (number === null ? [] : [number]));
  return { ...told, value: by(...numbers) };
}

/** An account of something that is no number, such as which end of a row meets water. */
export function accountInWords(told: Pick<Account, "formula" | "source" | "inputs">): Account {
  return { ...told, value: null };
}

/** One number that goes into a formula. */
export function input(name: string, kind: AccountKind, number: number): AccountInput {
  return { name, value: say`${spelled(kind, number)}`, number };
}

/** Several numbers that go in added up, shown as how many there are and between which they lie. */
export function inputs(name: string, kind: AccountKind, numbers: readonly number[]): AccountInput {
  const sum = numbers.reduce((total, each) => total + each, 0);
  const least = numbers.reduce((low, each) => Math.min(low, each), Infinity);
  const most = numbers.reduce((high, each) => Math.max(high, each), -Infinity);
  const together = say`${spelled(kind, sum)}`;
  if (numbers.length < 2) return { name, value: together, number: sum };
  const range =
    least === most ? say`each ${spelled(kind, least)}` : say`${spelled(kind, least)} to ${spelled(kind, most)}`;
  return { name, value: [...together, ` (${numbers.length}, `, ...range, ")"], number: sum };
}

/** Something that is told beside the numbers, such as the choice of where rows end. */
export function remark(name: string, value: Phrase | string): AccountInput {
  return { name, value: typeof value === "string" ? [value] : value, number: null };
}

/** Where most formulas are from. */
export const geometry = "geometry";
export const commonPractice = "common practice, no source";

function spelled(kind: AccountKind, number: number): string | Quantity {
  return kind === "count" ? number.toLocaleString("en-US") : quantity(kind, number);
}
