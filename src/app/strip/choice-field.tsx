import { useId, useState } from "preact/hooks";
import { text } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";

interface ChoiceFieldProps {
  readonly label: string;
  readonly value: string;
  readonly path: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
}

/** A field for one of a few words of the project. */
export function ChoiceField({ label, value, path, choices }: ChoiceFieldProps) {
  const store = useStore();
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();
  const choose = (chosen: string): void => {
    const first = changeSetting(store, path, chosen)[0];
    setRefusal(first ? text(first.message, store.units.value) : null);
  };
  return (
    <div class="field field-choice">
      <label for={id}>{label}</label>
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
