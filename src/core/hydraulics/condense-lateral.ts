import { guessTail, type Tail, tailAt } from "./find-tail.ts";
import type { Lateral } from "./lateral.ts";
import type { LateralCurve } from "./outlet.ts";
import { lateralSteps } from "./step-up.ts";

/** Off by so much of its pressure at the tee, a flow is put right straight: what curves is some millionths then. */
const off_ratio = 2e-3;

/**
 * A whole lateral as one outlet: its flow by the total head at its tee, between two heads, as the Chebyshev polynomial through its flow at the
 * Chebyshev points of that range. Degree 6 is within 3e-6 of the flow over 8 to 22 m where every emitter gets water; below that it is a guide.
 */
export function condenseLateral(lateral: Lateral, lowest_m: number, highest_m: number, degree = 6): LateralCurve {
  const steps = lateralSteps(lateral);
  const points = degree + 1;
  const flow_lps: number[] = [];
  const inlets_m = Array.from({ length: points }, (_, k) => {
    const x = Math.cos((Math.PI * (k + 0.5)) / points);
    return lowest_m + ((x + 1) / 2) * (highest_m - lowest_m);
  });
  let before: TailAt | null = null;
  let last: TailAt | null = null;
  for (const inlet_m of inlets_m) {
    const start_m: number = last === null ? guessTail(steps, inlet_m) : nextTail(before, last, inlet_m);
    const off_m = Math.max(off_ratio * (inlet_m - steps.mean_m), 1e-9);
    const tail = tailAt(steps, inlet_m, start_m, off_m);
    before = last;
    last = { ...tail, inlet_m };
    flow_lps.push(tail.flow_lps);
  }
  const coefficients = flow_lps.map((_, j) => {
    const sum = flow_lps.reduce((so, flow, k) => so + flow * Math.cos((Math.PI * j * (k + 0.5)) / points), 0);
    return ((j === 0 ? 1 : 2) / points) * sum;
  });
  return { kind: "lateral", lowest_m, highest_m, coefficients };
}

interface TailAt extends Tail {
  readonly inlet_m: number;
}

/** The next head at the end, by the curve through the last two and their slopes. */
function nextTail(before: TailAt | null, last: TailAt, inlet_m: number): number {
  const step_m = inlet_m - last.inlet_m;
  if (before === null) return last.tail_m + last.tailGrowth * step_m;
  const span_m = last.inlet_m - before.inlet_m;
  if (span_m === 0) return last.tail_m;
  const t = step_m / span_m;
  const rise_m = last.tail_m - before.tail_m;
  const straight_m = last.tailGrowth * span_m;
  const square_m = before.tailGrowth * span_m - 3 * rise_m + 2 * straight_m;
  const cube_m = before.tailGrowth * span_m - 2 * rise_m + straight_m;
  return last.tail_m + t * (straight_m + t * (square_m + t * cube_m));
}
