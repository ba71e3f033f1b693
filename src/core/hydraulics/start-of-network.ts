import type { Solution, SupplyCurve } from "./network.ts";
import { straightenPipes, type Workings } from "./newton-pass.ts";
import { jetFlow } from "./outlet-flow.ts";
import type { PreparedNetwork } from "./prepared-network.ts";

/**
 * Sets a solver at its start: where a solution is given, there; else every outlet at 70 % of the head there is at the source, and all flows scaled
 * down so that friction along no way takes more than half of it.
 */
export function startNetwork(
  prepared: PreparedNetwork,
  supply: SupplyCurve,
  at: Workings,
  start: Solution | undefined,
): void {
  const { network, jets } = prepared;
  const { upstream, height_m, outlet } = network;
  const { head_m, flow_lps, base } = at;
  if (start !== undefined && start.head_m.length === head_m.length) {
    head_m.set(start.head_m);
    flow_lps.set(start.flow_lps);
    straightenPipes(prepared, at);
    return;
  }
  const out = new Float64Array(2);
  const [source_m = 0] = supply.head_m;
  for (let i = head_m.length - 1; i >= 0; i--) {
    const height = height_m[i] ?? 0;
    const head = height + 0.7 * (source_m - height);
    head_m[i] = head;
    const jet = jets[outlet[i] ?? -1];
    if (jet !== undefined && head > height) {
      jetFlow(jet, head - height, height, out);
      flow_lps[i] = (flow_lps[i] ?? 0) + Math.max(0, out[0] ?? 0);
    }
    const from = upstream[i] ?? -1;
    if (from >= 0) flow_lps[from] = (flow_lps[from] ?? 0) + (flow_lps[i] ?? 0);
  }
  straightenPipes(prepared, at);
  let excess = 1;
  for (let i = 1; i < head_m.length; i++) {
    const lost_m = (at.slope[i] ?? 0) * (flow_lps[i] ?? 0) - (at.offset[i] ?? 0) + (base[upstream[i] ?? 0] ?? 0);
    base[i] = lost_m;
    excess = Math.max(excess, lost_m / Math.max(0.5 * (source_m - (height_m[i] ?? 0)), 1e-3));
  }
  if (excess === 1) return;
  const scale = excess ** (-1 / 1.8);
  for (let i = 0; i < flow_lps.length; i++) flow_lps[i] = (flow_lps[i] ?? 0) * scale;
  straightenPipes(prepared, at);
}
