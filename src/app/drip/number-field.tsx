import type { Finding } from "../../core/finding.ts";
import { changeSetting } from "../commands/change-setting.ts";
import type { StepName } from "../commands/edit.ts";
import { useStore } from "../store-context.ts";
import { Field } from "../strip/field.tsx";

interface NumberFieldProps {
  readonly label: string;
  readonly value: number;
  readonly path: string;
  readonly hint?: string;
  readonly change?: (value: number, step: StepName) => readonly Finding[];
}

/** A field for a number without a unit: an exponent, a coefficient, a month. */
export function NumberField({ label, value, path, change, ...rest }: NumberFieldProps) {
  const store = useStore();
  const apply = (typed: string, joins: string) => {
    const bare = typed.trim().replace(",", ".");
    if (!/^-?(\d+\.?\d*|\.\d+)$/.test(bare)) return `“${typed}” was not understood: a number is wanted.`;
    const step = { name: `${label} ${bare}`, joins };
    return change ? change(Number(bare), step) : changeSetting(store, path, Number(bare), step);
  };
  return <Field label={label} shown={String(Number(value.toFixed(4)))} apply={apply} {...rest} />;
}
