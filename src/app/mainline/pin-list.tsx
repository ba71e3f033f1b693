import { useId, useState } from "preact/hooks";
import { isJsonObject, member } from "../../core/project/json-value.ts";
import type { Json, WaterPin } from "../../core/project/project.ts";
import { rowNumbers, rowNumbersWanted } from "../../core/project/row-numbers.ts";
import { text } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import type { Store } from "../store.ts";
import { useStore } from "../store-context.ts";

/** Rows whose end at the water is settled by the person; the others are left to the route. */
export function PinList({ pins }: { readonly pins: readonly WaterPin[] }) {
  const store = useStore();
  const takeOut = (at: number): void => {
    const left = pinsAsWritten(store).filter((_, i) => i !== at);
    changeSetting(store, "mainLine.pins", left.length === 0 ? null : left, { name: "Leave an end to the route" });
  };
  return (
    <section aria-label="Ends that are settled">
      <h3>Ends that are settled</h3>
      {pins.length === 0 && <p class="aside">None: for each group of rows the route takes the end that costs least.</p>}
      {pins.length > 0 && (
        <ul class="pin-list">
          {pins.map((pin, at) => (
            // A pin has no name of its own; its place in the list is what the file knows it by.
            <li key={`${at} of ${pins.length}`}>
              <span>{pinText(pin)}</span>
              <button
                type="button"
                class="quiet-button"
                aria-label={`Leave ${pinText(pin)} to the route`}
                title="Leave it to the route"
                onClick={() => takeOut(at)}
              >
                ×
              </button>
            </li>
          ))}
        </ul>
      )}
      <AddPin />
    </section>
  );
}

function AddPin() {
  const store = useStore();
  const [typed, setTyped] = useState("");
  const [end, setEnd] = useState<WaterPin["end"]>("start");
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();
  const blocks = store.shownPlan.value?.project.blocks ?? [];
  const attempt = (): string | null => {
    const numbers = rowNumbers(typed);
    if (numbers === null) return `“${typed}” was not understood: ${rowNumbersWanted}.`;
    const { fromRow, toRow } = numbers;
    const block = blocks.length > 1 && store.blockId.value !== null ? { block: store.blockId.value } : {};
    const pin = { ...block, rows: fromRow === toRow ? String(fromRow) : `${fromRow}-${toRow}`, end };
    // The first that fits a row counts: what is said last comes first.
    const first = changeSetting(store, "mainLine.pins", [pin, ...pinsAsWritten(store)], {
      name: `Rows ${pin.rows} meet the water at the ${end}`,
    })[0];
    return first ? text(first.message, store.units.value) : null;
  };
  const add = (): void => {
    if (typed.trim() === "") return;
    const refused = attempt();
    setRefusal(refused);
    if (refused === null) setTyped("");
  };
  const ofBlock = blocks.length > 1 ? blocks.find((block) => block.id === store.blockId.value)?.name : undefined;
  return (
    <form
      class="add-pin"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <label for={`${id}-rows`}>Rows{ofBlock === undefined ? "" : ` of ${ofBlock}`}</label>
      <input
        id={`${id}-rows`}
        type="text"
        autocomplete="off"
        spellcheck={false}
        placeholder="1-12"
        value={typed}
        aria-invalid={refusal !== null}
        aria-describedby={refusal === null ? undefined : `${id}-refusal`}
        onInput={(event) => setTyped(event.currentTarget.value)}
      />
      <label for={`${id}-end`} class="unseen">
        End that meets the water
      </label>
      <select
        id={`${id}-end`}
        value={end}
        onChange={(event) => setEnd(event.currentTarget.value === "end" ? "end" : "start")}
      >
        <option value="start">at the start</option>
        <option value="end">at the end</option>
      </select>
      <button type="submit" class="quiet-button">
        Settle
      </button>
      {refusal && (
        <span class="field-refusal" id={`${id}-refusal`} role="alert">
          {refusal}
        </span>
      )}
    </form>
  );
}

function pinText({ block, fromRow, toRow, end }: WaterPin): string {
  const rows = fromRow === toRow ? `row ${fromRow}` : `rows ${fromRow} to ${toRow}`;
  return `${rows}${block === null ? "" : ` of block ${block}`} at the ${end}`;
}

/** The pins as the file states them, so that what nobody knows stays in them. */
function pinsAsWritten(store: Store): readonly Json[] {
  const settings = store.project.peek()?.document.tautrow;
  const section = settings ? member(settings, "mainLine") : undefined;
  const pins = isJsonObject(section) ? member(section, "pins") : undefined;
  return Array.isArray(pins) ? pins : [];
}
