import type { Finding } from "./finding.ts";

/** What a fallible step gives: a value with what is to be said about it, or only the findings that explain why there is none. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly findings: readonly Finding[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** A value, with findings if there are any. */
export function success<T>(value: T, findings: readonly Finding[] = []): Outcome<T> {
  return { ok: true, value, findings };
}

/** No value; at least one finding says why. */
export function failure<T = never>(findings: readonly Finding[]): Outcome<T> {
  return { ok: false, findings };
}
