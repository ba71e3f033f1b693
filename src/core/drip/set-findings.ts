import type { Finding } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import {
  aboveHead,
  pinsNotKept,
  pressureTakesMore,
  regulatorTooLow,
  rowsAboveSupply,
  runsFast,
  setsBelowLeast,
  setsTakeTooMuch,
  shortOfWater,
} from "./set-sentences.ts";
import { pinOf } from "./set-units.ts";
import type { Supply, Watering, WaterSet } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** Where points of the route are, and what the rows of laterals are called. */
export interface WhereInField {
  readonly placeOf: (point: number) => LonLat | null;
  readonly rowOf: (lateral: number) => string;
}

/** Shares of flow and speed, and m of head, that do not matter. */
const near_ratio = 1e-3;
const near_m = 0.01;

/**
 * What sets and pipes have to say. Findings: drip/short-of-water, drip/set-above-supply, drip/row-above-supply, drip/pressure-takes-more,
 * drip/regulator-too-low, drip/set-below-least, drip/pins-not-kept, drip/fast-water, drip/line-above-water.
 */
export function setFindings(job: WateringJob, watering: Watering, where: WhereInField): readonly Finding[] {
  const { supply, sets } = watering;
  if (supply === null || sets.length === 0) return [];
  return [
    ...tooMuch(job, watering, supply, where),
    ...short(job, watering, where),
    ...below(sets, supply, where),
    ...unpinned(job, sets, where),
    ...fast(job, watering, where),
    ...high(sets, where),
  ];
}

function tooMuch(job: WateringJob, { sets, laterals }: Watering, supply: Supply, where: WhereInField): Finding[] {
  const most_lps = supply.most_lps * (1 - job.water.margin_ratio);
  const needOf = (set: WaterSet) => set.laterals.reduce((sum, lateral) => sum + (laterals[lateral]?.flow_lps ?? 0), 0);
  const over = sets.filter((set) => needOf(set) > most_lps * (1 + near_ratio));
  if (over.length === 0) return driven(sets, supply, where);
  const at = placeOfSet(over[0], where);
  const rows = over.flatMap((set) => set.laterals.filter((each) => (laterals[each]?.flow_lps ?? 0) > most_lps));
  const ofRows = rows.reduce((most, each) => Math.max(most, laterals[each]?.flow_lps ?? 0), 0);
  if (rows.length > 0) return [rowsAboveSupply(at, rows.map(where.rowOf), ofRows, most_lps)];
  const flow_lps = over.reduce((most, set) => Math.max(most, needOf(set)), 0);
  return [
    setsTakeTooMuch(
      at,
      over.map(({ name }) => name),
      flow_lps,
      most_lps,
    ),
  ];
}

/** Sets that need no more than there is, but take it. */
function driven(sets: readonly WaterSet[], { most_lps }: Supply, where: WhereInField): Finding[] {
  const over = sets.filter(({ flow_lps }) => flow_lps > most_lps * (1 + near_ratio));
  if (over.length === 0) return [];
  const flow_lps = over.reduce((most, set) => Math.max(most, set.flow_lps), 0);
  const names = over.map(({ name }) => name);
  return [pressureTakesMore(placeOfSet(over[0], where), names, flow_lps, most_lps)];
}

/** The set that lacks most; where a regulator alone is to blame, that. */
function short(job: WateringJob, { sets, isShort }: Watering, where: WhereInField): Finding[] {
  const { regulator_kpa } = job.sets;
  const lacking = sets.filter(({ spare_m }) => spare_m < -near_m);
  const [worst] = [...lacking].sort((a, b) => a.spare_m - b.spare_m);
  if (!isShort || worst === undefined) return [];
  const at = where.placeOf(Number(job.laterals.point[worst.sparest]));
  const row = where.rowOf(worst.sparest);
  if (regulator_kpa !== null && lacking.every(isHeldBack)) {
    const rows = lacking.map(({ sparest }) => where.rowOf(sparest));
    return [regulatorTooLow(at, rows, regulator_kpa, -worst.spare_m)];
  }
  return [shortOfWater(at, worst.name, row, -worst.spare_m)];
}

/** A regulator before the row that lacks most has more before it than that row lacks. */
function isHeldBack({ nodes, sparest, spare_m }: WaterSet): boolean {
  let [node, most_m] = [nodes.lateral.indexOf(sparest), 0];
  while (node > 0) {
    const up = Number(nodes.upstream[node]);
    // Only a regulator loses head without a pipe.
    if (nodes.station_m[up] === nodes.station_m[node]) most_m += Number(nodes.head_m[up]) - Number(nodes.head_m[node]);
    node = up;
  }
  return most_m > -spare_m;
}

function below(sets: readonly WaterSet[], { least_lps }: Supply, where: WhereInField): Finding[] {
  const small = sets.filter(({ flow_lps }) => flow_lps < least_lps * (1 - near_ratio));
  if (small.length === 0) return [];
  const least = small.reduce((low, { flow_lps }) => Math.min(low, flow_lps), Infinity);
  const all_lps = sets.reduce((sum, { flow_lps }) => sum + flow_lps, 0);
  const fewer = Math.min(sets.length - 1, Math.floor(all_lps / least_lps));
  return [
    setsBelowLeast(
      placeOfSet(small[0], where),
      small.map(({ name }) => name),
      least,
      least_lps,
      fewer,
    ),
  ];
}

function unpinned(
  { laterals, sets: { pins }, blocks }: WateringJob,
  sets: readonly WaterSet[],
  where: WhereInField,
): Finding[] {
  const astray = sets.flatMap((set, i) =>
    set.laterals.filter((lateral) => ![0, i + 1].includes(pinOf(laterals, pins, blocks, lateral))),
  );
  const [first] = astray;
  if (first === undefined) return [];
  return [pinsNotKept(where.placeOf(Number(laterals.point[first])), astray.map(where.rowOf))];
}

function fast({ sets: { mostVelocity_mps } }: WateringJob, { sets, pipes }: Watering, where: WhereInField): Finding[] {
  let [most_mps, point, pipe] = [mostVelocity_mps * (1 + near_ratio), -1, -1];
  for (const { nodes } of sets) {
    nodes.velocity_mps.forEach((velocity_mps, node) => {
      if (velocity_mps <= most_mps) return;
      [most_mps, point, pipe] = [velocity_mps, Number(nodes.point[node]), Number(nodes.pipe[node])];
    });
  }
  if (point < 0) return [];
  return [runsFast(where.placeOf(point), most_mps, mostVelocity_mps, pipes[pipe]?.pipe.size ?? "")];
}

function high(sets: readonly WaterSet[], where: WhereInField): Finding[] {
  let [by_m, point] = [near_m, -1];
  for (const { nodes } of sets) {
    nodes.head_m.forEach((head_m, node) => {
      const over_m = Number(nodes.height_m[node]) - head_m;
      if (over_m > by_m) [by_m, point] = [over_m, Number(nodes.point[node])];
    });
  }
  return point < 0 ? [] : [aboveHead(where.placeOf(point), by_m)];
}

function placeOfSet(set: WaterSet | undefined, where: WhereInField): LonLat | null {
  return where.placeOf(Number(set?.nodes.point.at(-1) ?? 0));
}
