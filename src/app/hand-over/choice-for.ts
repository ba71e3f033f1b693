import { type HandOverChoice, usualChoice } from "../../core/exchange/choice.ts";
import { askedChoices, type Format } from "../../core/exchange/format.ts";
import { formatNamed } from "../../core/exchange/formats.ts";
import type { Plan } from "../../core/plan.ts";
import { choiceOf, type HandOverChoices } from "./hand-over-choices.ts";
import { systemsHere } from "./systems-here.ts";
import type { CountedThing } from "./things.ts";

/**
 * The choice as it is handed on for a plan: of what is ticked only what the plan has and the format holds (the rest stands greyed in the
 * list), a system where the format takes no degrees, and nothing that the format does not ask for.
 */
export function choiceFor(choices: HandOverChoices, plan: Plan, things: readonly CountedThing[]): HandOverChoice {
  const choice = choiceOf(choices);
  const format = formatNamed(choice.as);
  const { holds, places } = format;
  const [here] = systemsHere(plan);
  const usual = places === "chosen, no degrees" ? (here?.value ?? "local") : null;
  return {
    ...choice,
    ...unasked(format),
    of: things.flatMap(({ thing, count }) =>
      count !== 0 && holds.includes(thing) && choice.of.includes(thing) ? [thing] : [],
    ),
    system: format.choices.includes("system") ? (choice.system ?? usual) : null,
  };
}

/** What other formats were told stays with them. */
function unasked({ choices }: Format): Partial<HandOverChoice> {
  return Object.fromEntries(
    askedChoices.flatMap((each) => (choices.includes(each) ? [] : [[each, usualChoice[each]]])),
  );
}
