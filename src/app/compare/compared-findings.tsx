import type { Finding } from "../../core/finding.ts";
import { text } from "../../core/units.ts";
import type { Comparison } from "../../core/variants.ts";
import { useStore } from "../store-context.ts";
import { severitySigns } from "../strip/told-findings.ts";

const words = { error: "Error", warning: "Warning", note: "Note" } as const;

/** What a file leaves unsaid differs with every change, and is no word on either plan. */
const ofTheFile = "project/defaults-used";

interface ComparedFindingsProps {
  readonly comparison: Comparison;
  /** Where the right side's own findings hold: "with the change". */
  readonly where: string;
}

/** What only one of the two plans has to say. */
export function ComparedFindings({ comparison, where }: ComparedFindingsProps) {
  const [left, right] = [comparison.onlyLeft, comparison.onlyRight].map((findings) =>
    findings.filter(({ code }) => code !== ofTheFile),
  );
  if (!left || !right || left.length + right.length === 0) {
    return <p class="aside">The warnings and notes stay the same.</p>;
  }
  return (
    <div class="compared-findings">
      <Told title="Said only now" findings={left} />
      <Told title={`Said only ${where}`} findings={right} />
    </div>
  );
}

function Told({ title, findings }: { readonly title: string; readonly findings: readonly Finding[] }) {
  const units = useStore().units.value;
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      {findings.length === 0 && <p class="aside">Nothing.</p>}
      <ul>
        {findings.map((finding, i) => (
          <li key={`${finding.code} ${i}`} class={`mark-${finding.severity}`}>
            <span aria-hidden="true">{severitySigns[finding.severity]} </span>
            <strong>{words[finding.severity]}: </strong>
            {text(finding.message, units)}
          </li>
        ))}
      </ul>
    </section>
  );
}
