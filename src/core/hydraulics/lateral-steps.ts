import { findTail, guessTail } from "./find-tail.ts";
import type { Lateral, LateralState } from "./lateral.ts";
import { createStep, lateralSteps, stepUp } from "./step-up.ts";

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

function roomFor({ at_m }: Lateral): readonly [head_m: Float64Array, outflow_lps: Float64Array] {
  return [new Float64Array(at_m.length), new Float64Array(at_m.length)];
}
