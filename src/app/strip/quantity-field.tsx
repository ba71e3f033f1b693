import { formatQuantity, parseQuantity, type QuantityKind } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { withShownUnit } from "../typed-quantity.ts";
import { Field } from "./field.tsx";

interface QuantityFieldProps {
  readonly label: string;
  readonly kind: QuantityKind;
  /** What is in force, SI. */
  readonly value: number;
  /** Where it stands in the project file. */
  readonly path: string;
  readonly hint?: string;
}

/** A field for one quantity of the project, in any unit of its kind. */
export function QuantityField({ label, kind, value, path, hint }: QuantityFieldProps) {
  const store = useStore();
  const units = store.units.value;
  const apply = (typed: string) => {
    const meant = withShownUnit(typed, kind, value, units);
    const parsed = parseQuantity(kind, meant);
    if (!parsed.ok) return `“${typed}” was not understood: ${parsed.reason}.`;
    return changeSetting(store, path, meant);
  };
  return <Field label={label} shown={formatQuantity(kind, value, units)} apply={apply} {...(hint ? { hint } : {})} />;
}
