import { useState } from "preact/hooks";
import type { Wire } from "../../core/project/project.ts";
import type { HungWire } from "../../core/trellis/trellis.ts";
import { formatQuantity } from "../../core/units.ts";
import { addWire, changeWire, removeWire } from "../commands/change-wires.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "./choice-field.tsx";
import { CountField } from "./count-field.tsx";
import { QuantityField } from "./quantity-field.tsx";
import { tieOffNames, WireDetails } from "./wire-details.tsx";

const purposes = [
  { value: "fruiting", label: "fruiting" },
  { value: "drip", label: "drip" },
  { value: "foliage", label: "foliage" },
] as const;

/** The wires of the shown block, one under another: what for, how high, how thick, how many. */
export function WireTable() {
  const store = useStore();
  const wires = store.block.value?.trellis.wires ?? [];
  const hung = store.shownPlan.value?.trellis?.blocks.find(({ block }) => block === store.blockId.value)?.wires;
  return (
    <>
      <table class="wires">
        <caption class="unseen">Wires</caption>
        <thead>
          <tr>
            <th scope="col">Wire for</th>
            <th scope="col">How high</th>
            <th scope="col">How thick</th>
            <th scope="col">How many</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {wires.map((wire, at) => (
            // A wire has no name of its own; its place in the list is what the file knows it by.
            <WireLine key={`${at} of ${wires.length}`} wire={wire} hung={hung?.[at]} at={at} />
          ))}
        </tbody>
      </table>
      <button type="button" class="quiet-button" onClick={() => addWire(store)}>
        Add a wire
      </button>
    </>
  );
}

function WireLine({
  wire,
  hung,
  at,
}: {
  readonly wire: Wire;
  readonly hung: HungWire | undefined;
  readonly at: number;
}) {
  const store = useStore();
  const [isOpen, setOpen] = useState(false);
  const tension = formatQuantity("force", wire.tension_n, store.units.value);
  const ends = `${tieOffNames[wire.tieOffStart.kind]} to ${tieOffNames[wire.tieOffEnd.kind]}`;
  const of = (what: string) => `Wire ${at + 1} ${what}`;
  return (
    <>
      <tr>
        <td>
          <ChoiceField
            label={of("purpose")}
            value={wire.purpose}
            path=""
            choices={purposes}
            isCompact
            change={(chosen, step) => changeWire(store, at, "purpose", chosen, step)}
          />
        </td>
        <td>
          <QuantityField
            label={of("height")}
            kind="length"
            value={wire.height_m}
            path=""
            isCompact
            change={(meant, step) => changeWire(store, at, "height", meant, step)}
          />
        </td>
        <td>
          <QuantityField
            label={of("thickness")}
            kind="diameter"
            value={wire.diameter_mm}
            path=""
            isCompact
            change={(meant, step) => changeWire(store, at, "diameter", meant, step)}
          />
        </td>
        <td>
          <CountField
            label={of("number")}
            value={wire.count}
            path=""
            isCompact
            change={(count, step) => changeWire(store, at, "count", count, step)}
          />
        </td>
        <td>
          <button
            type="button"
            class="quiet-button"
            aria-label={`Take out wire ${at + 1}, ${wire.purpose}`}
            title="Take out"
            onClick={() => removeWire(store, at)}
          >
            ×
          </button>
        </td>
      </tr>
      <tr class="wire-more">
        <td colSpan={5}>
          <details open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
            <summary>
              <span class="unseen">Wire {at + 1}: </span>
              {tension}, {ends}
              {wire.isMovable && ", movable"}
            </summary>
            {isOpen && <WireDetails wire={wire} hung={hung} at={at} />}
          </details>
        </td>
      </tr>
    </>
  );
}
