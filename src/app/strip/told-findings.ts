import { isBlank } from "../../core/drawing/blank.ts";
import type { Finding, Severity } from "../../core/finding.ts";
import type { Plan } from "../../core/plan.ts";
import { count } from "./count.ts";

/** The steps of the page, by the first half of the codes of their findings. */
export type StageName = "ground" | "rows" | "mainline" | "trellis" | "drip" | "trench" | "materials";

const homes: Readonly<Record<StageName, readonly string[]>> = {
  ground: ["project", "ground", "drawing", "app"],
  rows: ["rows"],
  mainline: ["mainline"],
  trellis: ["trellis"],
  drip: ["drip"],
  trench: ["trench"],
  materials: ["materials"],
};

export const severities: readonly Severity[] = ["error", "warning", "note"];
export const severitySigns: Readonly<Record<Severity, string>> = { error: "!", warning: "△", note: "i" };

/** What is told of a plan, worst first; a parcel that is not drawn yet is no mistake. */
export function toldFindings(plan: Plan | null): readonly Finding[] {
  if (!plan) return [];
  const told = isBlank(plan.project) ? plan.findings.filter(({ code }) => code !== "project/no-parcel") : plan.findings;
  return severities.flatMap((severity) => told.filter((finding) => finding.severity === severity));
}

/** What is told of one step. */
export function findingsOf(plan: Plan | null, stage: StageName): readonly Finding[] {
  return toldFindings(plan).filter(({ code }) => homes[stage].includes(code.split("/")[0] ?? ""));
}

/** "1 error, 2 warnings, 3 notes", without what there is none of; null when there is nothing. */
export function findingsInWords(findings: readonly Finding[]): string | null {
  const parts = severities.flatMap((severity) => {
    const number = findings.filter((finding) => finding.severity === severity).length;
    return number === 0 ? [] : [count(number, severity)];
  });
  return parts.length === 0 ? null : parts.join(", ");
}
