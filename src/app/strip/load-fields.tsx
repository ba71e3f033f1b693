import type { Block } from "../../core/project/project.ts";
import { useStore } from "../store-context.ts";
import { OptionalQuantityField } from "./optional-quantity-field.tsx";
import { QuantityField } from "./quantity-field.tsx";

/** What the wires carry and live through, and what the anchors are known to hold. */
export function LoadFields({ block: { trellis } }: { readonly block: Block }) {
  const isUs = useStore().units.value === "us";
  return (
    <div class="fields">
      <OptionalQuantityField
        label="Fruit on a vine at harvest"
        kind="mass"
        value={trellis.cropPerVine_kg}
        like={1}
        path="trellis.cropPerVine"
        without="not given, no fruit is reckoned with"
      />
      <QuantityField
        label="Wires are tightened at"
        kind="temperature"
        value={trellis.tensionedAt_c}
        path="trellis.tensionedAt"
      />
      <QuantityField
        label="Coldest they live through"
        kind="temperature"
        value={trellis.coldest_c}
        path="trellis.coldest"
      />
      <QuantityField
        label="Hottest they live through"
        kind="temperature"
        value={trellis.hottest_c}
        path="trellis.hottest"
      />
      <OptionalQuantityField
        label="One anchor holds"
        kind="force"
        value={trellis.anchorCapacity_n}
        like={isUs ? 4448 : 1000}
        path="trellis.anchorCapacity"
        without="not known: pull-test one"
      />
      <QuantityField
        label="Wires clear the ground by"
        kind="length"
        value={trellis.leastClearance_m}
        path="trellis.leastClearance"
      />
      <QuantityField
        label="Warn over this share of breaking"
        kind="ratio"
        value={trellis.warnShare_ratio}
        path="trellis.warnShare"
      />
      <QuantityField
        label="Never over this share"
        kind="ratio"
        value={trellis.mostShare_ratio}
        path="trellis.mostShare"
      />
    </div>
  );
}
