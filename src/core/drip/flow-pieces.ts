import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** How the flow of an emitter lies against its nominal one. */
export const flowClasses = ["none", "far-under", "under", "even", "over", "far-over"] as const;
export type FlowClass = (typeof flowClasses)[number];

/** Shares of the nominal flow that are told apart. Common practice, no source: 10 % is what a field is commonly allowed, half of it is seen. */
export const flowSteps_ratio = { near: 0.05, far: 0.1 } as const;

/** Some rounding does not count. */
const dust = 1e-9;

/** A run of emitters of one class along a lateral, as shares of its row from the water end on. */
export interface FlowPiece {
  readonly lateral: number;
  /** Index of the row in the plan. */
  readonly row: number;
  readonly flowClass: FlowClass;
  readonly from: number;
  readonly to: number;
}

/** The class of a flow. */
export function flowClassOf(flow_lps: number, nominal_lps: number): FlowClass {
  if (flow_lps <= 0) return "none";
  const off = flow_lps / nominal_lps - 1;
  const { near, far } = flowSteps_ratio;
  if (Math.abs(off) <= near + dust) return "even";
  if (Math.abs(off) <= far + dust) return off < 0 ? "under" : "over";
  return off < 0 ? "far-under" : "far-over";
}

/**
 * The laterals cut where the class of their emitters changes, half-way between two of them; empty while no emitter's flow is known.
 * `ground_m`: length of every row of the plan along the ground, which the hose hangs over.
 */
export function flowPieces(
  { laterals, blocks }: WateringJob,
  { emitters }: Pick<Watering, "emitters">,
  ground_m: (row: number) => number,
): readonly FlowPiece[] {
  if (emitters === null) return [];
  return [...laterals.row].flatMap((row, lateral) => {
    const block = blocks[Number(laterals.block[lateral])];
    if (block === undefined) return [];
    const whole_m = ground_m(row) * (1 + block.drip.slack_ratio);
    const pieces: FlowPiece[] = [];
    const [first, end] = [Number(laterals.offsets[lateral]), Number(laterals.offsets[lateral + 1])];
    let from = 0;
    for (let e = first; e < end; e++) {
      const flowClass = flowClassOf(Number(emitters.flow_lps[e]), block.emitter.nominal_lps);
      const next = e + 1 < end ? flowClassOf(Number(emitters.flow_lps[e + 1]), block.emitter.nominal_lps) : null;
      if (next === flowClass) continue;
      const at_m = Number(laterals.at_m[e]);
      const to_m = next === null ? Number(laterals.hose_m[lateral]) : (at_m + Number(laterals.at_m[e + 1])) / 2;
      const to = Math.min(1, to_m / whole_m);
      pieces.push({ lateral, row, flowClass, from, to });
      from = to;
    }
    return pieces;
  });
}
