/** Where a solver is: its heads and flows, which outlets are closed and which regulators hold, and room to work in. All by node. */
export interface Workings {
  readonly head_m: Float64Array;
  readonly flow_lps: Float64Array;
  /** 1: gets no water. */
  readonly closed: Uint8Array;
  /** 1: the regulator at the upstream end of the pipe holds the pressure down. */
  readonly holds: Uint8Array;
  /** What flows on from the node, as base + growth · head. */
  readonly base: Float64Array;
  readonly growth: Float64Array;
  /** A pipe's loss near its flow, as slope · flow - offset. */
  readonly slope: Float64Array;
  readonly offset: Float64Array;
  /** What leaves, while outlets are straightened at their flow rather than at their head; else null. */
  outflow: Float64Array | null;
  /** The most that a flow has changed in the last round, as a share of it. */
  shift_ratio: number;
}

/** Room for a network of so many nodes. */
export function createWorkings(nodes: number): Workings {
  return {
    head_m: new Float64Array(nodes),
    flow_lps: new Float64Array(nodes),
    closed: new Uint8Array(nodes),
    holds: new Uint8Array(nodes),
    base: new Float64Array(nodes),
    growth: new Float64Array(nodes),
    slope: new Float64Array(nodes),
    offset: new Float64Array(nodes),
    outflow: null,
    shift_ratio: 0,
  };
}
