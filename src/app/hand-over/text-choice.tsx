import { useId, useState } from "preact/hooks";

interface TextChoiceProps {
  readonly label: string;
  /** What is in force. */
  readonly value: string;
  /** What holds while nothing is typed. */
  readonly usual?: string;
  readonly hint?: string | undefined;
  /** Takes what was typed; a sentence when it cannot be taken, and then what was in force stays in force. */
  readonly take: (typed: string) => string | null;
}

/** A text of the hand-over, in force while it is typed; what is refused stays in the field with a sentence beside it. Escape brings back what was there. */
export function TextChoice({ label, value, usual = "", hint, take }: TextChoiceProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [before, setBefore] = useState(value);
  const id = useId();
  const type = (typed: string): void => {
    setDraft(typed);
    setRefusal(take(typed));
  };
  const described = [refusal === null ? "" : `${id}-refusal`, hint === undefined ? "" : `${id}-hint`].filter(Boolean);
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={draft ?? value}
        placeholder={usual}
        aria-invalid={refusal !== null}
        aria-describedby={described.join(" ") || undefined}
        onFocus={() => setBefore(value)}
        onInput={(event) => type(event.currentTarget.value)}
        onBlur={() => {
          if (refusal === null) setDraft(null);
        }}
        onKeyDown={(event) => {
          if (event.key !== "Escape" || draft === null) return;
          event.stopPropagation();
          take(before);
          setDraft(null);
          setRefusal(null);
        }}
      />
      {hint !== undefined && (
        <span class="field-hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {refusal !== null && (
        <span class="field-refusal" id={`${id}-refusal`} role="alert">
          {refusal}
        </span>
      )}
    </div>
  );
}
