import { useId, useState } from "preact/hooks";
import type { Finding } from "../../core/finding.ts";
import { text } from "../../core/units.ts";
import { useStore } from "../store-context.ts";

interface FieldProps {
  readonly label: string;
  /** What is in force now, as it is shown while nobody types. */
  readonly shown: string;
  /** Takes what was typed; a list of findings (or a sentence) when it is refused, nothing when it is in force. */
  readonly apply: (typed: string) => readonly Finding[] | string;
  readonly hint?: string;
}

/**
 * A text field that is in force while it is typed. What is refused stays in the field with a sentence beside it,
 * and what was in force stays in force.
 */
export function Field({ label, shown, apply, hint }: FieldProps) {
  const { units } = useStore();
  const [draft, setDraft] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();

  const attempt = (typed: string): string | null => {
    const answer = apply(typed);
    if (typeof answer === "string") return answer === "" ? null : answer;
    const first = answer[0];
    return first ? `${text(first.message, units.value)} ${text(first.remedy, units.value)}` : null;
  };
  const onInput = (typed: string): void => {
    setDraft(typed);
    // Half a quantity is no mistake yet: the sentence waits until the field is left, but goes as soon as all is well.
    if (attempt(typed) === null) setRefusal(null);
  };
  const finish = (): void => {
    if (draft === null) return;
    const answer = draft === shown ? null : attempt(draft);
    setRefusal(answer);
    if (answer === null) setDraft(null);
  };

  const described = [refusal ? `${id}-refusal` : "", hint ? `${id}-hint` : ""].filter(Boolean).join(" ");
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={draft ?? shown}
        aria-invalid={refusal !== null}
        aria-describedby={described || undefined}
        onInput={(event) => onInput(event.currentTarget.value)}
        onBlur={finish}
        onKeyDown={(event) => {
          if (event.key === "Enter") finish();
          if (event.key === "Escape") {
            setDraft(null);
            setRefusal(null);
          }
        }}
      />
      {hint && (
        <span class="field-hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {refusal && (
        <span class="field-refusal" id={`${id}-refusal`} role="alert">
          {refusal}
        </span>
      )}
    </div>
  );
}
