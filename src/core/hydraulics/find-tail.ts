import { jetFlow } from "./outlet-flow.ts";
import { pipeLoss } from "./pipe-loss.ts";
import { createStep, type LateralSteps, type Step, stepUp } from "./step-up.ts";

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
export function findTail(
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
