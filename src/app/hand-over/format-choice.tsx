import { useId } from "preact/hooks";
import { formatNamed, formats } from "../../core/exchange/formats.ts";
import { useStore } from "../store-context.ts";
import { handOverChoicesOf } from "./hand-over-choices.ts";

/** Which open format, and for whom it is. */
export function FormatChoice() {
  const { as } = handOverChoicesOf(useStore());
  const id = useId();
  const { title, usedFor } = formatNamed(as.value);
  return (
    <>
      <fieldset class="hand-over-formats" aria-describedby={`${id}-told`}>
        <legend>Format</legend>
        {formats.map(({ name, word }) => (
          <label key={name}>
            <input
              type="radio"
              name={`${id}-format`}
              checked={as.value === name}
              onChange={() => {
                as.value = name;
              }}
            />
            <span>{word}</span>
          </label>
        ))}
      </fieldset>
      <p class="hand-over-told" id={`${id}-told`}>
        <strong>{title}</strong>: for {usedFor}.
      </p>
    </>
  );
}
