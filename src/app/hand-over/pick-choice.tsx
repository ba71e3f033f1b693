import { useId } from "preact/hooks";

interface PickChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  readonly hint?: string | undefined;
  readonly take: (value: string) => void;
}

/** One of a few words of the hand-over. */
export function PickChoice({ label, value, choices, hint, take }: PickChoiceProps) {
  const id = useId();
  return (
    <div class="field field-choice">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
        onChange={(event) => take(event.currentTarget.value)}
      >
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
      {hint !== undefined && (
        <span class="field-hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
    </div>
  );
}
