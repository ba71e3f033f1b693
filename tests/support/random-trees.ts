import type { Network, SupplyCurve } from "../../src/core/hydraulics/network.ts";
import { createEmitter, createNetwork, createSupply, createSupplyCurve, type PipeWish } from "./create-network.ts";
import { epanetViscosity_m2ps } from "./epanet.ts";
import { between, createRandom, type Random, wholeBetween } from "./random.ts";

/** A tree of pipes at a source, and how hard the source is pressed. */
export interface RandomTree {
  readonly network: Network;
  readonly supply: SupplyCurve;
  readonly load: (typeof loads)[number];
}

/** How many times the flow of the emitters is a usual one; at the last most of them run dry. */
const loads = [0.2, 1, 4, 20] as const;
const insides_mm = [13.8, 17.6, 26.2, 34.6, 45.2, 57, 81.4] as const;

/**
 * An uneven tree on uneven ground: 3 to 250 nodes, some long chains and some bushes, narrower towards the ends, some fittings, by turns with laws,
 * loads and kinds of source; each seed brings its own tree back. Both laws are EPANET's, and so is the viscosity.
 */
export function randomTree(seed: number): RandomTree {
  const random = createRandom(seed);
  const load = loads[seed % loads.length] ?? 1;
  const law = Math.floor(seed / loads.length) % 2 === 0 ? "hazen-williams" : "epanet";
  const exponent = [0.5, 0.4, 0.5, 0.6, 0.7, 1][wholeBetween(random, 0, 5)] ?? 0.5;
  const nodes = wholeBetween(random, 3, random() < 0.2 ? 250 : 60);
  const chain = random();
  const pipes: PipeWish[] = [];
  const depth = [0];
  for (let i = 1; i < nodes; i++) {
    const upstream = random() < chain ? i - 1 : wholeBetween(random, 0, i - 1);
    const level = (depth[upstream] ?? 0) + 1;
    depth.push(level);
    pipes.push({
      upstream,
      length_m: 10 ** between(random, -0.3, 1.7),
      inside_mm: insideAt(random, level),
      height_m: heightNear(random, pipes[upstream - 1]?.height_m ?? 0),
      ...(random() < 0.75 ? { outlet: wholeBetween(random, 0, 2) } : {}),
      ...(random() < 0.1 ? { minor: between(random, 0.2, 3) } : {}),
    });
  }
  const outlets = [2, 8, 60].map((flow_lph) => createEmitter(flow_lph * load, exponent));
  const network = createNetwork(pipes, { law, outlets, viscosity_m2ps: epanetViscosity_m2ps });
  return { network, supply: sourceOf(random), load };
}

function insideAt(random: Random, level: number): number {
  const widest = insides_mm.length - 1;
  const about = widest - Math.min(widest, Math.floor(level / 4)) + wholeBetween(random, -2, 0);
  return insides_mm[Math.max(0, about)] ?? 26.2;
}

function heightNear(random: Random, height_m: number): number {
  return height_m + between(random, -0.8, 0.8);
}

function sourceOf(random: Random): SupplyCurve {
  const head_m = between(random, 6, 40);
  if (random() < 0.6) return createSupply(head_m);
  const most_lps = between(random, 0.5, 6);
  return createSupplyCurve([0, 0.25, 0.5, 0.75, 1].map((x) => [x * most_lps, head_m * (1 - 0.9 * x ** 2)] as const));
}
