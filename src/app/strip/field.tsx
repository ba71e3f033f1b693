import { useId, useRef, useState } from "preact/hooks";
import type { Finding } from "../../core/finding.ts";
import { text } from "../../core/units.ts";
import { takeBack } from "../commands/take-back.ts";
import { useStore } from "../store-context.ts";

interface FieldProps {
  readonly label: string;
  /** What is in force now, as it is shown while nobody types. */
  readonly shown: string;
  /**
   * Takes what was typed; a list of findings (or a sentence) when it is refused, nothing when it is in force. `joins` is the mark of this
   * stay in the field: edits that carry it are one step.
   */
  readonly apply: (typed: string, joins: string) => readonly Finding[] | string;
  readonly hint?: string;
  /** In a table: the label is heard, not seen. */
  readonly isCompact?: boolean;
}

let stays = 0;

/**
 * A text field that is in force while it is typed, as one step a stay. What is refused stays in the field with a sentence beside it, and
 * what was in force stays in force. Escape takes back what was typed in this stay.
 */
export function Field({ label, shown, apply, hint, isCompact = false }: FieldProps) {
  const store = useStore();
  const [draft, setDraft] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const stay = useRef({ joins: "", before: shown });
  const tried = useRef<{ readonly typed: string; readonly refusal: string | null } | null>(null);
  const id = useId();

  const begin = (): void => {
    stays += 1;
    stay.current = { joins: `${label}, stay ${stays}`, before: shown };
  };
  const attempt = (typed: string): string | null => {
    const answer = apply(typed, stay.current.joins);
    const first = typeof answer === "string" ? undefined : answer[0];
    const sentence = typeof answer === "string" ? answer : first ? toldOf(first) : "";
    tried.current = { typed, refusal: sentence === "" ? null : sentence };
    return tried.current.refusal;
  };
  const toldOf = ({ message, remedy }: Finding): string =>
    `${text(message, store.units.value)} ${text(remedy, store.units.value)}`;
  const onInput = (typed: string): void => {
    setDraft(typed);
    if (typed === stay.current.before) {
      takeBack(store, stay.current.joins);
      tried.current = null;
      setRefusal(null);
      return;
    }
    // Half a quantity is no mistake yet: the sentence waits until the field is left, but goes as soon as all is well.
    if (attempt(typed) === null) setRefusal(null);
  };
  const finish = (): void => {
    if (draft === null) return;
    const known = tried.current?.typed === draft ? tried.current.refusal : null;
    setRefusal(known);
    if (known === null) setDraft(null);
  };
  const giveUp = (): void => {
    takeBack(store, stay.current.joins);
    tried.current = null;
    setDraft(null);
    setRefusal(null);
  };

  const described = [refusal ? `${id}-refusal` : "", hint ? `${id}-hint` : ""].filter(Boolean).join(" ");
  return (
    <div class={isCompact ? "field field-compact" : "field"}>
      <label for={id} class={isCompact ? "unseen" : undefined}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={draft ?? shown}
        aria-invalid={refusal !== null}
        aria-describedby={described || undefined}
        data-typed={draft === null ? undefined : ""}
        onFocus={begin}
        onInput={(event) => onInput(event.currentTarget.value)}
        onBlur={finish}
        onKeyDown={(event) => {
          if (event.key === "Enter") {
            finish();
            begin();
          }
          if (event.key === "Escape" && (draft !== null || refusal !== null)) {
            event.stopPropagation();
            giveUp();
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
