import type { Bore } from "./bore.ts";
import { flowNear } from "./flow-near.ts";
import type { SupplyCurve } from "./network.ts";
import { jetAt, type PreparedNetwork } from "./prepared-network.ts";
import { meetSupply } from "./read-supply.ts";
import type { Workings } from "./workings.ts";

/**
 * From the source to the ends: new heads and flows, the way to them cut down to `step`. Gives the most that a head has changed, m; without bounds where
 * a flow went past the leap from laminar flow. Where `stopsAtLeap` such a flow stops in it, for else it could jump to and fro without end.
 */
export function unfoldTree(
  prepared: PreparedNetwork,
  supply: SupplyCurve,
  at: Workings,
  step: number,
  stopsAtLeap: boolean,
): number {
  const { bore, bores, hasLeaps, network } = prepared;
  const { upstream, height_m, regulator_m } = network;
  const { head_m, flow_lps, holds, base, growth, slope, offset, closed, outflow } = at;
  const out = new Float64Array(2);
  meetSupply(supply, base[0] ?? 0, growth[0] ?? 0, out);
  let most_m = Math.abs((out[0] ?? 0) - (head_m[0] ?? 0));
  let shift_ratio = 0;
  head_m[0] = out[0] ?? 0;
  flow_lps[0] = out[1] ?? 0;
  for (let i = 1; i < head_m.length; i++) {
    const from = upstream[i] ?? 0;
    const enters_m = holds[i] === 1 ? (height_m[from] ?? 0) + (regulator_m[i] ?? 0) : (head_m[from] ?? 0);
    const constant = base[i] ?? 0;
    const grows = growth[i] ?? 0;
    const steep = slope[i] ?? 0;
    const drive = enters_m + (offset[i] ?? 0);
    const share = 1 / (1 + grows * steep);
    const before = head_m[i] ?? 0;
    const change = (drive - steep * constant) * share - before;
    const size = Math.abs(change);
    if (size > most_m) most_m = size;
    head_m[i] = before + step * change;
    if (outflow !== null && closed[i] === 0) {
      const jet = jetAt(prepared, i);
      if (jet !== undefined) {
        const height = height_m[i] ?? 0;
        flowNear(jet, outflow[i] ?? 0, before - height, height, out);
        outflow[i] = (out[0] ?? 0) + (out[1] ?? 0) * step * change;
      }
    }
    const old = flow_lps[i] ?? 0;
    const flow = old + step * ((constant + grows * drive) * share - old);
    flow_lps[i] = flow;
    const shift = Math.abs(flow - old);
    if (shift > shift_ratio * Math.abs(flow)) shift_ratio = shift / Math.max(Math.abs(flow), 1e-12);
    if (hasLeaps) {
      const kind = bores[bore[i] ?? 0];
      if (kind === undefined || kind.law !== 0) continue;
      const was = side(kind, old);
      const is = side(kind, flow);
      if (was === is) continue;
      most_m = Number.POSITIVE_INFINITY;
      if (stopsAtLeap && was + is === 0) flow_lps[i] = Math.sign(flow) * (kind.laminar_lps + kind.turbulent_lps) * 0.5;
    }
  }
  at.shift_ratio = shift_ratio;
  return most_m;
}

/** -1 where a flow is laminar, 1 where it is past the leap from it, 0 within. */
function side({ laminar_lps, turbulent_lps }: Bore, flow_lps: number): number {
  const size = Math.abs(flow_lps);
  if (size < laminar_lps) return -1;
  return size > turbulent_lps ? 1 : 0;
}
