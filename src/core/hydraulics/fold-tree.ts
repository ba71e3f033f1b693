import { flowNear } from "./flow-near.ts";
import { jetFlow } from "./outlet-flow.ts";
import { jetAt, type PreparedNetwork } from "./prepared-network.ts";
import type { Workings } from "./workings.ts";

/**
 * From the ends to the source: straightens every outlet at its head and folds each pipe into the node it comes from, so that each node knows what flows
 * on from it by its own head. `growth / (1 + growth · slope)` and not `1 / slope`, which has no bounds where nothing flows.
 */
export function foldTree(prepared: PreparedNetwork, at: Workings): void {
  const { upstream, height_m, regulator_m } = prepared.network;
  const { head_m, closed, holds, base, growth, slope, offset, outflow } = at;
  const out = new Float64Array(2);
  base.fill(0);
  growth.fill(0);
  for (let i = head_m.length - 1; i >= 0; i--) {
    const jet = jetAt(prepared, i);
    let constant = base[i] ?? 0;
    let grows = growth[i] ?? 0;
    if (jet !== undefined && closed[i] === 0) {
      const head = head_m[i] ?? 0;
      const height = height_m[i] ?? 0;
      if (outflow === null) jetFlow(jet, head - height, height, out);
      else flowNear(jet, outflow[i] ?? 0, head - height, height, out);
      const steep = out[1] ?? 0;
      constant += (out[0] ?? 0) - steep * head;
      grows += steep;
      base[i] = constant;
      growth[i] = grows;
    }
    if (i === 0) return;
    const from = upstream[i] ?? 0;
    const share = 1 / (1 + grows * (slope[i] ?? 0));
    const folded = (constant + grows * (offset[i] ?? 0)) * share;
    if (holds[i] === 1) {
      const held_m = (height_m[from] ?? 0) + (regulator_m[i] ?? 0);
      base[from] = (base[from] ?? 0) + folded + grows * share * held_m;
    } else {
      base[from] = (base[from] ?? 0) + folded;
      growth[from] = (growth[from] ?? 0) + grows * share;
    }
  }
}
