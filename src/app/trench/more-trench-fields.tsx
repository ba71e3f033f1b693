import type { TrenchSettings } from "../../core/project/project.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { CountField } from "../strip/count-field.tsx";
import { Field } from "../strip/field.tsx";
import { More } from "../strip/more.tsx";
import { OptionalQuantityField } from "../strip/optional-quantity-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { PaceFields } from "./pace-fields.tsx";
import { OwnPipeFields } from "./pipe-fields.tsx";

/** What of the trench is set once and seldom touched: its shape, stations, paces, pressures, a pipe of one's own. */
export function MoreTrenchFields({ settings }: { readonly settings: TrenchSettings }) {
  const isUs = useStore().units.value === "us";
  return (
    <More>
      <OptionalQuantityField
        label="Width at the bottom"
        kind="length"
        value={settings.width_m}
        like={isUs ? 0.3048 : 0.3}
        path="trench.width"
        without="from the pipe and the tool"
      />
      <SideSlopeField ratio={settings.sideSlope_ratio} />
      <QuantityField label="Bedding under the pipe" kind="length" value={settings.bedding_m} path="trench.bedding" />
      <OptionalQuantityField
        label="Least fall of the bottom"
        kind="ratio"
        value={settings.grade_ratio}
        like={0.01}
        path="trench.grade"
        without="the bottom follows the ground at an even depth"
      />
      <OptionalQuantityField
        label="Loose soil takes more room by"
        kind="ratio"
        value={settings.swell_ratio}
        like={0.25}
        path="trench.swell"
        without="as the soil usually does"
      />
      <QuantityField
        label="Room the trencher takes to turn"
        kind="length"
        value={settings.turningRoom_m}
        path="trench.turningRoom"
      />
      <QuantityField label="A station every" kind="length" value={settings.stationStep_m} path="trench.stationStep" />
      <QuantityField
        label="Low points are drained from"
        kind="length"
        value={settings.leastLow_m}
        path="trench.leastLow"
      />
      <PaceFields settings={settings} />
      <QuantityField label="Hours worked a day" kind="time" value={settings.hoursADay_h} path="trench.hoursADay" />
      <CountField label="People" value={settings.people} path="trench.people" />
      <QuantityField
        label="Highest pressure, of test or work"
        kind="pressure"
        value={settings.testPressure_kpa}
        path="trench.testPressure"
      />
      <QuantityField
        label="Undisturbed soil bears"
        kind="pressure"
        value={settings.soilBearing_kpa}
        path="trench.soilBearing"
      />
      <OwnPipeFields pipe={settings.pipe} />
    </More>
  );
}

/** Horizontal over vertical: a number without a unit. */
function SideSlopeField({ ratio }: { readonly ratio: number }) {
  const store = useStore();
  const label = "Sides lean out, across to one down";
  const apply = (typed: string, joins: string) => {
    const slope = Number(
      typed
        .trim()
        .replace(",", ".")
        .replace(/\s*(?::|to)\s*1$/, ""),
    );
    if (typed.trim() === "" || !Number.isFinite(slope)) return `“${typed}” was not understood: a number is wanted.`;
    return changeSetting(store, "trench.sideSlope", slope, { name: `${label}: ${slope}`, joins });
  };
  return <Field label={label} shown={String(Number(ratio.toFixed(3)))} apply={apply} hint="0 stands upright" />;
}
