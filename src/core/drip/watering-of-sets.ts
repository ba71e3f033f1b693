import { condenseLateral } from "../hydraulics/condense-lateral.ts";
import type { Lateral } from "../hydraulics/lateral.ts";
import type { SupplyCurve } from "../hydraulics/network.ts";
import { chooseSets } from "./choose-sets.ts";
import type { Delivery, DeliveryJob } from "./deliver.ts";
import { evennessOf } from "./evenness.ts";
import { flushable } from "./flushing.ts";
import { lateralOf } from "./lateral-of.ts";
import { pipeLines } from "./pipe-lines.ts";
import { type RunningSet, runSet } from "./run-sets.ts";
import type { SetTree } from "./set-lines.ts";
import { kpa_pm } from "./set-network.ts";
import { setReport } from "./set-report.ts";
import type { EmitterStates, LateralNeed, Supply, Watering } from "./watering.ts";
import type { LineJob, WateringJob } from "./watering-job.ts";

/** What there is once rows are put into sets, with what it was worked out from. */
export interface WateringOfSets extends Pick<Watering, "sets" | "pipes" | "isShort"> {
  readonly emitters: EmitterStates;
  readonly of: DeliveryJob;
  readonly delivery: Delivery;
}

/** Sets of rows with their pipes, each while it runs with the filter due for cleaning; null: no row is reached. */
export function wateringOfSets(
  job: WateringJob,
  line: LineJob,
  supply: Supply,
  needs: readonly LateralNeed[],
): WateringOfSets | null {
  const laterals = needs.map((_, i) => lateralOf(job, i));
  const counted = countedOn(supply.dirty, job.water.margin_ratio);
  const curves = laterals.map((lateral, i) => {
    const inlet_m = needs[i]?.inlet_m ?? 0;
    const most_m = Math.max(inlet_m + 1, mostAtTee_m(job, line, counted, i));
    return condenseLateral(lateral, inlet_m, most_m, isLevel(lateral) ? 1 : degree);
  });
  const of: DeliveryJob = { job, line, counted, needs, curves };
  const chosen = chooseSets(of, supply.most_lps * (1 - job.water.margin_ratio));
  if (chosen === null) return null;
  const { delivery, isShort } = chosen;
  const running = runningSets(delivery, supply, laterals);
  const emitters = emitterStates(job, running);
  const { pipes, ofLeg } = pipeLines(delivery, line);
  const sets = running.map((each, set) => {
    const own = delivery.sets[set] ?? [];
    const evenness = evennessOf(job, own, emitters.flow_lps);
    const told = { evenness, flushable: flushableIn(of, supply, delivery, set, each) };
    return setReport(job, line, supply, delivery, set, each, ofLeg, told);
  });
  return { sets, pipes, emitters, isShort, of, delivery };
}

/** Sets are solved again with every emitter: until then some thousandths of the flow do. */
const degree = 4;

/** In their range compensating emitters give the same at any head. */
function isLevel({ emitter }: Lateral): boolean {
  return emitter.from_m !== null && emitter.exponent === 0;
}

/** The supply with a share of its flow taken off. */
function countedOn({ flow_lps, head_m }: SupplyCurve, margin_ratio: number): SupplyCurve {
  return { flow_lps: flow_lps.map((each) => each * (1 - margin_ratio)), head_m };
}

/** A regulator on lower ground than a tee lets less through to it, one on higher ground more. */
const regulatorDrop_m = 10;

/** About the highest head that a lateral's tee can have. */
function mostAtTee_m({ sets, laterals }: WateringJob, { height_m }: LineJob, counted: SupplyCurve, i: number): number {
  const closed_m = counted.head_m[0] ?? 0;
  if (sets.regulator_kpa === null) return closed_m;
  const tee_m = Number(height_m[Math.max(0, Number(laterals.point[i]))]);
  return Math.min(closed_m, tee_m + sets.regulator_kpa / kpa_pm + regulatorDrop_m);
}

function runningSets(
  { lines, networks, solutions }: Delivery,
  supply: Supply,
  laterals: readonly Lateral[],
): readonly RunningSet[] {
  const lateralAt = (i: number): Lateral => {
    const lateral = laterals[i];
    if (lateral === undefined) throw new Error(`lateral ${i} is in a set but not in the job`);
    return lateral;
  };
  return networks.flatMap((network, set) => {
    const tree = lines.trees[set];
    return tree === undefined ? [] : [runSet(network, tree, supply.dirty, lateralAt, solutions[set])];
  });
}

function emitterStates(
  { laterals: { offsets, height_m } }: WateringJob,
  running: readonly RunningSet[],
): EmitterStates {
  const states = {
    pressure_m: new Float64Array(height_m.length),
    flow_lps: new Float64Array(height_m.length),
  };
  for (const { laterals } of running) {
    for (const [lateral, state] of laterals) {
      const from = Number(offsets[lateral]);
      states.flow_lps.set(state.outflow_lps, from);
      state.head_m.forEach((head_m, i) => {
        states.pressure_m[from + i] = head_m - Number(height_m[from + i]);
      });
    }
  }
  return states;
}

/** Head lost in pipe on the way to a node, before and behind the last regulator that holds pressure back, and the head that holds. */
function wayTo(tree: SetTree | undefined, head_m: Float64Array, at: number) {
  let [lost_m, behind_m, held_m] = [0, 0, Infinity];
  for (let node = at; tree !== undefined && node > 0; node = Number(tree.upstream[node])) {
    const drop_m = Number(head_m[tree.upstream[node] ?? 0]) - Number(head_m[node]);
    if (tree.leg[node] !== -1) lost_m += Math.max(0, drop_m);
    else if (tree.isRegulated[node] === 1 && drop_m > 0 && held_m === Infinity) {
      [behind_m, lost_m, held_m] = [lost_m, 0, Number(head_m[node])];
    }
  }
  return { lost_m, behind_m, held_m };
}

/** Laterals of a set that can be flushed at once, by the one that takes most. */
function flushableIn(
  { needs }: DeliveryJob,
  supply: Supply,
  { lines, sets, spare }: Delivery,
  set: number,
  { solution }: RunningSet,
): number {
  const own = sets[set] ?? [];
  const at = lines.trees[set]?.lateral.indexOf(spare[set]?.lateral ?? -1) ?? -1;
  const flush_lps = own.reduce((most, lateral) => {
    const need = needs[lateral];
    return need === undefined ? most : Math.max(most, need.flush_lps - need.flow_lps);
  }, 0);
  return flushable(
    { curve: supply.dirty, most_lps: supply.most_lps },
    {
      laterals: own.length,
      flow_lps: Number(solution.flow_lps[0]),
      ...wayTo(lines.trees[set], solution.head_m, at),
      needed_m: needs[spare[set]?.lateral ?? -1]?.inlet_m ?? Infinity,
    },
    flush_lps,
  );
}
