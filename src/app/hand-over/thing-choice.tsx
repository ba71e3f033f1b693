import type { Thing } from "../../core/exchange/choice.ts";
import { formatNamed } from "../../core/exchange/formats.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "../strip/count.ts";
import { choiceOf, chooseThing, handOverChoicesOf } from "./hand-over-choices.ts";
import { type CountedThing, thingNames } from "./things.ts";

/** What goes out: everything of the plan that the format holds, with how many of it there are. */
export function ThingChoice({ things }: { readonly things: readonly CountedThing[] }) {
  const choices = handOverChoicesOf(useStore());
  const choice = choiceOf(choices);
  const { holds } = formatNamed(choice.as);
  const present = things.filter(({ count }) => count !== 0);
  const fitting = present.filter(({ thing }) => holds.includes(thing));
  return (
    <fieldset class="hand-over-things">
      <legend>What goes out</legend>
      <ul>
        {fitting.map(({ thing, count }) => (
          <li key={thing}>
            <label>
              <input
                type="checkbox"
                checked={choice.of.includes(thing)}
                onChange={(event) => chooseThing(choices, thing, event.currentTarget.checked)}
              />
              <span>{thingNames[thing]}</span>
              {count !== null && <small>{grouped(count)}</small>}
            </label>
          </li>
        ))}
      </ul>
      <Left words="Not in this format" things={present.filter(({ thing }) => !holds.includes(thing))} />
      <Left
        words="Not in this plan"
        things={things.filter(({ thing, count }) => count === 0 && holds.includes(thing))}
      />
    </fieldset>
  );
}

function Left({ words, things }: { readonly words: string; readonly things: readonly CountedThing[] }) {
  if (things.length === 0) return null;
  return (
    <p class="aside">
      {words}: {things.map(({ thing }) => named(thing)).join(", ")}.
    </p>
  );
}

function named(thing: Thing): string {
  return thingNames[thing].toLowerCase();
}
