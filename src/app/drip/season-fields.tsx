import { useState } from "preact/hooks";
import { momentInWords } from "../../core/drip/season/months.ts";
import type { EvapotranspirationMethod, SeasonSettings } from "../../core/project/water-settings.ts";
import { changeSetting } from "../commands/change-setting.ts";
import { useStore } from "../store-context.ts";
import { ChoiceField } from "../strip/choice-field.tsx";
import { More } from "../strip/more.tsx";
import { OptionalQuantityField } from "../strip/optional-quantity-field.tsx";
import { QuantityField } from "../strip/quantity-field.tsx";
import { StagePart } from "../strip/stage-part.tsx";
import { likeOf } from "./like.ts";
import { type MonthColumn, MonthTable } from "./month-table.tsx";
import { NumberField } from "./number-field.tsx";
import { SoilField } from "./soil-field.tsx";

type Way = "entered" | "temperatures";

const wayChoices: readonly { readonly value: Way; readonly label: string }[] = [
  { value: "entered", label: "published for the place" },
  { value: "temperatures", label: "from its temperatures" },
];

const methodChoices: readonly { readonly value: EvapotranspirationMethod; readonly label: string }[] = [
  { value: "penman-monteith", label: "Penman-Monteith" },
  { value: "hargreaves", label: "Hargreaves" },
];

/** What a year asks of the water: weather by months, what vines take of it, what the soil keeps. */
export function SeasonFields({ season }: { readonly season: SeasonSettings }) {
  const units = useStore().units.value;
  const like = likeOf(units);
  const stated: Way | null =
    season.reference_mmpd !== null
      ? "entered"
      : season.lowest_c !== null || season.highest_c !== null
        ? "temperatures"
        : null;
  const [way, setWay] = useState<Way>(stated ?? "entered");
  const rain: MonthColumn = {
    path: "season.rain",
    head: "Rain in it",
    kind: "depth",
    like: like.depth_mm,
    values: season.rain_mm,
  };
  const columns: readonly MonthColumn[] =
    way === "entered"
      ? [
          {
            path: "season.reference",
            head: "ET₀ a day",
            kind: "depth",
            like: like.depth_mm,
            values: season.reference_mmpd,
          },
          rain,
        ]
      : [
          {
            path: "season.lowest",
            head: "Lowest",
            kind: "temperature",
            like: like.temperature_c,
            values: season.lowest_c,
          },
          {
            path: "season.highest",
            head: "Highest",
            kind: "temperature",
            like: like.temperature_c,
            values: season.highest_c,
          },
          rain,
        ];
  return (
    <StagePart name="The year" told={stated === null ? "weather not known yet" : "weather, vines and soil"}>
      <p class="aside">
        How much the air draws from a short green crop, reference evapotranspiration (ET₀), is published by weather
        services; without it, mean daily lowest and highest temperatures of each month will do.
      </p>
      <div class="fields">
        <ChoiceField
          label="Evapotranspiration"
          value={way}
          path=""
          choices={wayChoices}
          change={(chosen) => {
            setWay(chosen === "temperatures" ? "temperatures" : "entered");
            return [];
          }}
        />
        {way === "temperatures" && (
          <ChoiceField label="Worked out by" value={season.method} path="season.method" choices={methodChoices} />
        )}
      </div>
      {way === "temperatures" && season.reference_mmpd !== null && (
        <p class="aside">The published values are stated and go first; empty them to use temperatures.</p>
      )}
      <MonthTable name="The year by months" columns={columns} />
      <div class="fields">
        <QuantityField
          label="Of their full need vines get, usually"
          kind="ratio"
          value={season.usualShare_ratio}
          path="season.usualShare"
        />
        <QuantityField
          label="And at the peak"
          kind="ratio"
          value={season.peakShare_ratio}
          path="season.peakShare"
          hint="what the sets must be able to give"
        />
        <QuantityField
          label="Young vines need, of grown ones"
          kind="ratio"
          value={season.young_ratio}
          path="season.young"
        />
      </div>
      <SeasonDetails season={season} />
    </StagePart>
  );
}

function SeasonDetails({ season }: { readonly season: SeasonSettings }) {
  const store = useStore();
  const stages = ["Bud break", "Full leaf", "First colour", "Leaf fall"] as const;
  return (
    <More>
      {stages.map((name, s) => (
        <NumberField
          key={name}
          label={`${name}, month`}
          value={season.stages[s] ?? 1}
          path=""
          hint={momentInWords(season.stages[s] ?? 1)}
          change={(month, step) =>
            changeSetting(
              store,
              "season.stages",
              season.stages.map((each, i) => (i === s ? month : each)),
              step,
            )
          }
        />
      ))}
      <NumberField label="Crop coefficient at the start" value={season.cropStart} path="season.cropStart" />
      <NumberField label="Crop coefficient in full leaf" value={season.cropMid} path="season.cropMid" />
      <NumberField label="Crop coefficient at the end" value={season.cropEnd} path="season.cropEnd" />
      <OptionalQuantityField
        label="Ground shaded at noon in full leaf"
        kind="ratio"
        value={season.shaded_ratio}
        like={0.3}
        path="season.shaded"
        without="not measured; with it, the coefficient in full leaf follows"
      />
      <QuantityField
        label="Rain that reaches roots"
        kind="ratio"
        value={season.rainShare_ratio}
        path="season.rainShare"
      />
      <SoilField soil_mmpm={season.soil_mmpm} />
      <QuantityField label="Roots go down" kind="length" value={season.roots_m} path="season.roots" />
      <QuantityField
        label="Of that water used before watering"
        kind="ratio"
        value={season.depletion_ratio}
        path="season.depletion"
      />
      <QuantityField
        label="Extra, to wash salt down"
        kind="ratio"
        value={season.leaching_ratio}
        path="season.leaching"
      />
    </More>
  );
}
