import { useEffect, useRef } from "preact/hooks";
import { goToStep } from "./commands/go-to-step.ts";
import { useStore } from "./store-context.ts";

/** Steps that the list shows; older ones are reached one by one. */
const mostShown = 60;

/** Every edit by its name, the newest first; the shown one is marked, and a click goes to any. */
export function StepHistory({ onClose }: { readonly onClose: () => void }) {
  const store = useStore();
  const panel = useRef<HTMLDivElement>(null);
  useEffect(() => panel.current?.querySelector<HTMLElement>('[aria-current="step"]')?.focus(), []);
  useEffect(() => {
    const elsewhere = (event: PointerEvent): void => {
      const holder = panel.current?.parentElement;
      if (event.target instanceof Node && !holder?.contains(event.target)) onClose();
    };
    window.addEventListener("pointerdown", elsewhere, { capture: true });
    return () => window.removeEventListener("pointerdown", elsewhere, { capture: true });
  }, [onClose]);
  const history = store.history.value;
  if (!history) return null;
  const shown = history.steps
    .map(({ name }, at) => ({ name, at }))
    .slice(-mostShown)
    .reverse();
  return (
    <section
      class="step-history"
      ref={panel}
      aria-label="Edits, the newest first"
      onKeyDown={(event) => {
        if (event.key === "Escape") {
          event.stopPropagation();
          onClose();
        }
      }}
    >
      <ol>
        {shown.map(({ name, at }) => (
          <li key={at}>
            <button
              type="button"
              class={at > history.at ? "is-undone" : ""}
              aria-current={at === history.at ? "step" : undefined}
              onClick={() => goToStep(store, at)}
            >
              {name}
              {at === history.at && <small> shown now</small>}
              {at > history.at && <small> undone</small>}
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
