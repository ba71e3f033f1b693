import { pipeLoss } from "./pipe-loss.ts";
import type { PreparedNetwork } from "./prepared-network.ts";
import type { Workings } from "./workings.ts";

/** Straightens the loss of every pipe at its flow. */
export function straightenPipes(prepared: PreparedNetwork, { flow_lps, slope, offset }: Workings): void {
  const { bore, bores, hasMinor, network } = prepared;
  const { length_m, minor } = network;
  const out = new Float64Array(2);
  for (let i = 1; i < flow_lps.length; i++) {
    const kind = bores[bore[i] ?? 0];
    if (kind === undefined) continue;
    const flow = flow_lps[i] ?? 0;
    const size = Math.abs(flow);
    pipeLoss(kind, length_m[i] ?? 0, size, out);
    let loss = out[0] ?? 0;
    let steep = out[1] ?? 0;
    if (hasMinor) {
      const bend = (minor[i] ?? 0) * kind.velocityHead * size;
      loss += bend * size;
      steep += 2 * bend;
    }
    slope[i] = steep;
    offset[i] = flow < 0 ? loss + steep * flow : steep * flow - loss;
  }
}
