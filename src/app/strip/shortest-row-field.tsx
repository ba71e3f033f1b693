import { formatQuantity, parseQuantity } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { withShownUnit } from "../typed-quantity.ts";
import { count } from "./count.ts";
import { Field } from "./field.tsx";

/** The shortest row worth planting, as a length or in vines. */
export function ShortestRowField() {
  const store = useStore();
  const shortest = store.block.value?.rows.minRow;
  if (!shortest) return null;
  const units = store.units.value;
  const shown =
    shortest.kind === "vines" ? count(shortest.vines, "vine") : formatQuantity("length", shortest.length_m, units);
  const apply = (typed: string, joins: string) => {
    const named = (value: string) => ({ name: `Shortest row ${value}`, joins });
    const vines = /^\s*(\d+)\s*vines?\s*$/i.exec(typed)?.[1];
    if (vines !== undefined) {
      return changeSetting(store, "rows.minRow", { vines: Number(vines) }, named(count(Number(vines), "vine")));
    }
    const meant = withShownUnit(typed, "length", shortest.kind === "length" ? shortest.length_m : 1, units);
    const parsed = parseQuantity("length", meant);
    if (!parsed.ok) return `“${typed}” was not understood: ${parsed.reason}.`;
    return changeSetting(store, "rows.minRow", meant, named(formatQuantity("length", parsed.value, units)));
  };
  return <Field label="Shortest row" shown={shown} apply={apply} hint="a length, or “10 vines”" />;
}
