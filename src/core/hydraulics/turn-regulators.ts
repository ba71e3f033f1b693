import type { PreparedNetwork } from "./prepared-network.ts";
import type { Workings } from "./workings.ts";

/** Regulators hold where more pressure arrives than they let through. Says whether any has changed. */
export function turnRegulators({ network }: PreparedNetwork, { head_m, holds }: Workings): boolean {
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
