import type { HandOverChoice } from "../../core/exchange/choice.ts";
import { formatNamed } from "../../core/exchange/formats.ts";
import type { Plan } from "../../core/plan.ts";
import { choiceOf, type HandOverChoices } from "./hand-over-choices.ts";
import { systemsHere } from "./systems-here.ts";
import type { CountedThing } from "./things.ts";

/**
 * The choice as it is handed on for a plan: of what is ticked only what the plan has and the format holds (the rest stands greyed in the
 * list), and a system where the format takes no degrees.
 */
export function choiceFor(choices: HandOverChoices, plan: Plan, things: readonly CountedThing[]): HandOverChoice {
  const choice = choiceOf(choices);
  const { holds, places } = formatNamed(choice.as);
  const [here] = systemsHere(plan);
  const usual = places === "chosen, no degrees" ? (here ? `EPSG:${here.code}` : "local") : null;
  return {
    ...choice,
    of: things.flatMap(({ thing, count }) =>
      count !== 0 && holds.includes(thing) && choice.of.includes(thing) ? [thing] : [],
    ),
    system: places === "degrees" ? null : (choice.system ?? usual),
  };
}
