import { beforeAll, describe, expect, it } from "vitest";
import { lawCodes } from "../../src/core/hydraulics/friction-law.ts";
import type { Network, SupplyCurve } from "../../src/core/hydraulics/network.ts";
import { solveNetwork } from "../../src/core/hydraulics/solve-network.ts";
import { compared, treeAgainstEpanet } from "../bench/checks/trees-against-epanet.ts";
import { seedsFrom } from "../bench/checks/verdict.ts";
import {
  type BlockWish,
  blockPipes,
  createEmitter,
  createNetwork,
  createSupply,
  createSupplyCurve,
  type NetworkWish,
} from "../support/create-network.ts";
import { createEpanet, type Epanet, epanetViscosity_m2ps, type SharedLaw } from "../support/epanet.ts";

/* Heads and outflows beside EPANET's (OWA 2.3.5 through epanet-js 0.9.0), run here, by the same law of friction. */

const laws: readonly SharedLaw[] = ["hazen-williams", "epanet"];
const lateral: BlockWish = { laterals: 1, emitters: 60 };
const block: BlockWish = { laterals: 60, emitters: 60 };

let epanet: Epanet;
beforeAll(async () => {
  epanet = await createEpanet();
});

function network(wish: BlockWish, shared: Omit<NetworkWish, "viscosity_m2ps">): Network {
  return createNetwork(blockPipes(wish), { ...shared, viscosity_m2ps: epanetViscosity_m2ps });
}

/** Heads within `head_m`, outflows within a thousandth or 0.01 L/h. */
function agree(net: Network, supply: SupplyCurve, head_m: number, isStrict = false) {
  const ours = solveNetwork(net, supply);
  const { isJudged, worstHead_m, worstFlow } = compared(net, ours, epanet.solve(net, supply, isStrict));
  expect(ours.isSettled).toBe(true);
  expect(isJudged).toBe(true);
  expect(worstHead_m).toBeLessThanOrEqual(head_m);
  expect(worstFlow).toBeLessThanOrEqual(1);
  return ours;
}

describe.each(laws)("beside EPANET, %s", (law) => {
  it.each([0.4, 0.5, 0.7, 1])("a lateral with emitters of exponent %s", (exponent) => {
    agree(network(lateral, { law, outlets: [createEmitter(2, exponent)] }), createSupply(15), 1e-4);
  });

  it("a block of sixty laterals of sixty emitters, level and sloped", () => {
    agree(network(block, { law, outlets: [createEmitter(2)] }), createSupply(20), 1e-4);
    agree(network({ ...block, slope: [0.02, -0.03] }, { law, outlets: [createEmitter(2)] }), createSupply(20), 1e-4);
  });

  it("a block fed by a pump's curve of five points", () => {
    const pump = createSupplyCurve([
      [0, 40],
      [1, 38],
      [2, 33],
      [4, 20],
      [8, 5],
    ]);
    agree(network(block, { law, outlets: [createEmitter(2)] }), pump, 1e-4);
  });

  it("a block on ground so steep that the upper emitters get no water", () => {
    const steep = network({ ...block, slope: [0.1, 0.08] }, { law, outlets: [createEmitter(2)] });
    const { dry } = agree(steep, createSupply(6), 2e-3, true);
    expect(dry).toBeGreaterThan(500);
    expect(dry).toBeLessThan(3600);
  });

  it("a block of compensating emitters, all within their range", () => {
    // EPANET's leak a little above the threshold, 3.34e-4 L/h a metre; an exponent of 0.0021 grows as fast.
    agree(network(block, { law, outlets: [createEmitter(2, 0.0021, 7)] }), createSupply(20), 2e-3);
  });

  it("a block of compensating emitters, the far ones below their range", () => {
    const short = network({ ...block, mainInside_mm: 45.2 }, { law, outlets: [createEmitter(2, 0.0021, 7)] });
    const { head_m } = agree(short, createSupply(13), 2e-3);
    expect(Math.min(...head_m)).toBeLessThan(7);
    expect(Math.max(...head_m)).toBeGreaterThan(7);
  });

  it("fittings and a regulator before the submain", () => {
    const pipes = blockPipes(block).map((pipe, i) => (i === 1 ? { ...pipe, regulator_m: 12, minor: 4 } : pipe));
    const shared = { law, outlets: [createEmitter(2)], viscosity_m2ps: epanetViscosity_m2ps };
    const holding = agree(createNetwork(pipes, shared), createSupply(30), 1e-3);
    expect(holding.head_m[1]).toBeGreaterThan(12);
    expect(holding.head_m[2]).toBeLessThan(12);
    const open = agree(createNetwork(pipes, shared), createSupply(11), 1e-3);
    expect(open.head_m[1]).toBeLessThan(12);
  });
});

describe("beside EPANET, random trees", () => {
  it("fifty uneven trees on uneven ground, idle to starved: no fault of ours, and the same heads and outflows where it gets to its accuracy", () => {
    const verdicts = seedsFrom(1, 50).map((seed) => treeAgainstEpanet(epanet, seed));
    expect(verdicts.flatMap(({ faults }) => faults)).toEqual([]);
    expect(verdicts.filter(({ isJudged }) => isJudged).length).toBeGreaterThanOrEqual(40);
  });
});

describe("the law that EPANET has", () => {
  it("is not the default: drip tube loses some per cent otherwise by laminar flow and Blasius", () => {
    const outlets = [createEmitter(2)];
    const theirs = solveNetwork(network(lateral, { law: "epanet", outlets }), createSupply(15));
    const ours = solveNetwork(network(lateral, { law: "darcy-weisbach", outlets }), createSupply(15));
    expect(lawCodes["darcy-weisbach"]).toBe(0);
    const lost = ({ head_m }: { readonly head_m: Float64Array }) => 15 - (head_m[head_m.length - 1] ?? 0);
    expect(lost(ours) / lost(theirs)).toBeGreaterThan(1);
    expect(lost(ours) / lost(theirs)).toBeLessThan(1.3);
  });
});
