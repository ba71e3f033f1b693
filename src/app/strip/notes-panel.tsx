import { useEffect, useId, useRef } from "preact/hooks";
import { useStore } from "../store-context.ts";
import { words } from "../words.ts";
import { Notes } from "./notes.tsx";
import { findingsInWords, toldFindings } from "./told-findings.ts";

/** The list of notes and warnings over the steps, so that the map beside it shows their places. Escape sends it away. */
export function NotesPanel({ onClose }: { readonly onClose: () => void }) {
  const store = useStore();
  const panel = useRef<HTMLElement>(null);
  const id = useId();
  useEffect(() => panel.current?.focus({ preventScroll: true }), []);
  const findings = toldFindings(store.shownPlan.value);
  return (
    <section
      class="notes-panel"
      id="notes-panel"
      ref={panel}
      tabIndex={-1}
      aria-labelledby={id}
      onKeyDown={(event) => {
        if (event.key === "Escape") onClose();
      }}
    >
      <div class="panel-head">
        <h2 id={id}>
          Notes and warnings <small>{findingsInWords(findings) ?? "none"}</small>
        </h2>
        <button type="button" class="quiet-button" onClick={onClose}>
          {words.close}
        </button>
      </div>
      <Notes />
    </section>
  );
}
