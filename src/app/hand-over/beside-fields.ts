import type { Finding } from "../../core/finding.ts";
import { text, type UnitSystem } from "../../core/units.ts";

/** The first error of findings in words, with what would mend it; null when there is none. */
export function firstError(findings: readonly Finding[], units: UnitSystem): string | null {
  const first = findings.find(({ severity }) => severity === "error");
  return first === undefined ? null : `${text(first.message, units)} ${text(first.remedy, units)}`;
}

/** Told beside the field that they are about, and so not once more in the list. */
const besideFields = [
  "exchange/rows-unknown",
  "exchange/rows-ambiguous",
  "exchange/baseline-unknown",
  "exchange/baseline-ambiguous",
  "exchange/baseline-too-short",
  "exchange/naming-token-unknown",
  "systems/bad-system",
  "systems/unknown-system",
];

/** Findings that no field tells. */
export function notBesideFields(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter(({ code }) => !besideFields.includes(code));
}
