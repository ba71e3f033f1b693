import type { WaterSettings } from "../../core/project/water-settings.ts";
import { useStore } from "../store-context.ts";
import { OptionalQuantityField } from "../strip/optional-quantity-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { StagePart } from "../strip/stage-part.tsx";
import { likeOf } from "./like.ts";
import { LimitField } from "./limit-field.tsx";
import { PressureUnits } from "./pressure-units.tsx";

/** Who else takes of the water, what comes back, what is kept in reserve, where the gauge stands. */
export function MoreWaterFields({ water }: { readonly water: WaterSettings }) {
  const like = likeOf(useStore().units.value);
  return (
    <StagePart name="More of the water" told="other users, storage, reserve">
      <div class="fields">
        <QuantityField
          label="Others take at the same time"
          kind="flow"
          value={water.others_lph}
          path="water.others"
          hint="house, stock, a spray tank being filled"
        />
        <QuantityField
          label="Flow kept in reserve"
          kind="ratio"
          value={water.margin_ratio}
          path="water.margin"
          hint="not counted on: wells fall, filters clog"
        />
        {water.kind !== "town" && <LimitField water={water} />}
        <OptionalQuantityField
          label="Comes back in the long run"
          kind="flow"
          value={water.recovery_lph}
          like={like.flow_lph}
          path="water.recovery"
          without="a well's recovery is not known"
        />
        <OptionalQuantityField
          label="Stored, or standing in the well"
          kind="volume"
          value={water.stored_l}
          like={100 * like.volume_l}
          path="water.stored"
          without="none"
        />
        <OptionalQuantityField
          label="Height of the gauge"
          kind="length"
          value={water.height_m}
          like={like.length_m}
          path="water.height"
          without="as the ground at the source"
        />
        <QuantityField
          label="Water, how warm at most"
          kind="temperature"
          value={water.temperature_c}
          path="water.temperature"
          hint="warm pipe stands less pressure"
        />
        <QuantityField label="A valve closes within" kind="time" value={water.closing_h} path="water.closing" />
        <PressureUnits />
      </div>
    </StagePart>
  );
}
