import type { Finding } from "../finding.ts";
import type { Ground } from "../ground/ground.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { Mainline } from "../mainline/water-end.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { Rows } from "../rows/rows.ts";
import { emissionUniformity, emittersAtVine } from "./evenness.ts";
import {
  emittersDry,
  evennessOutOfReach,
  fineEmitter,
  flushNone,
  heightsUnknown,
  pressureBelowRange,
  rangeUnlikely,
  rowsTooLong,
  rowsWithoutWater,
  setUneven,
} from "./lateral-sentences.ts";
import { meanSlope } from "./longest-lateral.ts";
import { recommendedEvenness } from "./recommended-evenness.ts";
import type { Watering, WaterSet } from "./watering.ts";
import type { BlockJob, WateringJob } from "./watering-job.ts";

/** 0.5 gal/h: smaller ones clog sooner (common practice, no source). */
const fine_lph = 1.892705892;
/** Shares that differ by less are equal, and so are heads in m. */
const near = 1e-4;

/**
 * What laterals and emitters have to say. Findings: drip/fine-emitter, drip/emitter-range, drip/evenness-out-of-reach, drip/row-uneven,
 * drip/set-uneven, drip/emitters-dry, drip/emitters-below-range, drip/flush-none, drip/rows-without-water, drip/heights-unknown.
 */
export function lateralFindings(
  job: WateringJob,
  watering: Watering | null,
  rows: Rows,
  { waterEnd }: Pick<Mainline, "waterEnd">,
  { frame }: Pick<Ground, "frame">,
): readonly Finding[] {
  const { laterals } = job;
  if (laterals.row.length === 0) return [];
  const placeOf = (lateral: number): LonLat | null => {
    const index = laterals.row[lateral] ?? -1;
    const row = rows.rows[index];
    return row === undefined ? null : frame.toLonLat(waterEnd[index] === "end" ? row.end : row.start);
  };
  const idsOf = (list: readonly number[]) =>
    list.flatMap((lateral) => rows.rows[laterals.row[lateral] ?? -1]?.id ?? []);
  const used = job.blocks.filter((_, i) => laterals.block.includes(i));
  return [
    ...used.flatMap((block) => settingFindings(block, used.length > 1)),
    ...(watering === null ? [] : runningFindings(job, watering, placeOf, idsOf)),
    ...unwatered(job, placeOf, idsOf),
    ...(job.water.kind !== "unknown" && job.source.isLevel ? [heightsUnknown()] : []),
  ];
}

/** What does not take the water to be known. */
function settingFindings(block: BlockJob, isOneOfMany: boolean): readonly Finding[] {
  const { drip, name } = block;
  const of = isOneOfMany ? ` of ${name}` : "";
  const isCompensating = drip.emitterKind === "compensating";
  const isNominalOut =
    drip.emitterPressure_kpa > drip.emitterMost_kpa || (isCompensating && drip.emitterLeast_kpa > drip.emitterMost_kpa);
  return [
    ...(drip.emitterFlow_lph > 0 && drip.emitterFlow_lph < fine_lph * (1 - near)
      ? [fineEmitter(of, drip.emitterFlow_lph, fine_lph)]
      : []),
    ...(isNominalOut ? [rangeUnlikely(of, drip, isCompensating)] : []),
    ...(bestEvenness(block) < drip.evenness_ratio - near ? [evennessOutOfReach(of, bestEvenness(block), drip)] : []),
  ];
}

/** Of emitters that all have the same pressure. */
function bestEvenness({ drip, vineSpacing_m }: BlockJob): number {
  return emissionUniformity(1, drip.emitterVariation_ratio, Math.max(1, emittersAtVine(drip, vineSpacing_m)));
}

function runningFindings(
  job: WateringJob,
  watering: Watering,
  placeOf: (lateral: number) => LonLat | null,
  idsOf: (laterals: readonly number[]) => readonly string[],
): readonly Finding[] {
  const long = tooLong(job, watering);
  const [first] = long;
  return [
    ...(first === undefined
      ? []
      : [rowsTooLong(placeOf(first), idsOf(long), worstOf(watering, long), longestOf(job, watering, long))]),
    ...watering.sets.flatMap((set) => [
      // What a set that is short of water lacks is told with it.
      ...(set.spare_m < 0 ? [] : [...unevenSet(job, set, placeOf), ...belowRange(job, watering, set, placeOf, idsOf)]),
      ...(set.flushable === 0 && set.spare_m >= 0 && set.laterals.length > 0
        ? [flushNone(placeOf(set.laterals[0] ?? 0), set.name)]
        : []),
    ]),
    ...dry(job, watering, placeOf, idsOf),
  ];
}

/** Rows that by themselves are less even than asked, of blocks where that can be had at all. */
function tooLong(job: WateringJob, { laterals }: Watering): readonly number[] {
  return [...laterals.keys()].filter((i) => {
    const block = job.blocks[job.laterals.block[i] ?? -1];
    const evenness = laterals[i]?.evenness;
    if (block === undefined || evenness === undefined || evenness.emitters === 0) return false;
    const asked = block.drip.evenness_ratio - near;
    return bestEvenness(block) >= asked && evenness.emission_ratio < asked;
  });
}

/** The shortest of the hoses that would still be even; null where even the rows' own lengths would be, were they not so bent up and down. */
function longestOf(job: WateringJob, { laterals }: Watering, list: readonly number[]): number | null {
  const lengths_m = list.flatMap((i) => {
    const longest_m = laterals[i]?.longest?.length_m ?? Infinity;
    return longest_m > 0 && longest_m < Number(job.laterals.hose_m[i]) ? [longest_m] : [];
  });
  return lengths_m.length === 0 ? null : Math.min(...lengths_m);
}

function worstOf({ laterals }: Watering, list: readonly number[]): number {
  return list.reduce((least, i) => Math.min(least, laterals[i]?.evenness.emission_ratio ?? 1), 1);
}

function unevenSet(job: WateringJob, set: WaterSet, placeOf: (lateral: number) => LonLat | null): readonly Finding[] {
  const blocks = set.laterals.flatMap((lateral) => job.blocks[job.laterals.block[lateral] ?? -1] ?? []);
  const asked = blocks.reduce((least, { drip }) => Math.min(least, drip.evenness_ratio), 1);
  const best = blocks.reduce((most, block) => Math.min(most, bestEvenness(block)), 1);
  const [block] = blocks;
  // What no pressure can mend is told of the block, and dry emitters by themselves.
  if (block === undefined || set.evenness.dry > 0 || best < asked - near) return [];
  if (set.evenness.emission_ratio >= asked - near) return [];
  const steepest = set.laterals.reduce((most, lateral) => Math.max(most, Math.abs(meanSlope(job, lateral))), 0);
  const recommended = recommendedEvenness(block.drip.emitterPlacing, block.vineSpacing_m, steepest);
  return [setUneven(placeOf(set.laterals[0] ?? 0), set.name, set.evenness, asked, recommended)];
}

/** One saying for all sets: where nothing has pressure, each of many sets has dry rows. */
function dry(
  job: WateringJob,
  { emitters, sets }: Watering,
  placeOf: (lateral: number) => LonLat | null,
  idsOf: (laterals: readonly number[]) => readonly string[],
): readonly Finding[] {
  const some = sets.filter(({ evenness }) => evenness.dry > 0);
  if (some.length === 0 || emitters === null) return [];
  const rows = some.flatMap((set) => lateralsWhere(job, set, (emitter) => Number(emitters.flow_lps[emitter]) <= 0));
  const count = some.reduce((sum, { evenness }) => sum + evenness.dry, 0);
  const names = some.map(({ name }) => name);
  return [emittersDry(placeOf(rows[0] ?? 0), names, count, idsOf(rows))];
}

/** Compensating emitters that get water, but less pressure than they need to hold their flow. */
function belowRange(
  job: WateringJob,
  { emitters }: Watering,
  set: WaterSet,
  placeOf: (lateral: number) => LonLat | null,
  idsOf: (laterals: readonly number[]) => readonly string[],
): readonly Finding[] {
  if (emitters === null || set.evenness.dry > 0) return [];
  let lowest_m = Infinity;
  let least_m = 0;
  const rows = lateralsWhere(job, set, (emitter, block) => {
    const pressure_m = Number(emitters.pressure_m[emitter]);
    const { from_m } = block.emitter;
    if (from_m === null || pressure_m >= from_m - near) return false;
    if (pressure_m < lowest_m) [lowest_m, least_m] = [pressure_m, from_m];
    return true;
  });
  const [first] = rows;
  return first === undefined
    ? []
    : [pressureBelowRange(placeOf(first), set.name, idsOf(rows), pressureOf_kpa(lowest_m), pressureOf_kpa(least_m))];
}

function lateralsWhere(
  { blocks, laterals }: WateringJob,
  set: WaterSet,
  isSo: (emitter: number, block: BlockJob) => boolean,
): readonly number[] {
  return set.laterals.filter((lateral) => {
    const block = blocks[laterals.block[lateral] ?? -1];
    let isAny = false;
    for (let i = laterals.offsets[lateral] ?? 0; i < (laterals.offsets[lateral + 1] ?? 0); i++) {
      if (block !== undefined && isSo(i, block)) isAny = true;
    }
    return isAny;
  });
}

function unwatered(
  { line, laterals, water }: WateringJob,
  placeOf: (lateral: number) => LonLat | null,
  idsOf: (laterals: readonly number[]) => readonly string[],
): readonly Finding[] {
  if (line === null || water.kind === "unknown") return [];
  const left = [...laterals.point.keys()].filter((i) => (laterals.point[i] ?? -1) < 0);
  const [first] = left;
  return first === undefined ? [] : [rowsWithoutWater(placeOf(first), idsOf(left))];
}
