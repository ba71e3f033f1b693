import { condenseLateral } from "../hydraulics/condense-lateral.ts";
import type { Lateral, LateralState } from "../hydraulics/lateral.ts";
import { lateralAt } from "../hydraulics/lateral-steps.ts";
import type { SupplyCurve } from "../hydraulics/network.ts";
import type { LateralCurve } from "../hydraulics/outlet.ts";
import { chooseSets } from "./choose-sets.ts";
import type { Delivery, DeliveryJob } from "./deliver.ts";
import { lateralOf } from "./lateral-of.ts";
import { pipeLines } from "./pipe-lines.ts";
import { type RunningSet, runSet } from "./run-sets.ts";
import { seasonOf } from "./season/season-of.ts";
import { kpa_pm } from "./set-network.ts";
import { setReport } from "./set-report.ts";
import { supplyOf } from "./supply.ts";
import type { EmitterStates, Evenness, LateralNeed, Supply, Watering } from "./watering.ts";
import type { LineJob, WateringJob } from "./watering-job.ts";

/** What the drip system does with the water there is: supply, sets, pipe sizes, pressures, season. */
export function waterRows(job: WateringJob): Watering | null {
  const laterals = Array.from(job.laterals.row, (_, i) => lateralOf(job, i));
  const needs = lateralNeeds(job, laterals);
  const supply = supplyOf(job);
  const found = supply === null || job.line === null ? null : delivered(job, job.line, laterals, needs, supply);
  const told = {
    supply,
    laterals: needs,
    sets: found?.sets ?? [],
    emitters: found?.emitters ?? null,
    pipes: found?.pipes ?? [],
    blocks: blockEvenness(job, found?.emitters ?? null),
  };
  return {
    ...told,
    highest: [],
    patterns: [],
    season: seasonOf(job, told),
    firstRun: [],
    parts: [],
    isShort: found?.isShort ?? false,
  };
}

type Delivered = Pick<Watering, "sets" | "pipes" | "isShort"> & {
  readonly emitters: EmitterStates;
  readonly delivery: Delivery;
};

function delivered(
  job: WateringJob,
  line: LineJob,
  laterals: readonly Lateral[],
  needs: readonly LateralNeed[],
  supply: Supply,
): Delivered | null {
  const counted = countedOn(supply.dirty, job.water.margin_ratio);
  const curves = laterals.map((lateral, i) => condensed(job, line, lateral, needs[i]?.inlet_m ?? 0, counted, i));
  const of: DeliveryJob = { job, line, counted, needs, curves };
  const chosen = chooseSets(of, supply.most_lps * (1 - job.water.margin_ratio));
  if (chosen === null) return null;
  const { delivery } = chosen;
  const running = delivery.lines.trees.flatMap((tree, set): RunningSet[] => {
    const network = delivery.networks[set];
    if (network === undefined) return [];
    return [
      runSet(
        network,
        tree,
        supply.dirty,
        (lateral) => laterals[lateral] ?? lateralOf(job, lateral),
        delivery.solutions[set],
      ),
    ];
  });
  const emitters = emitterStates(job, running);
  const { pipes, ofLeg } = pipeLines(delivery, line);
  const sets = running.map((each, set) =>
    setReport(job, line, supply, delivery, set, each, ofLeg, {
      evenness: evennessOf(job, delivery.sets[set] ?? [], emitters),
      flushable: 0,
    }),
  );
  return { sets, pipes, emitters, isShort: chosen.isShort, delivery };
}

/** The supply with a share of its flow taken off. */
function countedOn({ flow_lps, head_m }: SupplyCurve, margin_ratio: number): SupplyCurve {
  return { flow_lps: flow_lps.map((each) => each * (1 - margin_ratio)), head_m };
}

/** A lateral as one outlet, from the head it needs to the most it can get. */
function condensed(
  job: WateringJob,
  line: LineJob,
  lateral: Lateral,
  inlet_m: number,
  counted: SupplyCurve,
  i: number,
): LateralCurve {
  const tee_m = Number(line.height_m[Math.max(0, Number(job.laterals.point[i]))]);
  const closed_m = counted.head_m[0] ?? 0;
  const highest_m =
    job.sets.regulator_kpa === null ? closed_m : Math.min(closed_m, tee_m + job.sets.regulator_kpa / kpa_pm + 10);
  return condenseLateral(lateral, inlet_m, Math.max(inlet_m + 1, highest_m));
}

function emitterStates(
  { laterals: { offsets, height_m } }: WateringJob,
  running: readonly RunningSet[],
): EmitterStates {
  const states = { pressure_m: new Float64Array(height_m.length), flow_lps: new Float64Array(height_m.length) };
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

function lateralNeeds(job: WateringJob, laterals: readonly Lateral[]): readonly LateralNeed[] {
  return laterals.map((lateral, i) => {
    const state = needed(lateral);
    const evenness = evennessOfFlows(job, Number(job.laterals.block[i]), state.outflow_lps);
    return {
      inlet_m: state.inlet_m,
      flow_lps: state.flow_lps,
      lowest_lps: evenness.lowest_lps,
      highest_lps: evenness.highest_lps,
      evenness,
      longest: null,
      flush_lps: 0,
    };
  });
}

function needed(lateral: Lateral): LateralState {
  const { emitter, height_m, at_m } = lateral;
  const top_m = height_m.reduce((most, each) => Math.max(most, each), -Infinity);
  let [low, high] = [top_m - 10, top_m + 2 * emitter.nominalHead_m + 50];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const state = lateralAt(lateral, middle);
    const isEnough =
      emitter.from_m === null
        ? state.flow_lps >= emitter.nominal_lps * at_m.length
        : state.head_m.every((head, k) => head - Number(height_m[k]) >= Number(emitter.from_m));
    if (isEnough) high = middle;
    else low = middle;
  }
  return lateralAt(lateral, high);
}

function evennessOfFlows(job: WateringJob, block: number, flows: Float64Array): Evenness {
  const drip = job.blocks[block]?.drip;
  const n = flows.length;
  const mean = flows.reduce((sum, each) => sum + each, 0) / n;
  const lowest = flows.reduce((a, b) => Math.min(a, b), Infinity);
  const highest = flows.reduce((a, b) => Math.max(a, b), -Infinity);
  const spread = flows.reduce((sum, each) => sum + (each - mean) ** 2, 0) / n;
  const cv = drip?.emitterVariation_ratio ?? 0;
  return {
    emitters: n,
    lowest_lps: lowest,
    mean_lps: mean,
    highest_lps: highest,
    emission_ratio: (1 - (1.27 * cv) / Math.sqrt(drip?.emittersPerVine ?? 1)) * (lowest / mean),
    statistical_ratio: 1 - Math.sqrt(spread / mean ** 2 + cv ** 2),
    variation_ratio: (highest - lowest) / highest,
    dry: flows.reduce((count, each) => (each <= 0 ? count + 1 : count), 0),
  };
}

function evennessOf(job: WateringJob, laterals: readonly number[], { flow_lps }: EmitterStates): Evenness {
  const flows = laterals.flatMap((lateral) => [
    ...flow_lps.subarray(job.laterals.offsets[lateral], job.laterals.offsets[lateral + 1]),
  ]);
  return evennessOfFlows(job, Number(job.laterals.block[laterals[0] ?? 0]), Float64Array.from(flows));
}

function blockEvenness(job: WateringJob, emitters: EmitterStates | null): readonly (Evenness | null)[] {
  return job.blocks.map((_, block) => {
    const own = [...job.laterals.block.keys()].filter(
      (i) => job.laterals.block[i] === block && Number(job.laterals.point[i]) >= 0,
    );
    return emitters === null || own.length === 0 ? null : evennessOf(job, own, emitters);
  });
}
