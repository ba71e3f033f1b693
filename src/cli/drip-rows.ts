import {
  formatQuantity,
  headBudget,
  type Plan,
  pressureOf_kpa,
  recommendedEvenness,
  type UnitSystem,
} from "../core/index.ts";
import { wrapped } from "./wrapped.ts";

/** How even each block is against what is asked for, what that leaves to be lost, and what its rows need by themselves. */
export function dripRows(plan: Plan, units: UnitSystem): string {
  const watered = plan.watering;
  return (watered?.job.blocks ?? []).map((_, b) => `${evenness(plan, b, units)}${rows(plan, b, units)}`).join("");
}

function evenness({ watering: watered, rows: laid }: Plan, b: number, units: UnitSystem): string {
  const block = watered?.job.blocks[b];
  const found = watered?.watering?.blocks[b] ?? null;
  if (watered === null || block === undefined || found === null) return "";
  const share = (ratio: number) => formatQuantity("ratio", ratio, units, 1);
  const flow = (lps: number) => formatQuantity("flow", lps * 3600, units);
  const [lowest, highest] = [flow(found.lowest_lps), flow(found.highest_lps)];
  const flows =
    lowest === highest
      ? `every emitter gives ${highest}`
      : `emitters give ${lowest} to ${highest}, which is a variation of ${share(found.variation_ratio)}`;
  const { drip } = block;
  const spacing_m = drip.emitterPlacing === "in-line" ? drip.emitterSpacing_m : block.vineSpacing_m;
  const steepest = (laid?.rows ?? []).reduce((most, row) => {
    return row.block === block.id ? Math.max(most, Math.abs(row.slopeAlong_ratio ?? 0)) : most;
  }, 0);
  const [from, to] = recommendedEvenness(drip.emitterPlacing, spacing_m, steepest);
  const budget = headBudget(
    block.emitter.nominalHead_m,
    drip.emitterExponent,
    drip.evenness_ratio,
    drip.emitterVariation_ratio,
    drip.emittersPerVine,
  );
  const pressure = (head_m: number) => formatQuantity("pressure", pressureOf_kpa(head_m), units);
  const spread =
    drip.emitterKind === "compensating"
      ? ""
      : ` That leaves ${pressure(budget.spread_m)} between the emitter with most and the one with least.`;
  return wrapped(
    `Evenness of ${block.name}: ${share(found.emission_ratio)} emission uniformity, ${share(found.statistical_ratio)} statistical, ` +
      `${flows}` +
      `${found.dry === 0 ? "" : `; ${found.dry} emitters get no water`}. ` +
      `Asked for are ${share(drip.evenness_ratio)}; published practice recommends ${share(from)} to ${share(to)} here.${spread}`,
    "",
  );
}

function rows({ watering: watered, rows: laid }: Plan, b: number, units: UnitSystem): string {
  const block = watered?.job.blocks[b];
  if (watered === null || watered.watering === null || block === undefined) return "";
  const { job, watering } = watered;
  const own = watering.laterals.flatMap((need, i) => (job.laterals.block[i] === b ? [{ need, i }] : []));
  if (own.length === 0) return "";
  const tee_m = (i: number) => {
    const point = job.laterals.point[i] ?? -1;
    return point < 0 ? job.source.height_m : (job.line?.height_m[point] ?? job.source.height_m);
  };
  const needed = own.map(({ need, i }) => pressureOf_kpa(need.inlet_m - tee_m(i)));
  const [longest] = [...own].sort((a, c) => (job.laterals.hose_m[c.i] ?? 0) - (job.laterals.hose_m[a.i] ?? 0));
  if (longest === undefined) return "";
  const pressure = (kpa: number) => formatQuantity("pressure", kpa, units);
  const length = (value_m: number) => formatQuantity("length", value_m, units);
  const flow = (lps: number) => formatQuantity("flow", lps * 3600, units);
  const [least, most] = [Math.min(...needed), Math.max(...needed)];
  const id = laid?.rows[job.laterals.row[longest.i] ?? -1]?.id ?? "";
  const { need } = longest;
  const limit =
    need.longest === null
      ? ""
      : ` It could be ${length(need.longest.length_m)} long, with ${need.longest.emitters} emitters, and still be as even as asked for.`;
  return wrapped(
    `Rows of ${block.name} need ${pressure(least) === pressure(most) ? pressure(most) : `${pressure(least)} to ${pressure(most)}`} at their tees. ` +
      `The longest, ${id}, has ${length(job.laterals.hose_m[longest.i] ?? 0)} of hose and takes ${flow(need.flow_lps)}, ` +
      `${flow(need.flush_lps)} while its end is flushed.${limit}`,
    "",
  );
}
