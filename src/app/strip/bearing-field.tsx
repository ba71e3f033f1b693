import { formatQuantity, parseQuantity } from "../../core/units.ts";
import { turnRows } from "../commands/turn-rows.ts";
import { useStore } from "../store-context.ts";
import { BearingNote } from "./bearing-note.tsx";
import { Field } from "./field.tsx";

/** The bearing as degrees from true north, with what a compass would read. */
export function BearingField() {
  const store = useStore();
  const planned = store.shownPlan.value?.rows?.blocks.find(({ block }) => block === store.blockId.value);
  const choice = store.block.value?.rows.bearing;
  if (!choice) return null;
  const shown = planned ? formatQuantity("angle", planned.bearing_deg, store.units.value) : "";
  const hints = {
    given: "from true north",
    edge: choice.kind === "edge" && choice.edge === "longest" ? "along the longest edge" : "along an edge",
    best: "the best of the chart",
  };
  const apply = (typed: string, joins: string) => {
    const parsed = parseQuantity("angle", typed);
    return parsed.ok ? turnRows(store, parsed.value, joins) : `“${typed}” was not understood: ${parsed.reason}.`;
  };
  return (
    <>
      <Field label="Bearing" shown={shown} apply={apply} hint={hints[choice.kind]} />
      <BearingNote />
    </>
  );
}
