import type { HandOverChoice } from "../../core/exchange/choice.ts";
import { chosenBaseline } from "../../core/exchange/chosen-baseline.ts";
import type { Plan } from "../../core/plan.ts";
import { useStore } from "../store-context.ts";
import { firstError } from "./beside-fields.ts";
import { chooseForAll, handOverChoicesOf } from "./hand-over-choices.ts";
import { TextChoice } from "./text-choice.tsx";

/** A line that stations and offsets are measured from as well: from one mark to another, or along a row. */
export function BaselineChoice({ plan, choice }: { readonly plan: Plan; readonly choice: HandOverChoice }) {
  const store = useStore();
  const choices = handOverChoicesOf(store);
  const line = chosenBaseline(plan, choice.baseline);
  const isUsed = choice.baseline !== null && line.ok;
  return (
    <TextChoice
      label="Measured also from"
      value={choice.baseline ?? ""}
      usual="no line"
      hint={isUsed ? "station along it, offset to its right" : exampleOf(plan)}
      refusal={line.ok ? null : firstError(line.findings, store.units.value)}
      take={(typed) => {
        chooseForAll(choices, { baseline: typed.trim() === "" ? null : typed });
        return null;
      }}
    />
  );
}

/** Two marks of the plan, else its first row. */
function exampleOf({ project, rows }: Plan): string | undefined {
  const [from, to] = project.marks.flatMap(({ name }) => (name === null ? [] : [name]));
  if (from !== undefined && to !== undefined) return `such as ${from}, ${to}`;
  const [first] = rows?.rows ?? [];
  return first === undefined ? undefined : `such as row ${first.id}`;
}
