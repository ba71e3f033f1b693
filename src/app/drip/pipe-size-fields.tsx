import type { PipeFamily, PipeSizing, SetSettings } from "../../core/project/water-settings.ts";
import { formatQuantity, parseQuantity } from "../../core/units.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "../strip/choice-field.tsx";
import { Field } from "../strip/field.tsx";
import { StagePart } from "../strip/stage-part.tsx";
import { withShownUnit } from "../typed-quantity.ts";
import { lawChoices } from "./hose-fields.tsx";
import { NumberField } from "./number-field.tsx";

const sizingChoices: readonly { readonly value: PipeSizing; readonly label: string }[] = [
  { value: "chosen", label: "chosen at least cost" },
  { value: "as-set", label: "the Trench step’s pipe" },
];

const familyNames: Readonly<Record<PipeFamily, string>> = {
  "pvc-40": "PVC Schedule 40",
  "pvc-sdr21": "PVC SDR 21, Class 200",
  "pvc-sdr26": "PVC SDR 26, Class 160",
  "pvc-pn10": "PVC 10 bar",
  "pvc-pn6": "PVC 6 bar",
  "pe100-sdr17": "PE 100 SDR 17",
};

const familyChoices = (["pvc-40", "pvc-sdr21", "pvc-sdr26", "pvc-pn10", "pvc-pn6", "pe100-sdr17"] as const).map(
  (value) => ({ value, label: familyNames[value] }),
);

/** Whether pipe sizes are chosen, from which pipe, and how fast water may run in it. */
export function PipeSizeFields({ sets }: { readonly sets: SetSettings }) {
  const isChosen = sets.sizing === "chosen";
  return (
    <StagePart
      name="Pipe sizes"
      told={isChosen ? `${familyNames[sets.family]}, chosen at least cost` : "as the Trench step says"}
    >
      <div class="fields">
        <ChoiceField label="Sizes are" value={sets.sizing} path="sets.sizing" choices={sizingChoices} />
        {isChosen && <ChoiceField label="Pipe" value={sets.family} path="sets.family" choices={familyChoices} />}
        {isChosen && <MostVelocity velocity_mps={sets.mostVelocity_mps} />}
        <ChoiceField label="Friction in pipe by" value={sets.friction} path="sets.friction" choices={lawChoices} />
        {sets.friction === "hazen-williams" && (
          <NumberField label="C of the pipe" value={sets.roughness} path="sets.roughness" />
        )}
      </div>
      {isChosen && (
        <p class="aside">
          Chosen so that pipe costs least and every row gets its pressure; where the price list has not all sizes, by
          weight.
        </p>
      )}
    </StagePart>
  );
}

/** The file has it in m/s, a number alone. */
function MostVelocity({ velocity_mps }: { readonly velocity_mps: number }) {
  const store = useStore();
  const units = store.units.value;
  const label = "Water runs at most at";
  const apply = (typed: string, joins: string) => {
    const parsed = parseQuantity("speed", withShownUnit(typed, "speed", velocity_mps, units));
    if (!parsed.ok) return `“${typed}” was not understood: ${parsed.reason}.`;
    const step = { name: `${label} ${formatQuantity("speed", parsed.value, units)}`, joins };
    return changeSetting(store, "sets.mostVelocity", Math.round(parsed.value * 1e4) / 1e4, step);
  };
  return <Field label={label} shown={formatQuantity("speed", velocity_mps, units)} apply={apply} />;
}
