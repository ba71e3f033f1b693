import type { WaterSettings } from "../../core/project/water-settings.ts";
import { useStore } from "../store-context.ts";
import { OptionalQuantityField } from "../strip/optional-quantity-field.tsx";
import { likeOf } from "./like.ts";

/** The most that whoever gives the water allows. */
export function LimitField({ water }: { readonly water: WaterSettings }) {
  return (
    <OptionalQuantityField
      label="Most that may be taken"
      kind="flow"
      value={water.limitFlow_lph}
      like={likeOf(useStore().units.value).flow_lph}
      path="water.limitFlow"
      without="no limit is stated"
    />
  );
}
