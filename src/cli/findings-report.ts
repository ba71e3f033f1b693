import { type Finding, text, type UnitSystem } from "../core/index.ts";
import { wrapped } from "./wrapped.ts";

const worstFirst = ["error", "warning", "note"] as const;

/** The findings, worst first: what is wrong, why it matters, what would fix it, the code and the place. Empty when there are none. */
export function findingsReport(findings: readonly Finding[], units: UnitSystem): string {
  const sorted = worstFirst.flatMap((severity) => findings.filter((finding) => finding.severity === severity));
  return sorted.map((finding) => findingText(finding, units)).join("");
}

function findingText(finding: Finding, units: UnitSystem): string {
  const about = finding.feature === null ? "" : `, feature ${finding.feature}`;
  const [lon = 0, lat = 0] = finding.at ?? [];
  const place = finding.at === null ? "" : `, at lat ${lat.toFixed(6)}, lon ${lon.toFixed(6)}`;
  const [first = "", ...rest] = wrapped(`${finding.severity}: ${text(finding.message, units)}`, "").split(/(?<=\n)/);
  return [
    first,
    ...rest.map((line) => `  ${line}`),
    wrapped(`${text(finding.reason, units)} ${text(finding.remedy, units)}`, "  "),
    `  (${finding.code}${about}${place})\n`,
  ].join("");
}
