import { useId, useState } from "preact/hooks";

interface TextChoiceProps {
  readonly label: string;
  /** What is in force. */
  readonly value: string;
  /** What holds while nothing is typed. */
  readonly usual?: string;
  readonly hint?: string | undefined;
  /** What is wrong with what is in force; it then keeps the files from being written. */
  readonly refusal?: string | null;
  /** Takes what was typed; a sentence when it cannot be taken, and then what was in force stays in force. */
  readonly take: (typed: string) => string | null;
}

/** A text of the hand-over, in force while it is typed. What is wrong with it is said once the field is left. Escape brings back what was there. */
export function TextChoice({ label, value, usual = "", hint, refusal = null, take }: TextChoiceProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const [untaken, setUntaken] = useState<string | null>(null);
  const [isTyping, setTyping] = useState(false);
  const [before, setBefore] = useState(value);
  const id = useId();
  const wrong = isTyping ? null : (untaken ?? refusal);
  const described = [wrong === null ? "" : `${id}-refusal`, hint === undefined ? "" : `${id}-hint`].filter(Boolean);
  const leave = (): void => {
    setTyping(false);
    if (untaken === null) setDraft(null);
  };
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
        aria-invalid={wrong !== null}
        aria-describedby={described.join(" ") || undefined}
        onFocus={() => setBefore(value)}
        onInput={(event) => {
          const typed = event.currentTarget.value;
          setTyping(true);
          setDraft(typed);
          setUntaken(take(typed));
        }}
        onBlur={leave}
        onKeyDown={(event) => {
          if (event.key === "Enter") leave();
          if (event.key !== "Escape" || draft === null) return;
          event.stopPropagation();
          take(before);
          setTyping(false);
          setDraft(null);
          setUntaken(null);
        }}
      />
      {hint !== undefined && (
        <span class="field-hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {wrong !== null && (
        <span class="field-refusal" id={`${id}-refusal`} role="alert">
          {wrong}
        </span>
      )}
    </div>
  );
}
