import type { HandOverChoice } from "../../core/exchange/choice.ts";
import type { Format } from "../../core/exchange/format.ts";
import type { Plan } from "../../core/plan.ts";
import { formatQuantity, parseQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { withShownUnit } from "../typed-quantity.ts";
import { BaselineChoice } from "./baseline-choice.tsx";
import { chooseForAll, chooseForFormat, handOverChoicesOf } from "./hand-over-choices.ts";
import { PickChoice } from "./pick-choice.tsx";
import { SystemChoice } from "./system-choice.tsx";
import { TextChoice } from "./text-choice.tsx";
import { YesChoice } from "./yes-choice.tsx";

interface PlaceChoiceProps {
  readonly plan: Plan;
  readonly format: Format;
  readonly choice: HandOverChoice;
}

const units = [
  { value: "m", label: "metres" },
  { value: "ft", label: "feet, 0.3048 m" },
  { value: "us-ft", label: "US survey feet" },
] as const;

const orders = [
  { value: "northing-first", label: "northing, easting" },
  { value: "easting-first", label: "easting, northing" },
] as const;

/** How places are written: system, unit, order, heights, a line to measure from, and how far out offset pegs stand; only what the format asks for. */
export function PlaceChoice({ plan, format, choice }: PlaceChoiceProps) {
  const store = useStore();
  const choices = handOverChoicesOf(store);
  const has = (what: Format["choices"][number]) => format.choices.includes(what);
  const shown = store.units.value;
  const isCounted = has("unit") && (!has("system") || choice.system === "local");
  return (
    <>
      {has("system") && <SystemChoice plan={plan} format={format} choice={choice} />}
      {isCounted && (
        <PickChoice
          label="Lengths in"
          value={choice.unit}
          choices={units}
          take={(value) => chooseForAll(choices, { unit: units.find((unit) => unit.value === value)?.value ?? "m" })}
        />
      )}
      {has("order") && (
        <PickChoice
          label="Order of numbers"
          value={choice.order}
          choices={orders}
          hint={`point, ${choice.order === "northing-first" ? "northing, easting" : "easting, northing"}, height, code`}
          take={(value) =>
            chooseForFormat(choices, {
              order: orders.find((order) => order.value === value)?.value ?? "northing-first",
            })
          }
        />
      )}
      {choice.of.includes("pegs") && format.holds.includes("pegs") && (
        <TextChoice
          label="Pegs beyond the anchor"
          value={formatQuantity("length", choice.pegBeyond_m, shown)}
          take={(typed) => {
            const parsed = parseQuantity("length", withShownUnit(typed, "length", choice.pegBeyond_m, shown));
            if (!parsed.ok) return `“${typed}” was not understood: ${parsed.reason}.`;
            if (parsed.value <= 0) return "A peg stands beyond the anchor, on the line of its row.";
            chooseForAll(choices, { pegBeyond_m: parsed.value });
            return null;
          }}
        />
      )}
      {has("baseline") && <BaselineChoice plan={plan} choice={choice} />}
      {has("heights") && plan.ground !== null && plan.ground.elevation.kind !== "flat" && (
        <YesChoice isOn={choice.heights} take={(heights) => chooseForAll(choices, { heights })}>
          Heights of the ground, where they are known
        </YesChoice>
      )}
      {has("together") && (
        <YesChoice isOn={choice.together} take={(together) => chooseForFormat(choices, { together })}>
          Everything in one file
        </YesChoice>
      )}
    </>
  );
}
