import type { DripSettings, EmitterKind, EmitterPlacing } from "../../core/project/water-settings.ts";
import { BlockChoice } from "../strip/block-choice.tsx";
import { ChoiceField } from "../strip/choice-field.tsx";
import { CountField } from "../strip/count-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";

const kindChoices: readonly { readonly value: EmitterKind; readonly label: string }[] = [
  { value: "compensating", label: "pressure-compensating" },
  { value: "plain", label: "plain: flow by pressure" },
];

const placingChoices: readonly { readonly value: EmitterPlacing; readonly label: string }[] = [
  { value: "on-line", label: "punched in at each vine" },
  { value: "in-line", label: "in the hose, evenly" },
];

/** What each vine gets its water through. */
export function EmitterFields({ drip }: { readonly drip: DripSettings }) {
  const isOnLine = drip.emitterPlacing === "on-line";
  return (
    <section aria-label="Emitters">
      <h3>Emitters</h3>
      <BlockChoice />
      <div class="fields">
        <QuantityField label="Flow of one emitter" kind="flow" value={drip.emitterFlow_lph} path="drip.emitterFlow" />
        <ChoiceField
          label="Where they are"
          value={drip.emitterPlacing}
          path="drip.emitterPlacing"
          choices={placingChoices}
        />
        {isOnLine ? (
          <CountField label="Emitters at each vine" value={drip.emittersPerVine} path="drip.emittersPerVine" />
        ) : (
          <QuantityField
            label="From one to the next"
            kind="length"
            value={drip.emitterSpacing_m}
            path="drip.emitterSpacing"
          />
        )}
        <ChoiceField label="Kind" value={drip.emitterKind} path="drip.emitterKind" choices={kindChoices} />
        <QuantityField label="Evenness asked for" kind="ratio" value={drip.evenness_ratio} path="drip.evenness" />
      </div>
    </section>
  );
}
