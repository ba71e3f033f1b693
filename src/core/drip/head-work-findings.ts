import { type Finding, quantity, say, unplaced } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { HeadWork, WaterSettings } from "../project/water-settings.ts";
import { passHeadWorks } from "./head-works.ts";
import { headWorkNames } from "./water-words.ts";
import type { Supply } from "./watering.ts";

/**
 * What is odd or missing in the head works. Findings: `drip/dirty-below-clean`, `drip/no-filter`, `drip/head-works-take-all`,
 * `drip/idle-regulator`, `drip/injector-without-backflow`, `drip/shared-without-backflow`.
 */
export function headWorkFindings(water: WaterSettings, height_m: number, supply: Supply | null): readonly Finding[] {
  return [
    ...water.headWorks.flatMap(dirtyBelowClean),
    ...noFilter(water),
    ...takeAll(water, height_m, supply),
    ...idleRegulators(water, height_m, supply),
    ...backflow(water),
  ];
}

function dirtyBelowClean({ kind, loss_kpa, dirtyLoss_kpa }: HeadWork): readonly Finding[] {
  if (dirtyLoss_kpa >= loss_kpa) return [];
  return [
    unplaced(
      "drip/dirty-below-clean",
      "warning",
      say`The ${headWorkNames[kind]} is said to lose ${quantity("pressure", dirtyLoss_kpa)} dirty, less than the ${quantity("pressure", loss_kpa)} it loses clean.`,
      say`Dirt makes it lose more, never less. Until it is right the larger of the two counts for both.`,
      say`Suspected: the two are swapped, or one is in another unit. Take both from its maker's chart at your flow.`,
    ),
  ];
}

const has = ({ headWorks }: WaterSettings, kind: HeadWork["kind"]) => headWorks.some((each) => each.kind === kind);

function noFilter(water: WaterSettings): readonly Finding[] {
  if (water.kind === "unknown" || has(water, "filter")) return [];
  return [
    unplaced(
      "drip/no-filter",
      "warning",
      say`There is no filter in the head works.`,
      say`Sand, rust and algae clog emitters, from the far ends of the rows on, and nothing shows until vines suffer.`,
      say`Add a filter of the mesh that the emitter's maker asks for, town water too, with a gauge on both sides.`,
    ),
  ];
}

function takeAll({ headWorks }: WaterSettings, height_m: number, supply: Supply | null): readonly Finding[] {
  const start_m = supply?.dirty.head_m[0];
  const gauge_m = supply?.atGauge.head_m[0];
  if (start_m === undefined || gauge_m === undefined || start_m > height_m || gauge_m <= height_m) return [];
  const lost_kpa = headWorks.reduce((sum, { loss_kpa, dirtyLoss_kpa }) => sum + Math.max(loss_kpa, dirtyLoss_kpa), 0);
  return [
    unplaced(
      "drip/head-works-take-all",
      "warning",
      say`The head works lose up to ${quantity("pressure", lost_kpa)} with the filter dirty; at the gauge there is ${quantity("pressure", pressureOf_kpa(gauge_m - height_m))}.`,
      say`Nothing is left for the field.`,
      say`Suspected: losses in another unit, or usual losses that a low supply cannot bear. State what each part loses at your flow, take wider ones, or leave out what is not needed.`,
    ),
  ];
}

function idleRegulators({ headWorks }: WaterSettings, height_m: number, supply: Supply | null): readonly Finding[] {
  const gauge_m = supply?.static_m;
  if (gauge_m === undefined) return [];
  return headWorks.flatMap((work, i) => {
    if (work.outlet_kpa === null) return [];
    const comes_kpa = pressureOf_kpa(passHeadWorks(headWorks.slice(0, i), gauge_m - height_m, 0, false).head_m);
    if (comes_kpa >= work.outlet_kpa) return [];
    return [
      unplaced(
        "drip/idle-regulator",
        "note",
        say`The regulator is set to ${quantity("pressure", work.outlet_kpa)}, but never more than ${quantity("pressure", comes_kpa)} gets to it.`,
        say`It regulates nothing and only loses pressure.`,
        say`Leave it out, or set it lower; check the unit of its setting.`,
      ),
    ];
  });
}

function backflow(water: WaterSettings): readonly Finding[] {
  if (water.kind === "unknown" || has(water, "backflow-device")) return [];
  if (has(water, "injector-port")) {
    return [
      unplaced(
        "drip/injector-without-backflow",
        "warning",
        say`Something is injected into the water, and no backflow device stands before it.`,
        say`When pressure fails, what is injected runs back into the well or the drinking water, which poisons people.`,
        say`Have a backflow device and the valve set for injection that your authority approves fitted upstream of the port, by whoever is licensed to.`,
      ),
    ];
  }
  if (water.kind !== "town" && water.others_lph <= 0) return [];
  return [
    unplaced(
      "drip/shared-without-backflow",
      "warning",
      say`Others drink or use the same water, and there is no backflow device.`,
      say`When pressure fails, water from the field with what is in it runs back to them.`,
      say`Fit the device that your authority or water supplier approves; many ask for it by law, and for a yearly test.`,
    ),
  ];
}
