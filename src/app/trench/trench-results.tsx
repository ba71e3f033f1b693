import type { Plan } from "../../core/plan.ts";
import {
  cutAccount,
  dailyAccount,
  depthAccount,
  dugLengthAccount,
  fittingsAccount,
  fittingsOf,
  heapAccount,
  hoursAccount,
  looseAccount,
  surplusAccount,
} from "../../core/trench/accounts.ts";
import type { Range, Trench } from "../../core/trench/trench.ts";
import { formatQuantity, type QuantityKind } from "../../core/units.ts";
import { useStore } from "../store-context.ts";
import { grouped } from "../strip/count.ts";
import { FigureList } from "../strip/figure-list.tsx";
import { LowPoints } from "./low-points.tsx";

/** What the trench comes to: its length and depths, the earth, the hours, where water gathers. */
export function TrenchResults({ plan }: { readonly plan: Plan }) {
  const { trench } = plan;
  if (trench === null) return <p class="aside">The trench is worked out once the main line is laid.</p>;
  return (
    <>
      <TrenchFigures plan={plan} trench={trench} />
      <LowPoints plan={plan} trench={trench} />
    </>
  );
}

function TrenchFigures({ plan: { project }, trench }: { readonly plan: Plan; readonly trench: Trench }) {
  const units = useStore().units.value;
  const { earth, parts } = trench;
  const { trench: settings } = project;
  const written = (kind: QuantityKind, value: number) => formatQuantity(kind, value, units);
  const range = (kind: QuantityKind, [least, most]: Range) =>
    written(kind, least) === written(kind, most)
      ? written(kind, least)
      : `${written(kind, least)} to ${written(kind, most)}`;
  const fittings = fittingsOf(parts).reduce((sum, { quantity }) => sum + quantity, 0);
  return (
    <FigureList
      lines={[
        {
          name: "Trench",
          how: "on the level, to every row",
          value: written("length", earth.dug_m),
          account: () => dugLengthAccount(trench),
        },
        { name: "Depth", value: range("length", depthsOf(trench)), account: () => depthAccount(trench, settings) },
        {
          name: "Cut",
          how: "as it lies",
          value: written("earth", earth.cut_m3),
          account: () => cutAccount(earth, settings),
        },
        {
          name: "Loose",
          how: "as it is thrown out",
          value: written("earth", earth.loose_m3),
          account: () => looseAccount(earth),
        },
        {
          name: "Heap beside it",
          how: "its height",
          value: written("length", earth.heapHeight_m),
          account: () => heapAccount(earth),
        },
        {
          name: "Left over",
          how: "as it lies",
          value: written("earth", earth.surplus_m3),
          account: () => surplusAccount(earth),
        },
        {
          name: "Hours",
          how: "by the clock",
          value: range("time", earth.hours_h),
          account: () => hoursAccount(earth, settings),
        },
        {
          name: "To open in a day",
          how: "dug, piped, tested and half filled before rain",
          value: range("length", earth.daily_m),
          account: () => dailyAccount(earth, settings),
        },
        { name: "Fittings", how: "in Materials", value: grouped(fittings), account: () => fittingsAccount(parts) },
      ]}
    />
  );
}

/** The least depth and the most, over all branches. */
function depthsOf({ profiles, earth }: Trench): Range {
  const least = profiles.reduce((low, { depth_m }) => depth_m.reduce((a, b) => Math.min(a, b), low), Infinity);
  return [Number.isFinite(least) ? least : earth.deepest_m, earth.deepest_m];
}
