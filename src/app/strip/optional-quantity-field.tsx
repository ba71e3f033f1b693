import type { Finding } from "../../core/finding.ts";
import type { Json } from "../../core/project/project.ts";
import { formatQuantity, parseQuantity, type QuantityKind } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import type { StepName } from "../commands/edit.ts";
import { useStore } from "../store-context.ts";
import { withShownUnit } from "../typed-quantity.ts";
import { Field } from "./field.tsx";

interface OptionalQuantityFieldProps {
  readonly label: string;
  readonly kind: QuantityKind;
  /** What is stated, SI; null when nothing is. */
  readonly value: number | null;
  /** A number alone takes the unit that this one is shown in. */
  readonly like: number;
  readonly path: string;
  /** What holds while nothing is stated. */
  readonly without: string;
  readonly isCompact?: boolean;
  readonly change?: (meant: Json, step: StepName) => readonly Finding[];
}

/** A field for a quantity that may be left empty. */
export function OptionalQuantityField(props: OptionalQuantityFieldProps) {
  const { label, kind, value, like, path, without, isCompact = false, change } = props;
  const store = useStore();
  const units = store.units.value;
  const write = (meant: Json, step: StepName) =>
    change ? change(meant, step) : changeSetting(store, path, meant, step);
  const apply = (typed: string, joins: string) => {
    if (typed.trim() === "") return write(null, { name: `${label} left open`, joins });
    const meant = withShownUnit(typed, kind, value ?? like, units);
    const parsed = parseQuantity(kind, meant);
    if (!parsed.ok) return `“${typed}” was not understood: ${parsed.reason}.`;
    return write(meant, { name: `${label} ${formatQuantity(kind, parsed.value, units)}`, joins });
  };
  const shown = value === null ? "" : formatQuantity(kind, value, units);
  const hint = value === null && !isCompact ? { hint: `empty: ${without}` } : {};
  return <Field label={label} shown={shown} apply={apply} isCompact={isCompact} {...hint} />;
}
