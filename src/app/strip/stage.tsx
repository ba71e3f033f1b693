import type { ComponentChildren } from "preact";
import { useId, useState } from "preact/hooks";
import { useStore } from "../store-context.ts";
import { StageMark } from "./stage-mark.tsx";
import { findingsOf, type StageName } from "./told-findings.ts";

interface StageProps {
  readonly number: number;
  readonly name: string;
  /** One line with the result, shown open or closed. */
  readonly result: ComponentChildren;
  /** Whose warnings it is marked with. */
  readonly stage?: StageName;
  /** Holds until the person opens or closes it. */
  readonly startsOpen?: boolean;
  readonly children: ComponentChildren;
}

/** One step of the work: its name and result in a line, opened to show what can be set. */
export function Stage({ number, name, result, stage, startsOpen = false, children }: StageProps) {
  const store = useStore();
  const [chosen, setChosen] = useState<boolean | null>(null);
  const isOpen = chosen ?? startsOpen;
  const id = useId();
  return (
    <section class="stage" aria-labelledby={`${id}-name`} onKeyDown={walkLine}>
      <div class="stage-head">
        <h2>
          <button
            type="button"
            aria-expanded={isOpen}
            aria-controls={`${id}-body`}
            aria-describedby={`${id}-result`}
            onClick={() => setChosen(!isOpen)}
          >
            <span class="stage-number" aria-hidden="true">
              {number}
            </span>
            <span class="stage-name" id={`${id}-name`}>
              {name}
            </span>
          </button>
        </h2>
        <p class="stage-line" id={`${id}-result`}>
          <span class="stage-result">{result}</span>
          {stage && <StageMark findings={findingsOf(store.shownPlan.value, stage)} />}
        </p>
      </div>
      <div class="stage-body" id={`${id}-body`} hidden={!isOpen}>
        {isOpen && children}
      </div>
    </section>
  );
}

/** Left and right go from the step's name to the numbers in its line and back, which are no stops for the tab key. */
function walkLine(event: KeyboardEvent): void {
  const by = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
  const line = event.target instanceof HTMLElement ? event.target.closest(".stage-head") : null;
  if (by === 0 || line === null) return;
  const stops: readonly Element[] = [...line.querySelectorAll("button")];
  const at = document.activeElement ? stops.indexOf(document.activeElement) : -1;
  const next = stops[at + by];
  if (at < 0 || !(next instanceof HTMLElement)) return;
  event.preventDefault();
  next.focus();
}
