import type { SetBorder, SetSettings, ValvePattern } from "../../core/project/water-settings.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "../strip/choice-field.tsx";
import { count } from "../strip/count.ts";
import { Field } from "../strip/field.tsx";
import { OptionalQuantityField } from "../strip/optional-quantity-field.tsx";
import { StagePart } from "../strip/stage-part.tsx";
import { likeOf } from "./like.ts";
import { SetPins } from "./set-pins.tsx";

export const patternNames: Readonly<Record<ValvePattern, string>> = {
  "cock-a-row": "a cock on each row",
  "valve-a-set": "a valve for each set",
  "valves-at-source": "valves at the source",
};

const patternChoices = (["cock-a-row", "valve-a-set", "valves-at-source"] as const).map((value) => ({
  value,
  label: patternNames[value],
}));

const borderChoices: readonly { readonly value: SetBorder; readonly label: string }[] = [
  { value: "rows", label: "anywhere between rows" },
  { value: "blocks", label: "never across blocks" },
  { value: "varieties", label: "never across varieties" },
];

const controlChoices = [
  { value: "hand", label: "by hand" },
  { value: "controller", label: "by a controller and wires" },
] as const;

/** Which rows run together, and what opens them. */
export function SetFields({ sets }: { readonly sets: SetSettings }) {
  const like = likeOf(useStore().units.value);
  const told = `${patternNames[sets.pattern]}, ${sets.count === null ? "as few sets as the water feeds" : count(sets.count, "set")}`;
  return (
    <StagePart name="Sets and valves" told={told}>
      <div class="fields">
        <ChoiceField label="Valves" value={sets.pattern} path="sets.pattern" choices={patternChoices} />
        <SetCount wanted={sets.count} />
        <ChoiceField label="Sets part" value={sets.follow} path="sets.follow" choices={borderChoices} />
        <ChoiceField label="Opened" value={sets.control} path="sets.control" choices={controlChoices} />
        <OptionalQuantityField
          label={
            sets.pattern === "cock-a-row"
              ? "Regulator at each cock, lets through"
              : "Regulator at each set, lets through"
          }
          kind="pressure"
          value={sets.regulator_kpa}
          like={like.pressure_kpa}
          path="sets.regulator"
          without="none"
        />
      </div>
      <SetPins pins={sets.pins} />
    </StagePart>
  );
}

function SetCount({ wanted }: { readonly wanted: number | null }) {
  const store = useStore();
  const label = "Sets";
  const apply = (typed: string, joins: string) => {
    const bare = typed.trim();
    if (bare === "") return changeSetting(store, "sets.count", null, { name: "As few sets as the water feeds", joins });
    if (!/^\d{1,3}$/.test(bare)) return `“${typed}” was not understood: a whole number is wanted.`;
    return changeSetting(store, "sets.count", Number(bare), { name: count(Number(bare), "set"), joins });
  };
  return (
    <Field
      label={label}
      shown={wanted === null ? "" : String(wanted)}
      apply={apply}
      {...(wanted === null && { hint: "empty: as few as the water feeds" })}
    />
  );
}
