import { useId, useState } from "preact/hooks";

interface CellFieldProps {
  /** Name for a screen reader; the column says it to the eye. */
  readonly label: string;
  /** What holds now. */
  readonly shown: string;
  /** Takes what was typed once the field is left or Enter is pressed; a sentence when it is refused, else an empty text. */
  readonly apply: (typed: string) => string;
  readonly placeholder?: string;
  /** True where the label is to be seen beside the field. */
  readonly isLabelled?: boolean;
}

/** A field that takes effect when it is left: half a coordinate would throw a corner across the map. */
export function CellField({ label, shown, apply, placeholder, isLabelled = false }: CellFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();
  const finish = (): void => {
    if (typed === null) return;
    const answer = typed.trim() === shown ? "" : apply(typed.trim());
    setRefusal(answer === "" ? null : answer);
    if (answer === "") setTyped(null);
  };
  return (
    <span class={isLabelled ? "field" : "cell-field"}>
      {isLabelled && <label for={id}>{label}</label>}
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        aria-label={isLabelled ? undefined : label}
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : `${id}-refusal`}
        placeholder={placeholder}
        value={typed ?? shown}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={finish}
        onKeyDown={(event) => {
          if (event.key === "Enter") finish();
          if (event.key === "Escape" && (typed !== null || refusal !== null)) {
            event.stopPropagation();
            setTyped(null);
            setRefusal(null);
          }
        }}
      />
      {refusal !== null && (
        <span class="field-refusal" id={`${id}-refusal`} role="alert">
          {refusal}
        </span>
      )}
    </span>
  );
}
