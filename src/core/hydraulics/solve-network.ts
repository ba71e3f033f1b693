import type { Network, Solution, SupplyCurve } from "./network.ts";
import { createWorkings, foldTree, straightenPipes, unfoldTree, type Workings } from "./newton-pass.ts";
import { jetFlow } from "./outlet-flow.ts";
import { type PreparedNetwork, prepareNetwork } from "./prepared-network.ts";
import { startNetwork } from "./start-of-network.ts";

/** Newton's rule doubles the right places each round: heads that still changed by this in a second round are right to some thousandths of a millimetre. */
const settled_m = 2e-2;
const settledAtOnce_m = 1e-4;
/** Where outlets are dry it counts which: a hair of pressure is a flow. */
const settledDry_m = 1e-5;
/** Nearer than this it is worth seeing which outlets are dry. */
const near_m = 1;
const mostRounds = 120;

/**
 * Heads and flows of a tree at a source, from a solution nearby if there is one. Newton's rule on all pipes and outlets at once, solved exactly on the
 * tree from its ends to the source and back, without a matrix. Outlets that would draw water in are closed, and opened again when pressure is back.
 */
export function solveNetwork(network: Network, supply: SupplyCurve, start?: Solution): Solution {
  const prepared = prepareNetwork(network);
  const at = createWorkings(network.upstream.length);
  startNetwork(prepared, supply, at, start);
  let rounds = 0;
  let isSettled = false;
  while (!isSettled && rounds < mostRounds) {
    if (rounds > 0) straightenPipes(prepared, at);
    foldTree(prepared, at);
    const change_m = unfoldTree(prepared, supply, at, stepOf(rounds), rounds >= 5);
    rounds++;
    const turned = prepared.hasRegulators && turnRegulators(prepared, at);
    if (turned || change_m > near_m) continue;
    const dry = turnOutlets(prepared, at, rounds);
    const enough_m = rounds === 1 ? settledAtOnce_m : settled_m;
    isSettled = !dry.turned && change_m < (dry.closed > 0 ? settledDry_m : enough_m);
  }
  return finished(prepared, at, rounds, isSettled);
}

/** Whole steps at first; a solver that goes to and fro is calmed by shorter ones. */
function stepOf(rounds: number): number {
  return rounds < 15 || rounds % 3 === 0 ? 1 : 0.5;
}

/** Regulators hold where more pressure arrives than they let through. Says whether any has changed. */
function turnRegulators({ network }: PreparedNetwork, { head_m, holds }: Workings): boolean {
  const { regulator_m, upstream, height_m } = network;
  let turned = false;
  for (let i = 1; i < holds.length; i++) {
    const most_m = regulator_m[i] ?? Number.NaN;
    if (Number.isNaN(most_m)) continue;
    const from = upstream[i] ?? 0;
    const now = (head_m[from] ?? 0) > (height_m[from] ?? 0) + most_m ? 1 : 0;
    if (now !== holds[i]) turned = true;
    holds[i] = now;
  }
  return turned;
}

/** Closes outlets without pressure and opens closed ones with it, after many rounds only the first. Counts the closed ones, and says whether any has changed. */
function turnOutlets({ network, jets }: PreparedNetwork, { head_m, closed }: Workings, rounds: number) {
  const { outlet, height_m } = network;
  const out = new Float64Array(2);
  let turned = false;
  let count = 0;
  for (let i = 0; i < closed.length; i++) {
    const jet = jets[outlet[i] ?? -1];
    if (jet === undefined) continue;
    const pressure_m = (head_m[i] ?? 0) - (height_m[i] ?? 0);
    let isDry = pressure_m < 0;
    if (jet.curve !== null) {
      jetFlow(jet, pressure_m, height_m[i] ?? 0, out);
      isDry = (out[0] ?? 0) < 0;
    }
    const wasDry = closed[i] === 1;
    if (isDry || wasDry) count++;
    if (isDry === wasDry || (wasDry && (rounds > mostRounds / 2 || pressure_m < 1e-6))) continue;
    closed[i] = isDry ? 1 : 0;
    turned = true;
  }
  return { turned, closed: count };
}

/** Outflows by the heads that were found, and flows that add up to them at every node. */
function finished(
  { network, jets }: PreparedNetwork,
  { head_m, closed }: Workings,
  rounds: number,
  isSettled: boolean,
): Solution {
  const { upstream, height_m, outlet } = network;
  const outflow_lps = new Float64Array(head_m.length);
  const flow_lps = new Float64Array(head_m.length);
  const out = new Float64Array(2);
  let dry = 0;
  for (let i = head_m.length - 1; i >= 0; i--) {
    const jet = jets[outlet[i] ?? -1];
    if (jet !== undefined) {
      const height = height_m[i] ?? 0;
      jetFlow(jet, (head_m[i] ?? 0) - height, height, out);
      const leaves = closed[i] === 1 ? 0 : Math.max(0, out[0] ?? 0);
      if (leaves === 0) dry++;
      outflow_lps[i] = leaves;
      flow_lps[i] = (flow_lps[i] ?? 0) + leaves;
    }
    const from = upstream[i] ?? -1;
    if (from >= 0) flow_lps[from] = (flow_lps[from] ?? 0) + (flow_lps[i] ?? 0);
  }
  return { head_m, flow_lps, outflow_lps, dry, rounds, isSettled };
}
