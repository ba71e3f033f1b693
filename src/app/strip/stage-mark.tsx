import type { Finding } from "../../core/finding.ts";
import { findingsInWords, severitySigns } from "./told-findings.ts";

/** The mark of a step that has warnings or errors: a sign and a number, in words for who hears them. Nothing for notes. */
export function StageMark({ findings }: { readonly findings: readonly Finding[] }) {
  const grave = findings.filter(({ severity }) => severity !== "note");
  const worst = grave[0]?.severity;
  if (!worst) return null;
  const words = findingsInWords(grave) ?? "";
  return (
    <span class={`stage-mark mark-${worst}`} title={words}>
      <span aria-hidden="true">
        {severitySigns[worst]} {grave.length}
      </span>
      <span class="unseen"> ({words})</span>
    </span>
  );
}
