import type { Finding, Severity } from "../../core/finding.ts";
import { text } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { count } from "./count.ts";

const order: readonly Severity[] = ["error", "warning", "note"];
const signs: Readonly<Record<Severity, string>> = { error: "!", warning: "△", note: "i" };

/** Everything the plan wants the person to know, worst first; a click shows the place. */
export function Notes() {
  const store = useStore();
  const findings = store.shownPlan.value?.findings ?? [];
  const sorted = order.flatMap((severity) => findings.filter((finding) => finding.severity === severity));
  if (sorted.length === 0) return <p class="aside">Nothing to say: no notes, no warnings.</p>;
  return (
    <ul class="notes">
      {sorted.map((finding, i) => (
        <Note key={`${finding.code} ${i}`} finding={finding} />
      ))}
    </ul>
  );
}

function Note({ finding }: { readonly finding: Finding }) {
  const store = useStore();
  const units = store.units.value;
  const message = text(finding.message, units);
  return (
    <li class={`note note-${finding.severity}`}>
      <span class="note-sign" aria-hidden="true">
        {signs[finding.severity]}
      </span>
      <div>
        <p class="note-message">
          <strong>
            {finding.severity === "note" ? "Note" : finding.severity === "warning" ? "Warning" : "Error"}:{" "}
          </strong>
          {message}
        </p>
        <p>{text(finding.reason, units)}</p>
        <p>{text(finding.remedy, units)}</p>
        {finding.at && (
          <button
            type="button"
            class="quiet-button"
            aria-pressed={store.finding.value === finding}
            onClick={() => {
              // Asked again, the map goes there again.
              store.finding.value = null;
              store.finding.value = finding;
            }}
          >
            Show the place
          </button>
        )}
      </div>
    </li>
  );
}

/** "1 error, 2 warnings, 3 notes", without what there is none of. */
export function notesSummary(findings: readonly Finding[]): string {
  const parts = order.flatMap((severity) => {
    const number = findings.filter((finding) => finding.severity === severity).length;
    return number === 0 ? [] : [count(number, severity)];
  });
  return parts.length === 0 ? "none" : parts.join(", ");
}
