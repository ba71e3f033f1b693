import type { HandOverChoice, Thing } from "../../core/exchange/choice.ts";
import type { Plan } from "../../core/plan.ts";
import { useStore } from "../store-context.ts";
import { chooseForAll, handOverChoicesOf } from "./hand-over-choices.ts";
import { TextChoice } from "./text-choice.tsx";

const byRow: readonly Thing[] = ["rows", "vines", "stakes", "posts", "anchors", "pegs"];

/** Which rows go out, with what stands on them; only where something by rows does. */
export function RowsChoice({ plan, choice }: { readonly plan: Plan; readonly choice: HandOverChoice }) {
  const choices = handOverChoicesOf(useStore());
  if (!plan.rows || !choice.of.some((thing) => byRow.includes(thing))) return null;
  return (
    <TextChoice
      label="Which rows"
      value={choice.rows ?? ""}
      usual="all"
      hint={choice.rows === null ? undefined : "such as 1-10, 14a"}
      take={(typed) => {
        chooseForAll(choices, { rows: typed.trim() === "" ? null : typed.trim() });
        return null;
      }}
    />
  );
}
