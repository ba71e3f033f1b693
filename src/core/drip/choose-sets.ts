import { supplyHead_m } from "../hydraulics/read-supply.ts";
import { type Delivery, type DeliveryJob, deliver } from "./deliver.ts";
import { kpa_pm } from "./set-network.ts";
import { type SetUnit, setUnits } from "./set-units.ts";
import { evenSets, leastSets, type Sets } from "./sets.ts";

/** A delivery for so many sets; `isShort` also where a set takes more than may be counted on. */
interface Tried {
  readonly delivery: Delivery;
  readonly isShort: boolean;
}

/** Head that is not worth more sets. */
const worth_m = 0.05;

/**
 * The fewest sets that the water feeds with the pipes there are (or as many as are wanted), and their pipes; where no number of sets does, the one
 * that leaves the rows least short. null: no row is reached. `most_lps`: what a set may take.
 */
export function chooseSets(of: DeliveryJob, most_lps: number): Tried | null {
  const { job, needs } = of;
  const units = setUnits(job, needs, most_lps);
  if (units.length === 0) return null;
  const { count } = job.sets;
  if (count !== null) {
    const wanted = Math.min(Math.max(count, leastPinned(units)), Math.max(units.length, leastPinned(units)));
    return weighed(of, setsOf(units, wanted, most_lps), most_lps);
  }
  const found = fewestThatDo(of, units, most_lps);
  const fine = weighed(of, found.delivery.sets, most_lps);
  // Flows grow with pressure: what fits by a hair's breadth with one choice of sizes may not with a cheaper one.
  return fine.isShort && !found.isShort ? found : fine;
}

function fewestThatDo(of: DeliveryJob, units: readonly SetUnit[], most_lps: number): Tried {
  const fewest = Math.min(leastSets(units, most_lps), Math.max(units.length, leastPinned(units)));
  // What the source has for no row, no number of sets gives.
  if (units.every(({ laterals }) => laterals.every((lateral) => headToSpare(of, [[lateral]]) < 0))) {
    return tried(of, setsOf(units, fewest, most_lps), most_lps);
  }
  let best: { readonly sets: Sets; readonly head_m: number } | null = null;
  let failed = fewest - 1;
  for (let k = fewest; k <= units.length; k = further(k, fewest, units.length)) {
    const sets = evenSets(units, k, most_lps);
    if (sets === null) continue;
    const head_m = headToSpare(of, sets);
    const attempt = head_m >= 0 ? tried(of, sets, most_lps) : null;
    if (attempt !== null && !attempt.isShort) return fewer(of, units, failed, k, attempt, most_lps);
    const spare_m = attempt?.delivery.spare.reduce((least, each) => Math.min(least, each.head_m), Infinity) ?? head_m;
    if (best === null || spare_m > best.head_m + worth_m) best = { sets, head_m: spare_m };
    failed = k;
  }
  return tried(of, best?.sets ?? setsOf(units, fewest, most_lps), most_lps);
}

/** One by one at first, then in ever longer steps: many sets are rarely wanted. */
function further(k: number, fewest: number, most: number): number {
  const next = k + Math.max(1, Math.floor((k - fewest) / 4));
  return next > most && k < most ? most : next;
}

/** The fewest that do between a number that does not and one that does. */
function fewer(
  of: DeliveryJob,
  units: readonly SetUnit[],
  failed: number,
  does: number,
  found: Tried,
  most_lps: number,
): Tried {
  let [low, high, best] = [failed, does, found];
  while (high - low > 1) {
    const k = Math.floor((low + high) / 2);
    const sets = evenSets(units, k, most_lps);
    const attempt = sets === null ? null : tried(of, sets, most_lps);
    if (attempt === null || attempt.isShort) low = k;
    else [high, best] = [k, attempt];
  }
  return best;
}

/** So many sets even where that is too much for one of them: the person asked for it, or there is no better. */
function setsOf(units: readonly SetUnit[], count: number, most_lps: number): Sets {
  return (
    evenSets(units, count, most_lps) ??
    evenSets(units, count, Infinity) ??
    evenSets(
      units.map((unit) => ({ ...unit, border: 0 })),
      count,
      Infinity,
    ) ?? [units.flatMap(({ laterals }) => laterals)]
  );
}

function leastPinned(units: readonly SetUnit[]): number {
  return units.reduce((most, { pin }) => Math.max(most, pin), 1);
}

/** Sizes without weighing every head: enough to tell whether it can be done. */
function tried(of: DeliveryJob, sets: Sets, most_lps: number): Tried {
  return weighed(of, sets, most_lps, []);
}

function weighed(of: DeliveryJob, sets: Sets, most_lps: number, fineness?: readonly number[]): Tried {
  const delivery = deliver(of, sets, of.job.sets.pattern, fineness);
  const isOver = sets.some((set) => flowOf(of, set) > most_lps * (1 + 1e-9));
  return { delivery, isShort: delivery.isShort || isOver };
}

/** Head that is left at the worst row if pipes lost nothing: below 0, no pipe helps. */
function headToSpare(of: DeliveryJob, sets: Sets): number {
  const { job, line, needs } = of;
  const cock_m =
    job.sets.pattern === "cock-a-row" && job.sets.regulator_kpa !== null ? job.sets.regulator_kpa / kpa_pm : Infinity;
  return sets.reduce((least_m, set) => {
    const source_m = supplyHead_m(of.counted, flowOf(of, set));
    return set.reduce((least, lateral) => {
      const held_m = Number(line.height_m[Number(job.laterals.point[lateral])]) + cock_m;
      return Math.min(least, Math.min(source_m, held_m) - (needs[lateral]?.inlet_m ?? Infinity));
    }, least_m);
  }, Infinity);
}

function flowOf({ needs }: DeliveryJob, set: readonly number[]): number {
  return set.reduce((sum_lps, lateral) => sum_lps + (needs[lateral]?.flow_lps ?? 0), 0);
}
