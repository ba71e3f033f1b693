import { useId, useState } from "preact/hooks";
import type { Finding } from "../../core/finding.ts";
import { text } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import type { StepName } from "../commands/edit.ts";
import { useStore } from "../store-context.ts";

interface ChoiceFieldProps {
  readonly label: string;
  readonly value: string;
  readonly path: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  readonly isCompact?: boolean;
  readonly change?: (chosen: string, step: StepName) => readonly Finding[];
}

/** A field for one of a few words of the project. */
export function ChoiceField({ label, value, path, choices, isCompact = false, change }: ChoiceFieldProps) {
  const store = useStore();
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();
  const choose = (chosen: string): void => {
    const told = choices.find((choice) => choice.value === chosen)?.label ?? chosen;
    const step = { name: `${label} ${told}` };
    const first = (change ? change(chosen, step) : changeSetting(store, path, chosen, step))[0];
    setRefusal(first ? text(first.message, store.units.value) : null);
  };
  return (
    <div class={isCompact ? "field field-choice field-compact" : "field field-choice"}>
      <label for={id} class={isCompact ? "unseen" : undefined}>
        {label}
      </label>
      <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
      {refusal && (
        <span class="field-refusal" role="alert">
          {refusal}
        </span>
      )}
    </div>
  );
}
