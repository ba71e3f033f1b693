import type { HandOverChoice, Thing } from "../../core/exchange/choice.ts";
import { chosenRows } from "../../core/exchange/chosen-rows.ts";
import type { Plan } from "../../core/plan.ts";
import { useStore } from "../store-context.ts";
import { count, grouped } from "../strip/count.ts";
import { firstError } from "./beside-fields.ts";
import { chooseForAll, handOverChoicesOf } from "./hand-over-choices.ts";
import { TextChoice } from "./text-choice.tsx";

const byRow: readonly Thing[] = ["rows", "vines", "stakes", "posts", "anchors", "pegs"];

/** Which rows go out, with what stands on them; only where something by rows does. */
export function RowsChoice({ plan, choice }: { readonly plan: Plan; readonly choice: HandOverChoice }) {
  const store = useStore();
  const choices = handOverChoicesOf(store);
  const all = plan.rows?.rows.length ?? 0;
  if (all === 0 || !choice.of.some((thing) => byRow.includes(thing))) return null;
  const chosen = chosenRows(plan, choice.rows);
  const hint =
    choice.rows === null || !chosen.ok
      ? "such as 1-10, 14a"
      : `${grouped(chosen.value?.size ?? all)} of ${count(all, "row")}`;
  return (
    <TextChoice
      label="Which rows"
      value={choice.rows ?? ""}
      usual="all"
      hint={hint}
      refusal={chosen.ok ? null : firstError(chosen.findings, store.units.value)}
      take={(typed) => {
        chooseForAll(choices, { rows: typed.trim() === "" ? null : typed });
        return null;
      }}
    />
  );
}
