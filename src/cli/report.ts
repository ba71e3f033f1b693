import { type BlockRows, formatQuantity, type Plan, type UnitSystem } from "../core/index.ts";
import { coilReport } from "./coil-report.ts";
import { costReport } from "./cost-report.ts";
import { countOf } from "./count-of.ts";
import { dripReport } from "./drip-report.ts";
import { findingsReport } from "./findings-report.ts";
import { rowTable } from "./row-table.ts";
import { shoppingList } from "./shopping-list.ts";
import { trellisReport } from "./trellis-report.ts";
import { trenchReport } from "./trench-report.ts";

/** A plan for a person: the ground, the blocks, every row, what to buy and what there is to know. */
export function planReport(plan: Plan, units: UnitSystem, compass: readonly string[]): string {
  return joined([
    heading(plan, units, compass),
    rowTable(plan, units),
    trellisReport(plan, units),
    dripReport(plan, units),
    trenchReport(plan, units),
    shoppingList(plan, units),
    coilReport(plan, units),
    costReport(plan, units),
    findingsReport(plan.findings, units),
  ]);
}

/** The same without the row table. */
export function planSummary(plan: Plan, units: UnitSystem, compass: readonly string[]): string {
  return joined([heading(plan, units, compass), shoppingList(plan, units), findingsReport(plan.findings, units)]);
}

function joined(parts: readonly string[]): string {
  return parts.filter((part) => part !== "").join("\n");
}

function heading(plan: Plan, units: UnitSystem, compass: readonly string[]): string {
  const { ground, rows, drip } = plan;
  const area = (value_m2: number) => formatQuantity("area", value_m2, units);
  const planted = (value_m2: number | null) => (value_m2 === null ? "" : `, of it planting area ${area(value_m2)}`);
  return [
    `${plan.project.name}\n`,
    ground === null ? "" : `Parcel ${area(ground.parcelArea_m2)}${planted(ground.plantingArea_m2)}.\n`,
    ...(rows?.blocks ?? []).map((block) => blockLine(plan, block, units)),
    ...compass.map((line) => `${line}\n`),
    drip === null || drip.emitters === 0
      ? ""
      : `${countOf(drip.emitters, "emitter")} take ${formatQuantity("flow", drip.flow_lph, units)} when all run together.\n`,
    rows === null ? "No rows could be laid out.\n" : "",
  ].join("");
}

function blockLine(plan: Plan, block: BlockRows, units: UnitSystem): string {
  const settings = plan.project.blocks.find((candidate) => candidate.id === block.block);
  const own = plan.rows?.rows.slice(block.first, block.first + block.count) ?? [];
  const vines = own.reduce((sum, row) => sum + row.vines, 0);
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  const apart =
    settings === undefined
      ? ""
      : `, rows ${length(block.rowSpacing_m)} and vines ${length(settings.rows.vineSpacing_m)} apart`;
  return (
    `${settings?.name ?? block.block}: ${countOf(block.count, "row")}, ${length(block.length_m)} of row, ` +
    `${countOf(vines, "vine")}, bearing ${formatQuantity("angle", block.bearing_deg, units)} from true north${apart}.\n`
  );
}
