import type { SupplyCurve } from "./network.ts";

/** Total head, m, that a source gives at a flow, L/s: straight between the curve's points, past the last as between the last two. */
export function supplyHead_m({ flow_lps, head_m }: SupplyCurve, at_lps: number): number {
  const last = flow_lps.length - 1;
  const [first_m = 0] = head_m;
  if (last <= 0 || at_lps <= (flow_lps[0] ?? 0)) return first_m;
  let i = 1;
  while (i < last && (flow_lps[i] ?? 0) < at_lps) i++;
  const share = (at_lps - (flow_lps[i - 1] ?? 0)) / ((flow_lps[i] ?? 0) - (flow_lps[i - 1] ?? 0));
  return (head_m[i - 1] ?? 0) + share * ((head_m[i] ?? 0) - (head_m[i - 1] ?? 0));
}

/** The most flow, L/s, at which a source still gives a total head, m: none below its first point, without end where its head never falls so low. */
export function supplyFlow_lps({ flow_lps, head_m }: SupplyCurve, at_m: number): number {
  const last = flow_lps.length - 1;
  if (at_m > (head_m[0] ?? 0)) return 0;
  if (last <= 0) return Number.POSITIVE_INFINITY;
  let i = 1;
  while (i < last && (head_m[i] ?? 0) >= at_m) i++;
  const fall_m = (head_m[i - 1] ?? 0) - (head_m[i] ?? 0);
  if (fall_m <= 0) return Number.POSITIVE_INFINITY;
  const share = ((head_m[i - 1] ?? 0) - at_m) / fall_m;
  return (flow_lps[i - 1] ?? 0) + share * ((flow_lps[i] ?? 0) - (flow_lps[i - 1] ?? 0));
}

/**
 * Where a source meets a demand that grows with the head, flow = base + growth · head: total head and flow into `out`. Exact, whichever piece of the
 * curve it is on.
 */
export function meetSupply({ flow_lps, head_m }: SupplyCurve, base: number, growth: number, out: Float64Array): void {
  const last = flow_lps.length - 1;
  const [first_m = 0] = head_m;
  let i = 1;
  // Demand falls along the curve, so past a point means that there is still more wanted there than it gives.
  while (i < last && base + growth * (head_m[i] ?? 0) > (flow_lps[i] ?? 0)) i++;
  const from_lps = flow_lps[i - 1] ?? 0;
  const isLevel = last <= 0 || base + growth * first_m <= (flow_lps[0] ?? 0);
  const fall = isLevel ? 0 : ((head_m[i - 1] ?? 0) - (head_m[i] ?? 0)) / ((flow_lps[i] ?? 0) - from_lps);
  const start_m = isLevel ? first_m : (head_m[i - 1] ?? 0) + fall * from_lps;
  const head = (start_m - fall * base) / (1 + fall * growth);
  out[0] = head;
  out[1] = base + growth * head;
}
