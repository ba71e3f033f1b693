import type { BarbSize, DripSettings, FrictionLawName } from "../../core/project/water-settings.ts";
import { formatQuantity } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "../strip/choice-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { StagePart } from "../strip/stage-part.tsx";
import { NumberField } from "./number-field.tsx";

const barbChoices: readonly { readonly value: BarbSize; readonly label: string }[] = [
  { value: "none", label: "not at all" },
  { value: "small", label: "a little" },
  { value: "standard", label: "as usual" },
  { value: "large", label: "far" },
];

export const lawChoices: readonly { readonly value: FrictionLawName; readonly label: string }[] = [
  { value: "darcy-weisbach", label: "Darcy-Weisbach" },
  { value: "hazen-williams", label: "Hazen-Williams" },
  { value: "epanet", label: "Darcy-Weisbach, EPANET’s" },
];

/** What the maker prints of emitter and hose. */
export function HoseFields({ drip }: { readonly drip: DripSettings }) {
  const units = useStore().units.value;
  const diameter = (value_mm: number) => formatQuantity("diameter", value_mm, units);
  const isCompensating = drip.emitterKind === "compensating";
  return (
    <StagePart
      name="Emitter and hose, as printed"
      told={`hose ${diameter(drip.hoseInside_mm)} inside, ${diameter(drip.hoseOutside_mm)} outside`}
    >
      <p class="aside">The same trade name has different bores: read yours off the print or ask the seller.</p>
      <div class="fields">
        <QuantityField
          label="Hose, inside diameter"
          kind="diameter"
          value={drip.hoseInside_mm}
          path="drip.hoseInside"
        />
        <QuantityField
          label="Hose, outside diameter"
          kind="diameter"
          value={drip.hoseOutside_mm}
          path="drip.hoseOutside"
        />
        <QuantityField label="Hose stands at most" kind="pressure" value={drip.hoseMost_kpa} path="drip.hoseMost" />
        <QuantityField
          label="Riser, inside diameter"
          kind="diameter"
          value={drip.riserInside_mm}
          path="drip.riserInside"
        />
        <QuantityField label="Hose past the last vine" kind="length" value={drip.overrun_m} path="drip.overrun" />
        <QuantityField
          label="Slack of the hose"
          kind="ratio"
          value={drip.slack_ratio}
          path="drip.slack"
          hint="it shrinks in the cold"
        />
        <QuantityField
          label="Emitter flow is given at"
          kind="pressure"
          value={drip.emitterPressure_kpa}
          path="drip.emitterPressure"
        />
        {isCompensating && (
          <QuantityField
            label="Emitter works from"
            kind="pressure"
            value={drip.emitterLeast_kpa}
            path="drip.emitterLeast"
          />
        )}
        <QuantityField
          label={isCompensating ? "Emitter works up to" : "Emitter stands at most"}
          kind="pressure"
          value={drip.emitterMost_kpa}
          path="drip.emitterMost"
        />
        <NumberField
          label="Flow exponent of the emitter"
          value={drip.emitterExponent}
          path="drip.emitterExponent"
          hint="0: the flow keeps; 0.5: it grows with the root of the pressure"
        />
        <QuantityField
          label="Emitters differ among themselves by"
          kind="ratio"
          value={drip.emitterVariation_ratio}
          path="drip.emitterVariation"
          hint="the maker’s coefficient of variation"
        />
        {drip.emitterPlacing === "on-line" && (
          <>
            <QuantityField
              label="Emitter from the trunk"
              kind="length"
              value={drip.emitterOffset_m}
              path="drip.emitterOffset"
            />
            <ChoiceField
              label="Its barb stands into the hose"
              value={drip.barb}
              path="drip.barb"
              choices={barbChoices}
            />
          </>
        )}
        <ChoiceField
          label="Friction in hose and riser by"
          value={drip.friction}
          path="drip.friction"
          choices={lawChoices}
        />
        {drip.friction === "hazen-williams" && (
          <NumberField label="C of the hose" value={drip.hoseRoughness} path="drip.hoseRoughness" />
        )}
      </div>
    </StagePart>
  );
}
