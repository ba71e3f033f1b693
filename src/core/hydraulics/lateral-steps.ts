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
  const { law, roughness, viscosity_m2ps } = lateral;
  return {
    lateral,
    hose: boreOf({ law, inside_mm: lateral.hoseInside_mm, roughness, viscosity_m2ps }),
    riser: boreOf({ law, inside_mm: lateral.riserInside_mm, roughness, viscosity_m2ps }),
    jet: jetOf(lateral.emitter),
    lowest_m: lateral.height_m.reduce((least, height_m) => Math.min(least, height_m), Number.POSITIVE_INFINITY),
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
    if (head_m !== null) head_m[i] = head;
    if (head > height) {
      jetFlow(jet, head - height, height, out);
      const leaves = out[0] ?? 0;
      flow += leaves;
      flowGrowth += (out[1] ?? 0) * growth;
      if (outflow_lps !== null) outflow_lps[i] = leaves;
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
  return stateAt(lateralSteps(lateral), tail_m);
}

/** The lateral with a total head given at its tee, m. Emitters above the water's reach get none. */
export function lateralAt(lateral: Lateral, inlet_m: number): LateralState {
  const steps = lateralSteps(lateral);
  return { ...stateAt(steps, tailAt(steps, inlet_m, inlet_m).tail_m), inlet_m };
}

function stateAt(steps: LateralSteps, tail_m: number): LateralState {
  const count = steps.lateral.at_m.length;
  const head_m = new Float64Array(count);
  const outflow_lps = new Float64Array(count);
  const step: Step = { inlet_m: 0, inletGrowth: 0, flow_lps: 0, flowGrowth: 0 };
  stepUp(steps, tail_m, step, head_m, outflow_lps);
  return { inlet_m: step.inlet_m, flow_lps: step.flow_lps, head_m, outflow_lps };
}

/** Total head at the last emitter that brings a total head at the tee, and the flow then. */
export interface Tail {
  readonly tail_m: number;
  readonly flow_lps: number;
  /** By how much the flow grows with the head at the tee, L/s per m. */
  readonly growth: number;
}

/**
 * Finds the head at the last emitter by Newton's rule, and by halves where that leads out of the bounds: the head at the tee rises with the head at
 * the end, is never below it, and is equal to it when no emitter gets water.
 */
export function tailAt(steps: LateralSteps, inlet_m: number, start_m: number): Tail {
  const step: Step = { inlet_m: 0, inletGrowth: 0, flow_lps: 0, flowGrowth: 0 };
  let low = Math.min(steps.lowest_m, inlet_m);
  let high = inlet_m;
  let tail_m = Math.min(high, Math.max(low, start_m));
  for (let round = 0; round < 100; round++) {
    stepUp(steps, tail_m, step, null, null);
    const over_m = step.inlet_m - inlet_m;
    if (Math.abs(over_m) < 1e-10) break;
    if (over_m > 0) high = tail_m;
    else low = tail_m;
    if (high - low < 1e-12) break;
    const next = tail_m - over_m / step.inletGrowth;
    tail_m = next > low && next < high ? next : (low + high) / 2;
  }
  return { tail_m, flow_lps: step.flow_lps, growth: step.flowGrowth / step.inletGrowth };
}
