import type { Finding } from "../../core/finding.ts";
import { changeSetting } from "../commands/change-setting.ts";
import type { StepName } from "../commands/edit.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "./count.ts";
import { Field } from "./field.tsx";

interface CountFieldProps {
  readonly label: string;
  readonly value: number;
  /** Where it stands in the project file. */
  readonly path: string;
  readonly hint?: string;
  readonly isCompact?: boolean;
  readonly change?: (count: number, step: StepName) => readonly Finding[];
}

/** A field for a whole number of the project. */
export function CountField({ label, value, path, change, ...rest }: CountFieldProps) {
  const store = useStore();
  const apply = (typed: string, joins: string) => {
    const bare = typed.trim().replace(/(?<=\d),(?=\d{3})/g, "");
    if (!/^\d{1,9}$/.test(bare)) return `“${typed}” was not understood: a whole number is wanted.`;
    const step = { name: `${label} ${grouped(Number(bare))}`, joins };
    return change ? change(Number(bare), step) : changeSetting(store, path, Number(bare), step);
  };
  return <Field label={label} shown={grouped(value)} apply={apply} {...rest} />;
}
