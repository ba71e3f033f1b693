import type { Network, Solution, SupplyCurve } from "./network.ts";

/** Heads and flows of a tree at a source. */
export function solveNetwork(_network: Network, _supply: SupplyCurve, _start?: Solution): Solution {
  throw new Error("not there yet");
}
