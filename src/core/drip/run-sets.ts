import type { Lateral, LateralState } from "../hydraulics/lateral.ts";
import { lateralFlow_lps } from "../hydraulics/lateral-curve.ts";
import { lateralAt } from "../hydraulics/lateral-steps.ts";
import type { Network, Solution, SupplyCurve } from "../hydraulics/network.ts";
import type { LateralCurve, Outlet } from "../hydraulics/outlet.ts";
import { solveNetwork } from "../hydraulics/solve-network.ts";
import type { SetTree } from "./set-lines.ts";

/** A set while it runs. */
export interface RunningSet {
  readonly solution: Solution;
  /** By lateral of the job, those of the set. */
  readonly laterals: ReadonlyMap<number, LateralState>;
}

const mostRounds = 12;
/** Share of its flow by which a lateral may differ from what the pipes were solved with. */
const settled_ratio = 1e-7;
const settled_lps = 1e-9;

/**
 * A set with every emitter of its own: the pipes are solved with laterals as single outlets, each lateral is stepped through at the head it gets, an
 * outlet that differs from that is put right at that head, and again until none differs.
 */
export function runSet(
  network: Network,
  tree: SetTree,
  supply: SupplyCurve,
  laterals: (lateral: number) => Lateral,
  start: Solution | undefined,
): RunningSet {
  const outlets: Outlet[] = [...network.outlets];
  let solution = start;
  let before: ReadonlyMap<number, LateralState> = new Map();
  for (let round = 1; ; round++) {
    solution = solveNetwork({ ...network, outlets }, supply, solution);
    const states = new Map<number, LateralState>();
    let isSettled = true;
    for (const [node, lateral] of tree.lateral.entries()) {
      if (lateral < 0) continue;
      const inlet_m = Number(solution.head_m[node]);
      const own = laterals(lateral);
      const state = lateralAt(own, inlet_m, before.get(lateral)?.head_m.at(-1));
      states.set(lateral, state);
      const index = Number(network.outlet[node]);
      const curve = outlets[index];
      if (curve?.kind !== "lateral") continue;
      const off_lps = state.flow_lps - lateralFlow_lps(curve, inlet_m);
      if (Math.abs(off_lps) <= settled_ratio * state.flow_lps + settled_lps) continue;
      isSettled = false;
      outlets[index] = straightened(state);
    }
    before = states;
    if (isSettled || round === mostRounds) {
      return { solution: { ...solution, isSettled: solution.isSettled && isSettled }, laterals: states };
    }
  }
}

/** The lateral as an outlet whose flow grows evenly with the head, right at the head it has. */
function straightened({ inlet_m, flow_lps, growth }: LateralState): LateralCurve {
  return { kind: "lateral", lowest_m: inlet_m - 1, highest_m: inlet_m + 1, coefficients: [flow_lps, growth] };
}
