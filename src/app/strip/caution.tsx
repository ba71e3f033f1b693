import { cautions, words } from "../words.ts";

/** What every builder must have read, folded away but never missing. */
export function Caution() {
  return (
    <details class="caution">
      <summary>{words.caution}</summary>
      <ul>
        {cautions.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </details>
  );
}
