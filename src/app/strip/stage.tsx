import type { ComponentChildren } from "preact";
import { useId, useState } from "preact/hooks";

interface StageProps {
  readonly number: number;
  readonly name: string;
  /** One line with the result, shown open or closed. */
  readonly result: string;
  readonly startsOpen?: boolean;
  readonly children: ComponentChildren;
}

/** One step of the work: its name and result in a line, opened to show what can be set. */
export function Stage({ number, name, result, startsOpen = false, children }: StageProps) {
  const [isOpen, setOpen] = useState(startsOpen);
  const id = useId();
  return (
    <section class="stage" aria-labelledby={`${id}-name`}>
      <h2 class="stage-head">
        <button type="button" aria-expanded={isOpen} aria-controls={`${id}-body`} onClick={() => setOpen(!isOpen)}>
          <span class="stage-number" aria-hidden="true">
            {number}
          </span>
          <span class="stage-name" id={`${id}-name`}>
            {name}
          </span>
          <span class="stage-result">{result}</span>
        </button>
      </h2>
      <div class="stage-body" id={`${id}-body`} hidden={!isOpen}>
        {isOpen && children}
      </div>
    </section>
  );
}
