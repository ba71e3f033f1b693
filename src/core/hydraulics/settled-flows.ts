import type { Solution } from "./network.ts";
import { jetFlow } from "./outlet-flow.ts";
import { jetAt, type PreparedNetwork } from "./prepared-network.ts";
import type { Workings } from "./workings.ts";

/** Outflows by the heads that were found, flows that add up to them at every node, and how far those are from what the solver took. */
export interface SettledFlows extends Pick<Solution, "flow_lps" | "outflow_lps" | "dry"> {
  /** What that shifts a head in a pipe at most. */
  readonly off_m: number;
  /** At most, as a share of a flow. */
  readonly off_ratio: number;
}

/** Flows for the heads that were found. */
export function settledFlows(prepared: PreparedNetwork, at: Workings): SettledFlows {
  const { head_m, closed, outflow, slope } = at;
  const { upstream, height_m } = prepared.network;
  const outflow_lps = new Float64Array(head_m.length);
  const flow_lps = new Float64Array(head_m.length);
  const out = new Float64Array(2);
  let dry = 0;
  let off_m = 0;
  let off_ratio = 0;
  for (let i = head_m.length - 1; i >= 0; i--) {
    const jet = jetAt(prepared, i);
    let flow = flow_lps[i] ?? 0;
    if (jet !== undefined) {
      let leaves = 0;
      if (closed[i] === 0) {
        const height = height_m[i] ?? 0;
        if (outflow === null || jet.curve !== null) jetFlow(jet, (head_m[i] ?? 0) - height, height, out);
        else out[0] = outflow[i] ?? 0;
        leaves = Math.max(0, out[0] ?? 0);
      }
      if (leaves === 0) dry++;
      outflow_lps[i] = leaves;
      flow += leaves;
      flow_lps[i] = flow;
    }
    const off = Math.abs(flow - (at.flow_lps[i] ?? 0));
    if (off > off_ratio * flow) off_ratio = off / Math.max(flow, 1e-12);
    if (off * (slope[i] ?? 0) > off_m) off_m = off * (slope[i] ?? 0);
    const from = upstream[i] ?? -1;
    if (from >= 0) flow_lps[from] = (flow_lps[from] ?? 0) + flow;
  }
  return { flow_lps, outflow_lps, dry, off_m, off_ratio };
}
