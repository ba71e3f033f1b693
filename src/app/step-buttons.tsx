import { useRef, useState } from "preact/hooks";
import { redo, undo } from "./commands/undo.ts";
import { type History, nextSteps } from "./history.ts";
import { StepHistory } from "./step-history.tsx";
import { useStore } from "./store-context.ts";

/** One step back, one forward, each saying which; and the list of all of them. */
export function StepButtons() {
  const store = useStore();
  const [isListOpen, setListOpen] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const history = store.history.value;
  const said = useSaid(history);
  if (!history) return null;
  const next = nextSteps(history);
  const back = next.undo === null ? "Nothing to undo" : `Undo: ${lowered(next.undo)}`;
  const forward = next.redo === null ? "Nothing to redo" : `Redo: ${lowered(next.redo)}`;
  const close = (): void => {
    setListOpen(false);
    opener.current?.focus();
  };
  return (
    <div
      class="step-buttons"
      onFocusOut={(event) => {
        const { currentTarget, relatedTarget } = event;
        if (relatedTarget instanceof Node && !currentTarget.contains(relatedTarget)) setListOpen(false);
      }}
    >
      {/* Not `disabled`: the last step back would leave the keyboard nowhere. */}
      <button
        type="button"
        class="icon-button"
        title={back}
        aria-label={back}
        aria-disabled={next.undo === null}
        onClick={() => undo(store)}
      >
        <svg viewBox="0 0 24 24" aria-hidden="true">
          <path d="M5 9h9a5 5 0 0 1 0 10H9M5 9l4-4M5 9l4 4" />
        </svg>
      </button>
      <button
        type="button"
        class="icon-button"
        title={forward}
        aria-label={forward}
        aria-disabled={next.redo === null}
        onClick={() => redo(store)}
      >
        <svg viewBox="0 0 24 24" aria-hidden="true">
          <path d="M19 9h-9a5 5 0 0 0 0 10h5M19 9l-4-4M19 9l-4 4" />
        </svg>
      </button>
      <button
        ref={opener}
        type="button"
        class="steps-opener"
        aria-expanded={isListOpen}
        aria-label="List of edits"
        title="List of edits"
        onClick={() => setListOpen(!isListOpen)}
      >
        <span aria-hidden="true">▾</span>
      </button>
      {isListOpen && <StepHistory onClose={close} />}
      <output class="unseen">{said}</output>
    </div>
  );
}

/** What was taken back or brought again last, for who can not see the map change. */
function useSaid(history: History | null): string {
  const before = useRef(history);
  const said = useRef("");
  const was = before.current;
  before.current = history;
  if (history && was && history !== was) {
    const isWalk = history.steps === was.steps;
    const step = history.at < was.at ? was.steps[was.at] : history.steps[history.at];
    said.current = isWalk && step ? `${history.at < was.at ? "Undone" : "Redone"}: ${lowered(step.name)}` : "";
  }
  return said.current;
}

/** "row spacing 2.5 m" in the middle of a sentence; a word in capitals stays. */
function lowered(name: string): string {
  return /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}
