import type { Finding } from "../../core/finding.ts";
import { formatQuantity, parseQuantity, type QuantityKind } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import type { StepName } from "../commands/edit.ts";
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
  readonly isCompact?: boolean;
  /** Takes the value where the path alone is not enough. */
  readonly change?: (meant: string, step: StepName) => readonly Finding[];
}

/** A field for one quantity of the project, in any unit of its kind. */
export function QuantityField({ label, kind, value, path, change, ...rest }: QuantityFieldProps) {
  const store = useStore();
  const units = store.units.value;
  const apply = (typed: string, joins: string) => {
    const meant = withShownUnit(typed, kind, value, units);
    const parsed = parseQuantity(kind, meant);
    if (!parsed.ok) return `“${typed}” was not understood: ${parsed.reason}.`;
    const step = { name: `${label} ${formatQuantity(kind, parsed.value, units)}`, joins };
    return change ? change(meant, step) : changeSetting(store, path, meant, step);
  };
  return <Field label={label} shown={formatQuantity(kind, value, units)} apply={apply} {...rest} />;
}
