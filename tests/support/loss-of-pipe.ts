import {
  betweenFactor,
  blasiusFactor,
  laminarFactor,
  swameeJainFactor,
} from "../../src/core/hydraulics/friction-factor.ts";
import type { Network } from "../../src/core/hydraulics/network.ts";

/**
 * What the pipe to a node loses at a flow, m, by the formulas as textbooks write them: friction factor, velocity and length. Not the solver's own way,
 * so that one can be held against the other.
 */
export function lossOfPipe_m(network: Network, node: number, flow_lps: number): number {
  const inside_m = (network.inside_mm[node] ?? 0) / 1000;
  const length_m = network.length_m[node] ?? 0;
  const roughness = network.roughness[node] ?? 0;
  const law = network.law[node] ?? 0;
  const velocity = flow_lps / 1000 / ((Math.PI / 4) * inside_m ** 2);
  const gravity = law === 2 ? 32.2 * 0.3048 : 9.80665;
  const velocityHead_m = velocity ** 2 / (2 * gravity);
  const fittings_m = (network.minor[node] ?? 0) * velocityHead_m;
  if (law === 1) return fittings_m + 10.667 * length_m * (flow_lps / 1000 / roughness) ** 1.852 * inside_m ** -4.871;
  const reynolds = (velocity * inside_m) / network.viscosity_m2ps;
  if (reynolds === 0) return 0;
  const share = roughness / 1000 / inside_m;
  const factor =
    reynolds <= 2000
      ? laminarFactor(reynolds)
      : law === 0
        ? blasiusFactor(reynolds)
        : reynolds < 4000
          ? betweenFactor(reynolds, share)
          : swameeJainFactor(reynolds, share);
  return fittings_m + (factor * length_m * velocityHead_m) / inside_m;
}
