import { type Jet, jetFlow, straight_m } from "./outlet-flow.ts";

/**
 * As `jetFlow`, but straightened where the outlet's flow is, not where its head is: next to no pressure the flow grows so fast with the head that a
 * solver jumps over the answer and back, while the head by the flow is flat and smooth there. Lateral curves, and compensating emitters within their
 * range, stay with the head.
 */
export function flowNear(jet: Jet, flow_lps: number, pressure_m: number, height_m: number, out: Float64Array): void {
  if (jet.curve !== null || (jet.from_m > 0 && pressure_m >= jet.from_m)) {
    jetFlow(jet, pressure_m, height_m, out);
    return;
  }
  const size = Math.abs(flow_lps);
  let head = size / jet.straightSlope;
  let steep = 1 / jet.straightSlope;
  if (head > straight_m) {
    const isLow = jet.isRoot || jet.from_m > 0;
    const power = isLow ? 2 : 1 / jet.exponent;
    const factor = jet.from_m > 0 ? jet.lowFactor : jet.factor;
    head = (size / factor) ** power;
    steep = (power * head) / size;
  }
  out[0] = flow_lps + (pressure_m - (flow_lps < 0 ? -head : head)) / steep;
  out[1] = 1 / steep;
}
