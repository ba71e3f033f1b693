import type { Finding } from "../finding.ts";
import { moreFindings } from "./findings.ts";

/** Findings of one code that are listed one by one. */
const mostOfAKind = 20;

/** The findings in their order, of each code the first few; one that counts the rest of a code stands at the end. */
export function cutFindings(findings: readonly Finding[]): readonly Finding[] {
  if (findings.length <= mostOfAKind) return findings;
  const counts = new Map<string, number>();
  const kept = findings.filter(({ code }) => {
    const count = (counts.get(code) ?? 0) + 1;
    counts.set(code, count);
    return count <= mostOfAKind;
  });
  const rest = [...counts].flatMap(([code, count]) => {
    const severity = kept.find((finding) => finding.code === code)?.severity;
    if (count <= mostOfAKind || severity === undefined) return [];
    return [moreFindings(code, severity, count - mostOfAKind)];
  });
  return [...kept, ...rest];
}
