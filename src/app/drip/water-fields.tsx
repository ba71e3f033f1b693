import type { WaterKind, WaterSettings } from "../../core/project/water-settings.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "../strip/choice-field.tsx";
import { OptionalQuantityField } from "../strip/optional-quantity-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { likeOf } from "./like.ts";
import { LimitField } from "./limit-field.tsx";
import { type QuantityColumn, QuantityList } from "./quantity-list.tsx";

const kindChoices: readonly { readonly value: WaterKind; readonly label: string }[] = [
  { value: "unknown", label: "not known yet" },
  { value: "measured", label: "measured: bucket, gauge" },
  { value: "pump", label: "a pump and its curve" },
  { value: "tank", label: "a tank or pond above" },
  { value: "town", label: "town or district supply" },
];

/** The water you have: how it is known, and what is known of it. */
export function WaterFields({ water }: { readonly water: WaterSettings }) {
  return (
    <section aria-label="The water you have">
      <h3>The water you have</h3>
      <div class="fields">
        <ChoiceField label="How it is known" value={water.kind} path="water.kind" choices={kindChoices} />
        <OfKind water={water} />
      </div>
      {(water.kind === "measured" || water.kind === "town") && <BucketTests water={water} />}
      {water.kind === "pump" && <PumpPoints water={water} />}
      {water.kind !== "unknown" && (
        <div class="fields">
          <QuantityField
            label="Hours a day there is water"
            kind="time"
            value={water.hoursADay_h}
            path="water.hoursADay"
          />
        </div>
      )}
    </section>
  );
}

function OfKind({ water }: { readonly water: WaterSettings }) {
  const like = likeOf(useStore().units.value);
  const limit = <LimitField water={water} />;
  const pressure = (
    <OptionalQuantityField
      label="Pressure with nothing flowing"
      kind="pressure"
      value={water.staticPressure_kpa}
      like={like.pressure_kpa}
      path="water.staticPressure"
      without="not read yet"
    />
  );
  switch (water.kind) {
    case "unknown":
      return (
        <p class="aside">
          A gauge, a bucket and a watch are enough to find out. Until then only what the vines need is shown.
        </p>
      );
    case "measured":
      return pressure;
    case "town":
      return (
        <>
          {pressure}
          {limit}
        </>
      );
    case "tank":
      return (
        <>
          <OptionalQuantityField
            label="Water surface above its outlet, at the lowest"
            kind="length"
            value={water.tankLevel_m}
            like={like.length_m}
            path="water.tankLevel"
            without="not known yet"
          />
          <p class="aside">Counted from the place of the water source on the map, where the main line begins.</p>
        </>
      );
    case "pump":
      return (
        <OptionalQuantityField
          label="Least it pumps without cutting out"
          kind="flow"
          value={water.leastFlow_lph}
          like={like.flow_lph}
          path="water.leastFlow"
          without="any flow"
        />
      );
  }
}

function BucketTests({ water: { tests } }: { readonly water: WaterSettings }) {
  const like = likeOf(useStore().units.value);
  const columns: readonly QuantityColumn[] = [
    { member: "volume", head: "Bucket", kind: "volume", like: like.volume_l },
    { member: "time", head: "Full after", kind: "time", like: 20 / 3600 },
    { member: "pressure", head: "Pressure", kind: "pressure", like: like.pressure_kpa, isOptional: true },
  ];
  return (
    <>
      <h4>Bucket tests</h4>
      <p class="aside">
        With a gauge at the outlet read the pressure with all shut. Then open, fill a bucket, count the seconds and read
        the gauge while it flows. Once more with the tap further open: two tests tell how the pressure falls.
      </p>
      <QuantityList
        name="bucket test"
        path="water.tests"
        columns={columns}
        entries={tests.map(({ volume_l, time_h, pressure_kpa }) => [volume_l, time_h, pressure_kpa])}
      />
    </>
  );
}

function PumpPoints({ water: { pump } }: { readonly water: WaterSettings }) {
  const like = likeOf(useStore().units.value);
  const columns: readonly QuantityColumn[] = [
    { member: "flow", head: "Flow", kind: "flow", like: like.flow_lph },
    { member: "pressure", head: "Pressure at it", kind: "pressure", like: like.pressure_kpa },
  ];
  return (
    <>
      <h4>Points of its curve</h4>
      <p class="aside">
        As the maker prints them, less the lift from the water up to the gauge. Three are better than one: nothing
        flowing, what you want, the most it gives.
      </p>
      <QuantityList
        name="pump point"
        path="water.pump"
        columns={columns}
        entries={pump.map(({ flow_lph, pressure_kpa }) => [flow_lph, pressure_kpa])}
      />
    </>
  );
}
