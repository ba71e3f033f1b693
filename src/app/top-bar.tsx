import { useId, useRef } from "preact/hooks";
import type { UnitSystem } from "../core/units.ts";
import { OpenChoices } from "./open-choices.tsx";
import { useStore } from "./store-context.ts";
import { words } from "./words.ts";

/** Name of the project, units, and the way to another file. */
export function TopBar() {
  const store = useStore();
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  return (
    <header class="top-bar">
      <h1>{store.shownPlan.value?.project.name ?? words.title}</h1>
      <UnitSwitch />
      <button type="button" onClick={() => dialog.current?.showModal()}>
        {words.open}
      </button>
      <dialog ref={dialog} class="open-dialog" aria-labelledby={titleId}>
        <h2 id={titleId}>Open</h2>
        <OpenChoices heading="h3" onChosen={() => dialog.current?.close()} />
        <form method="dialog">
          <button type="submit" class="quiet-button">
            {words.close}
          </button>
        </form>
      </dialog>
    </header>
  );
}

const systems: readonly { readonly value: UnitSystem; readonly label: string }[] = [
  { value: "metric", label: words.metric },
  { value: "us", label: words.us },
];

function UnitSwitch() {
  const store = useStore();
  const name = useId();
  return (
    <fieldset class="unit-switch">
      <legend class="unseen">{words.units}</legend>
      {systems.map(({ value, label }) => (
        <label key={value}>
          <input
            type="radio"
            name={name}
            checked={store.units.value === value}
            onChange={() => {
              store.units.value = value;
            }}
          />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}
