import { formatQuantity, parseQuantity } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { withShownUnit } from "../typed-quantity.ts";
import { Field } from "./field.tsx";

/** The lengths that posts or stakes are sold in, one after another with commas between. */
export function PostLengthsField({
  label,
  lengths_m,
  path,
}: {
  readonly label: string;
  readonly lengths_m: readonly number[];
  readonly path: string;
}) {
  const store = useStore();
  const units = store.units.value;
  const written = (length_m: number) => formatQuantity("length", length_m, units);
  const apply = (typed: string, joins: string) => {
    const meant = typed
      .split(/[,;]/)
      .filter((each) => each.trim() !== "")
      .map((each) => withShownUnit(each, "length", lengths_m[0] ?? 1, units));
    if (meant.length === 0) return "at least one length is wanted.";
    for (const each of meant) {
      const parsed = parseQuantity("length", each);
      if (!parsed.ok) return `“${each}” was not understood: ${parsed.reason}.`;
    }
    return changeSetting(store, path, meant, { name: `${label} ${meant.join(", ")}`, joins });
  };
  return <Field label={label} shown={lengths_m.map(written).join(", ")} apply={apply} />;
}
