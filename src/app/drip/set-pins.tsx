import { useId, useState } from "preact/hooks";
import type { JsonObject } from "../../core/project/project.ts";
import { rowNumbers, rowNumbersWanted } from "../../core/project/row-numbers.ts";
import type { SetPin } from "../../core/project/water-settings.ts";
import { text } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import type { Store } from "../store.ts";
import { useStore } from "../store-context.ts";
import { listAsWritten } from "./written-list.ts";

/** Rows that the person puts in a set; the others are shared out. */
export function SetPins({ pins }: { readonly pins: readonly SetPin[] }) {
  const store = useStore();
  const takeOut = (at: number): void => {
    const left = asWritten(store, pins).filter((_, i) => i !== at);
    changeSetting(store, "sets.pins", left.length === 0 ? null : left, { name: "Leave a set to the water" });
  };
  return (
    <section aria-label="Rows whose set is settled">
      <h4>Rows whose set is settled</h4>
      {pins.length === 0 && <p class="aside">None: rows are shared out so that every set takes about the same.</p>}
      {pins.length > 0 && (
        <ul class="set-pins">
          {pins.map((pin, at) => (
            // A pin has no name of its own; its place in the list is what the file knows it by.
            <li key={`${at} of ${pins.length}`}>
              <span>{pinText(pin)}</span>
              <button
                type="button"
                class="quiet-button"
                aria-label={`Leave the set of ${pinText(pin)} open`}
                title="Leave it open"
                onClick={() => takeOut(at)}
              >
                ×
              </button>
            </li>
          ))}
        </ul>
      )}
      <AddPin pins={pins} />
    </section>
  );
}

function AddPin({ pins }: { readonly pins: readonly SetPin[] }) {
  const store = useStore();
  const [rows, setRows] = useState("");
  const [set, setSet] = useState("");
  const [refusal, setRefusal] = useState<string | null>(null);
  const id = useId();
  const blocks = store.shownPlan.value?.project.blocks ?? [];
  const ofBlock = blocks.length > 1 ? blocks.find((block) => block.id === store.blockId.value) : undefined;
  const attempt = (): string | null => {
    const numbers = rowNumbers(rows);
    if (numbers === null) return `“${rows}” was not understood: ${rowNumbersWanted}.`;
    if (!/^[1-9]\d{0,2}$/.test(set.trim())) return "Which set? Its number is wanted, from 1.";
    const { fromRow, toRow } = numbers;
    const pin = {
      ...(ofBlock && { block: ofBlock.id }),
      rows: fromRow === toRow ? String(fromRow) : `${fromRow}-${toRow}`,
      set: Number(set),
    };
    const first = changeSetting(store, "sets.pins", [pin, ...asWritten(store, pins)], {
      name: `Rows ${pin.rows} in set ${pin.set}`,
    })[0];
    return first ? text(first.message, store.units.value) : null;
  };
  return (
    <form
      class="add-set-pin"
      onSubmit={(event) => {
        event.preventDefault();
        if (rows.trim() === "") return;
        const refused = attempt();
        setRefusal(refused);
        if (refused === null) setRows("");
      }}
    >
      <label for={`${id}-rows`}>Rows{ofBlock === undefined ? "" : ` of ${ofBlock.name}`}</label>
      <input
        id={`${id}-rows`}
        class="entry-input"
        type="text"
        autocomplete="off"
        spellcheck={false}
        placeholder="1-12"
        value={rows}
        aria-describedby={refusal === null ? undefined : `${id}-refusal`}
        onInput={(event) => setRows(event.currentTarget.value)}
      />
      <label for={`${id}-set`}>in set</label>
      <input
        id={`${id}-set`}
        class="entry-input"
        type="text"
        inputMode="numeric"
        autocomplete="off"
        placeholder="1"
        value={set}
        onInput={(event) => setSet(event.currentTarget.value)}
      />
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

function pinText({ block, fromRow, toRow, set }: SetPin): string {
  const rows = fromRow === toRow ? `row ${fromRow}` : `rows ${fromRow} to ${toRow}`;
  return `${rows}${block === null ? "" : ` of block ${block}`} in set ${set}`;
}

function asWritten(store: Store, pins: readonly SetPin[]): readonly JsonObject[] {
  return listAsWritten(
    store,
    "sets.pins",
    pins.map(({ block, fromRow, toRow, set }) => ({
      ...(block !== null && { block }),
      rows: `${fromRow}-${toRow}`,
      set,
    })),
  );
}
