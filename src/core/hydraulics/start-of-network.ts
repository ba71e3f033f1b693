import type { Solution, SupplyCurve } from "./network.ts";
import { type Jet, jetFlow } from "./outlet-flow.ts";
import { jetAt, type PreparedNetwork } from "./prepared-network.ts";
import { supplyHead_m } from "./read-supply.ts";
import { straightenPipes } from "./straighten-pipes.ts";
import type { Workings } from "./workings.ts";

/** Share of the head at the source that outlets are first taken to have. */
const share = 0.7;

/**
 * Sets a solver at its start. With a solution nearby: there. Else every outlet is taken to have 70 % of the head at the source, all flows are scaled
 * down until the source can give them and no way loses more than half the head, and heads follow from what those flows lose.
 */
export function startNetwork(
  prepared: PreparedNetwork,
  supply: SupplyCurve,
  at: Workings,
  start: Solution | undefined,
): void {
  const { head_m, flow_lps, closed } = at;
  if (start !== undefined && start.head_m.length === head_m.length) {
    head_m.set(start.head_m);
    flow_lps.set(start.flow_lps);
    const { height_m } = prepared.network;
    for (let i = 0; i < closed.length; i++) {
      if (start.outflow_lps[i] === 0 && (head_m[i] ?? 0) < (height_m[i] ?? 0)) closed[i] = 1;
    }
    straightenPipes(prepared, at);
    return;
  }
  const [still_m = 0] = supply.head_m;
  wantedFlows(prepared, still_m, at);
  const given = shareGiven(supply, flow_lps[0] ?? 0);
  scale(flow_lps, given);
  straightenPipes(prepared, at);
  const source_m = supplyHead_m(supply, flow_lps[0] ?? 0);
  const excess = lostOnTheWay(prepared, source_m, at);
  if (excess > 1) {
    scale(flow_lps, excess ** (-1 / 1.8));
    straightenPipes(prepared, at);
  }
  head_m[0] = source_m;
  for (let i = 1; i < head_m.length; i++) head_m[i] = source_m - (head_m[i] ?? 0) / excess;
}

/** Flows when every outlet has its share of a head. */
function wantedFlows(prepared: PreparedNetwork, source_m: number, { flow_lps }: Workings): void {
  const { upstream, height_m } = prepared.network;
  const out = new Float64Array(2);
  let lastJet: Jet | undefined;
  let lastHeight_m = Number.NaN;
  for (let i = flow_lps.length - 1; i >= 0; i--) {
    const height = height_m[i] ?? 0;
    const jet = jetAt(prepared, i);
    if (jet !== undefined && source_m > height) {
      // On level ground it is the same for all outlets of a kind.
      if (jet !== lastJet || height !== lastHeight_m) jetFlow(jet, share * (source_m - height), height, out);
      lastJet = jet;
      lastHeight_m = height;
      flow_lps[i] = (flow_lps[i] ?? 0) + Math.max(0, out[0] ?? 0);
    }
    const from = upstream[i] ?? -1;
    if (from >= 0) flow_lps[from] = (flow_lps[from] ?? 0) + (flow_lps[i] ?? 0);
  }
}

/** Share of a flow that a source gives, flow taken to grow with the root of the head. */
function shareGiven(supply: SupplyCurve, wanted_lps: number): number {
  const [still_m = 0] = supply.head_m;
  if (supply.head_m.length < 2 || still_m <= 0) return 1;
  let low = 0;
  let high = 1;
  for (let k = 0; k < 20; k++) {
    const middle = (low + high) / 2;
    if (supplyHead_m(supply, middle * wanted_lps) > still_m * middle ** 2) low = middle;
    else high = middle;
  }
  return high;
}

/** Writes what is lost on the way to each node where its head is to stand; gives how many times too much that is at worst, at least 1. */
function lostOnTheWay({ network }: PreparedNetwork, source_m: number, at: Workings): number {
  const { upstream, height_m } = network;
  const { head_m, flow_lps, slope, offset } = at;
  let excess = 1;
  head_m[0] = 0;
  for (let i = 1; i < head_m.length; i++) {
    const lost_m = (slope[i] ?? 0) * (flow_lps[i] ?? 0) - (offset[i] ?? 0) + (head_m[upstream[i] ?? 0] ?? 0);
    head_m[i] = lost_m;
    const bearable_m = Math.max(0.5 * (source_m - (height_m[i] ?? 0)), 0.1 * Math.abs(source_m), 1e-3);
    if (lost_m > excess * bearable_m) excess = lost_m / bearable_m;
  }
  return excess;
}

function scale(flow_lps: Float64Array, by: number): void {
  if (by === 1) return;
  for (let i = 0; i < flow_lps.length; i++) flow_lps[i] = (flow_lps[i] ?? 0) * by;
}
