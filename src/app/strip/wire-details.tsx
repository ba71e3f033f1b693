import { coatings, type TieOffKind, tensileClasses, tieOffKinds, type Wire } from "../../core/project/project.ts";
import type { HungWire } from "../../core/trellis/trellis.ts";
import { formatQuantity } from "../../core/units.ts";
import { changeTieOff, changeWire } from "../commands/change-wires.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "./choice-field.tsx";
import { CountField } from "./count-field.tsx";
import { OptionalQuantityField } from "./optional-quantity-field.tsx";
import { QuantityField } from "./quantity-field.tsx";

export const tieOffNames: Readonly<Record<TieOffKind, string>> = {
  gripper: "wire gripper",
  loop: "wrapped loop",
  crimp: "crimped end",
};
export const tieOffChoices = tieOffKinds.map((value) => ({ value, label: tieOffNames[value] }));

const classNames: Readonly<Record<(typeof tensileClasses)[number], string>> = {
  unknown: "not known",
  "low-carbon": "low carbon",
  "grade-140": "high tensile, grade 140",
  "grade-180": "high tensile, grade 180",
  "grade-200": "high tensile, grade 200",
};
const classes = tensileClasses.map((value) => ({ value, label: classNames[value] }));

const coatingNames: Readonly<Record<(typeof coatings)[number], string>> = {
  unknown: "not known",
  bare: "bare",
  "class-1": "zinc, class 1",
  "class-3": "zinc, class 3",
};
const coats = coatings.map((value) => ({ value, label: coatingNames[value] }));

const hangs = [
  { value: "fixed", label: "stays where it is" },
  { value: "movable", label: "is lifted in the season" },
] as const;

/** What else there is to set of one wire: how it hangs, its steel, its pull, and how it ends. */
export function WireDetails({
  wire,
  hung,
  at,
}: {
  readonly wire: Wire;
  readonly hung: HungWire | undefined;
  readonly at: number;
}) {
  const store = useStore();
  const of = (what: string) => `Wire ${at + 1} ${what}`;
  const choose = (member: "tensile" | "coating") => (chosen: string, step: { readonly name: string }) =>
    changeWire(store, at, member, chosen, step);
  return (
    <div class="fields">
      <ChoiceField
        label={of("hangs")}
        value={wire.isMovable ? "movable" : "fixed"}
        path=""
        choices={hangs}
        change={(chosen, step) => changeWire(store, at, "movable", chosen === "movable", step)}
      />
      <ChoiceField label={of("steel")} value={wire.tensile} path="" choices={classes} change={choose("tensile")} />
      <ChoiceField label={of("coating")} value={wire.coating} path="" choices={coats} change={choose("coating")} />
      <QuantityField
        label={of("tension")}
        kind="force"
        value={wire.tension_n}
        path=""
        change={(meant, step) => changeWire(store, at, "tension", meant, step)}
      />
      <WireEnd wire={wire} at={at} end="tieOffStart" taken_m={hung?.tieOffStart_m} />
      <WireEnd wire={wire} at={at} end="tieOffEnd" taken_m={hung?.tieOffEnd_m} />
      <CountField
        label={of("in-line tensioners")}
        value={wire.tensioners}
        path=""
        change={(count, step) => changeWire(store, at, "tensioners", count, step)}
      />
    </div>
  );
}

function WireEnd({
  wire,
  at,
  end,
  taken_m,
}: {
  readonly wire: Wire;
  readonly at: number;
  readonly end: "tieOffStart" | "tieOffEnd";
  readonly taken_m: number | undefined;
}) {
  const store = useStore();
  const { kind, allowance_m } = wire[end];
  const where = end === "tieOffStart" ? "start" : "end";
  const usual =
    taken_m === undefined
      ? "what its kind takes"
      : `${formatQuantity("length", taken_m, store.units.value)}, what its kind takes`;
  return (
    <>
      <ChoiceField
        label={`Wire ${at + 1} at the ${where}`}
        value={kind}
        path=""
        choices={tieOffChoices}
        change={(chosen, step) => {
          const to = tieOffKinds.find((each) => each === chosen);
          return to === undefined ? [] : changeTieOff(store, at, end, { kind: to }, step);
        }}
      />
      <OptionalQuantityField
        label={`Wire ${at + 1} past the ${where} post`}
        kind="length"
        value={allowance_m}
        like={taken_m ?? 1}
        path=""
        without={usual}
        change={(meant, step) => changeTieOff(store, at, end, { allowance: meant }, step)}
      />
    </>
  );
}
