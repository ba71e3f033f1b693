import type { Finding } from "../../core/finding.ts";
import { text } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { severitySigns, toldFindings } from "./told-findings.ts";

const words = { error: "Error", warning: "Warning", note: "Note" } as const;

/** Everything the plan wants the person to know, worst first; a click shows the place. */
export function Notes() {
  const told = toldFindings(useStore().shownPlan.value);
  if (told.length === 0) return <p class="aside">Nothing to say: no notes, no warnings.</p>;
  return (
    <ul class="notes">
      {told.map((finding, i) => (
        <Note key={`${finding.code} ${i}`} finding={finding} />
      ))}
    </ul>
  );
}

/** One finding in words: what, why it matters, what would fix it, and where. */
export function Note({ finding }: { readonly finding: Finding }) {
  const store = useStore();
  const units = store.units.value;
  const message = text(finding.message, units);
  return (
    <li class={`note note-${finding.severity}`}>
      <span class="note-sign" aria-hidden="true">
        {severitySigns[finding.severity]}
      </span>
      <div>
        <p class="note-message">
          <strong>{words[finding.severity]}: </strong>
          {message}
        </p>
        <p>{text(finding.reason, units)}</p>
        <p>{text(finding.remedy, units)}</p>
        {finding.at && (
          <button
            type="button"
            class="quiet-button"
            aria-label={`Show the place on the map: ${message}`}
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
