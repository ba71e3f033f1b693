import { type Bore, boreOf } from "./bore.ts";
import type { Lateral } from "./lateral.ts";
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
export interface Step {
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
export function stepUp(
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

/** A step yet to be made. */
export function createStep(): Step {
  return { inlet_m: 0, inletGrowth: 1, flow_lps: 0, flowGrowth: 0 };
}
