import { type Bore, boreOf } from "./bore.ts";
import type { Lateral, LateralState } from "./lateral.ts";
import { type Jet, jetFlow, jetOf } from "./outlet-flow.ts";
import { pipeLoss } from "./pipe-loss.ts";

/** A lateral made ready to be stepped up many times. */
export interface LateralSteps {
  readonly lateral: Lateral;
  readonly hose: Bore;
  readonly riser: Bore;
  readonly jet: Jet;
  readonly lowest_m: number;
  readonly mean_m: number;
}

/** Where a step up a lateral ends, at its tee. */
interface Step {
  inlet_m: number;
  /** By how much it rises with the head at the end, m per m. */
  inletGrowth: number;
  flow_lps: number;
  flowGrowth: number;
}

/** A lateral made ready. */
export function lateralSteps(lateral: Lateral): LateralSteps {
  const { law, roughness, viscosity_m2ps, height_m } = lateral;
  let lowest_m = Number.POSITIVE_INFINITY;
  let sum_m = 0;
  for (const each_m of height_m) {
    lowest_m = Math.min(lowest_m, each_m);
    sum_m += each_m;
  }
  return {
    lateral,
    hose: boreOf({ law, inside_mm: lateral.hoseInside_mm, roughness, viscosity_m2ps }),
    riser: boreOf({ law, inside_mm: lateral.riserInside_mm, roughness, viscosity_m2ps }),
    jet: jetOf(lateral.emitter),
    lowest_m,
    mean_m: height_m.length === 0 ? 0 : sum_m / height_m.length,
  };
}

/**
 * From the last emitter, with its total head given, back to the tee: calculation handbook 4.5, with the derivative by the head at the end carried along.
 * Fills heads and outflows by emitter where arrays for them are given.
 */
function stepUp(
  steps: LateralSteps,
  tail_m: number,
  step: Step,
  head_m: Float64Array | null,
  outflow_lps: Float64Array | null,
) {
  const { lateral, hose, jet } = steps;
  const { at_m, height_m, barb_m } = lateral;
  const out = new Float64Array(2);
  let head = tail_m;
  let growth = 1;
  let flow = 0;
  let flowGrowth = 0;
  for (let i = at_m.length - 1; i >= 0; i--) {
    const height = height_m[i] ?? 0;
    let leaves = 0;
    if (head > height) {
      jetFlow(jet, head - height, height, out);
      leaves = out[0] ?? 0;
      flow += leaves;
      flowGrowth += (out[1] ?? 0) * growth;
    }
    if (head_m !== null && outflow_lps !== null) {
      head_m[i] = head;
      outflow_lps[i] = leaves;
    }
    const before = i === 0 ? 0 : (at_m[i - 1] ?? 0);
    pipeLoss(hose, (at_m[i] ?? 0) - before + barb_m, flow, out);
    head += out[0] ?? 0;
    growth += (out[1] ?? 0) * flowGrowth;
  }
  pipeLoss(steps.riser, lateral.riser_m, flow, out);
  step.inlet_m = head + (out[0] ?? 0);
  step.inletGrowth = growth + (out[1] ?? 0) * flowGrowth;
  step.flow_lps = flow;
  step.flowGrowth = flowGrowth;
}

/** The lateral with a total head given at its last emitter, m. */
export function lateralFrom(lateral: Lateral, tail_m: number): LateralState {
  const [head_m, outflow_lps] = roomFor(lateral);
  const step = createStep();
  stepUp(lateralSteps(lateral), tail_m, step, head_m, outflow_lps);
  const { inlet_m, flow_lps } = step;
  return { inlet_m, flow_lps, growth: step.flowGrowth / step.inletGrowth, head_m, outflow_lps };
}

/**
 * The lateral with a total head given at its tee, m, looked for from a head at its last emitter if one is known nearby. Emitters above the water's
 * reach get none.
 */
export function lateralAt(lateral: Lateral, inlet_m: number, tail_m?: number): LateralState {
  const steps = lateralSteps(lateral);
  const [head_m, outflow_lps] = roomFor(lateral);
  const step = createStep();
  findTail(steps, inlet_m, tail_m ?? guessTail(steps, inlet_m), near_m, step, head_m, outflow_lps);
  return { inlet_m, flow_lps: step.flow_lps, growth: step.flowGrowth / step.inletGrowth, head_m, outflow_lps };
}

/** As the emitters want it: nearer than this a head is the head. */
const near_m = 1e-9;

/** Total head at the last emitter that brings a total head at the tee, and the flow then. */
export interface Tail {
  readonly tail_m: number;
  readonly flow_lps: number;
  /** By how much the flow grows with the head at the tee, L/s per m; and the head at the end, m per m. */
  readonly growth: number;
  readonly tailGrowth: number;
}

/** The end of a lateral with a total head given at its tee; off by `off_m` it may still be, and then what is left is taken off straight. */
export function tailAt(steps: LateralSteps, inlet_m: number, start_m: number, off_m: number): Tail {
  const step = createStep();
  const found_m = findTail(steps, inlet_m, start_m, off_m, step, null, null);
  const left_m = step.inlet_m - inlet_m;
  const growth = step.flowGrowth / step.inletGrowth;
  return {
    tail_m: found_m - left_m / step.inletGrowth,
    flow_lps: step.flow_lps - left_m * growth,
    growth,
    tailGrowth: 1 / step.inletGrowth,
  };
}

/**
 * Finds the head at the last emitter by Newton's rule, and by halves where that leads out of the bounds: the head at the tee rises with the head at
 * the end, is never below it, and is equal to it when no emitter gets water.
 */
function findTail(
  steps: LateralSteps,
  inlet_m: number,
  start_m: number,
  off_m: number,
  step: Step,
  head_m: Float64Array | null,
  outflow_lps: Float64Array | null,
): number {
  let low = Math.min(steps.lowest_m, inlet_m);
  let high = inlet_m;
  let tail_m = Math.min(high, Math.max(low, start_m));
  for (let round = 0; round < mostRounds; round++) {
    stepUp(steps, tail_m, step, head_m, outflow_lps);
    const over_m = step.inlet_m - inlet_m;
    if (Math.abs(over_m) < off_m || high - low < least_m) break;
    if (over_m > 0) high = tail_m;
    else low = tail_m;
    const next = tail_m - over_m / step.inletGrowth;
    tail_m = next > low && next < high ? next : (low + high) / 2;
  }
  return tail_m;
}

const mostRounds = 100;
/** Bounds that are nearer hold a leap of the loss between them. */
const least_m = 1e-12;

/** About the head at the end: with all emitters at their mean height, and a third of the hose's loss at full flow (Christiansen's factor). */
export function guessTail({ lateral, hose, riser, jet, mean_m }: LateralSteps, inlet_m: number): number {
  const { at_m, barb_m } = lateral;
  const pressure_m = 0.95 * (inlet_m - mean_m);
  if (pressure_m <= 0 || at_m.length === 0) return inlet_m;
  const out = new Float64Array(2);
  jetFlow(jet, pressure_m, mean_m, out);
  const flow = (out[0] ?? 0) * at_m.length;
  pipeLoss(hose, (at_m[at_m.length - 1] ?? 0) + barb_m * at_m.length, flow, out);
  const hose_m = (out[0] ?? 0) * 0.36;
  pipeLoss(riser, lateral.riser_m, flow, out);
  return Math.max(inlet_m - hose_m - (out[0] ?? 0), inlet_m - 0.8 * pressure_m);
}

function createStep(): Step {
  return { inlet_m: 0, inletGrowth: 1, flow_lps: 0, flowGrowth: 0 };
}

function roomFor({ at_m }: Lateral): readonly [head_m: Float64Array, outflow_lps: Float64Array] {
  return [new Float64Array(at_m.length), new Float64Array(at_m.length)];
}
