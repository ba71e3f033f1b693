import { foldTree } from "./fold-tree.ts";
import { leap_ratios } from "./friction-factor.ts";
import type { Network, Solution, SupplyCurve } from "./network.ts";
import { jetFlow } from "./outlet-flow.ts";
import { jetAt, type PreparedNetwork, prepareNetwork } from "./prepared-network.ts";
import { settledFlows } from "./settled-flows.ts";
import { startNetwork } from "./start-of-network.ts";
import { straightenPipes } from "./straighten-pipes.ts";
import { turnOutlets } from "./turn-outlets.ts";
import { turnRegulators } from "./turn-regulators.ts";
import { unfoldTree } from "./unfold-tree.ts";
import { createWorkings, type Workings } from "./workings.ts";

/** Newton's rule doubles the right places each round: heads that still changed by this in a second round are right to well below a millimetre. */
const settled_m = 2e-2;
/** Where outlets are dry: a hair of pressure is a flow. */
const settledDry_m = 1e-5;
/** After the first round, which starts from no more than a guess, flows must hardly have changed, and hold. */
const mostShiftAtOnce_ratio = 2e-3;
const mostOffAtOnce_ratio = 1e-5;
/** Heads may be off by what flows are off, at most so much in a pipe. */
const mostOff_m = 1e-4;
/** Nearer than this it is worth seeing which outlets are dry. */
const near_m = 1;
/** A solver that has not settled by then goes on with more care. */
const carefulRounds = 12;
const calmRounds = 40;
const mostRounds = 120;

/**
 * Heads and flows of a tree at a source, from a solution nearby if there is one. Newton's rule on all pipes and outlets at once, solved exactly on the
 * tree from its ends to the source and back, without a matrix. Outlets that would draw water in are closed, and opened again when pressure is back.
 */
export function solveNetwork(network: Network, supply: SupplyCurve, start?: Solution): Solution {
  let rounds = 0;
  let answer: Solution | undefined;
  for (const leap_ratio of leap_ratios) {
    const prepared = prepareNetwork(network, leap_ratio);
    answer = solve(prepared, supply, answer === undefined ? start : undefined);
    rounds += answer.rounds;
    if (answer.isSettled || !prepared.hasLeaps) break;
  }
  if (answer === undefined) throw new Error("no law of friction was tried");
  return { ...answer, rounds };
}

function solve(prepared: PreparedNetwork, supply: SupplyCurve, start: Solution | undefined): Solution {
  const at = createWorkings(prepared.network.upstream.length);
  startNetwork(prepared, supply, at, start);
  for (let rounds = 1; ; rounds++) {
    if (rounds > 1) straightenPipes(prepared, at);
    if (rounds === carefulRounds) at.outflow = outflowsNow(prepared, at);
    foldTree(prepared, at);
    const change_m = unfoldTree(prepared, supply, at, rounds < calmRounds ? 1 : 0.6, rounds > 5);
    if (rounds === mostRounds) return solution(settledFlows(prepared, at), at, rounds, false);
    if (prepared.hasRegulators && turnRegulators(prepared, at)) continue;
    if (change_m > near_m) continue;
    const dry = turnOutlets(prepared, at);
    const enough_m = at.outflow !== null || dry.closed > 0 ? settledDry_m : settled_m;
    if (dry.turned || change_m >= enough_m) continue;
    if (rounds === 1 && at.shift_ratio > mostShiftAtOnce_ratio) continue;
    const flows = settledFlows(prepared, at);
    if (rounds === 1 && flows.off_ratio > mostOffAtOnce_ratio) continue;
    if (flows.off_m < mostOff_m) return solution(flows, at, rounds, true);
  }
}

/** Outflows at the heads there are. */
function outflowsNow(prepared: PreparedNetwork, { head_m, closed }: Workings): Float64Array {
  const { height_m } = prepared.network;
  const out = new Float64Array(2);
  return head_m.map((head, i) => {
    const jet = jetAt(prepared, i);
    const height = height_m[i] ?? 0;
    if (jet === undefined || closed[i] === 1 || head <= height) return 0;
    jetFlow(jet, head - height, height, out);
    return out[0] ?? 0;
  });
}

function solution(
  { flow_lps, outflow_lps, dry }: ReturnType<typeof settledFlows>,
  { head_m }: Workings,
  rounds: number,
  isSettled: boolean,
): Solution {
  return { head_m, flow_lps, outflow_lps, dry, rounds, isSettled };
}
