import { jetFlow } from "./outlet-flow.ts";
import { jetAt, type PreparedNetwork } from "./prepared-network.ts";
import type { Workings } from "./workings.ts";

/** Pressure that opens a closed outlet again. */
const opening_m = 1e-6;

/** Closes outlets that would draw water in, and opens closed ones where there is pressure. Counts the closed, and says whether any has changed. */
export function turnOutlets(prepared: PreparedNetwork, { head_m, closed, outflow }: Workings) {
  const { height_m } = prepared.network;
  const out = new Float64Array(2);
  let turned = false;
  let count = 0;
  for (let i = 0; i < closed.length; i++) {
    const jet = jetAt(prepared, i);
    if (jet === undefined) continue;
    const height = height_m[i] ?? 0;
    const pressure_m = (head_m[i] ?? 0) - height;
    const wasClosed = closed[i] === 1;
    let isClosed = wasClosed ? pressure_m < opening_m : pressure_m < 0;
    if (jet.curve !== null) {
      jetFlow(jet, pressure_m, height, out);
      isClosed = (out[0] ?? 0) < 0;
    } else if (outflow !== null && !wasClosed) {
      isClosed = (outflow[i] ?? 0) < 0;
    }
    if (isClosed) count++;
    if (isClosed === wasClosed) continue;
    if (outflow !== null) outflow[i] = 0;
    closed[i] = isClosed ? 1 : 0;
    turned = true;
  }
  return { turned, closed: count };
}
