import type { HandOverChoice } from "../../core/exchange/choice.ts";
import type { Plan } from "../../core/plan.ts";
import { useStore } from "../store-context.ts";
import { chooseForAll, handOverChoicesOf } from "./hand-over-choices.ts";
import { TextChoice } from "./text-choice.tsx";

/** A line that stations and offsets are measured from as well: from one mark to another, or along a row. */
export function BaselineChoice({ plan, choice }: { readonly plan: Plan; readonly choice: HandOverChoice }) {
  const choices = handOverChoicesOf(useStore());
  const marks = plan.project.marks.map(({ name }) => name);
  const usual = marks.length > 1 ? "none, or two marks" : "none, or a row";
  return (
    <TextChoice
      label="Measured also from"
      value={choice.baseline ?? ""}
      usual={usual}
      hint={choice.baseline === null ? undefined : "station along it and offset to its right, for a tape"}
      take={(typed) => {
        chooseForAll(choices, { baseline: typed.trim() === "" ? null : typed.trim() });
        return null;
      }}
    />
  );
}
