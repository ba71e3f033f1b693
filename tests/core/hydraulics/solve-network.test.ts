import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { condenseLateral } from "../../../src/core/hydraulics/condense-lateral.ts";
import { lateralAt } from "../../../src/core/hydraulics/lateral-steps.ts";
import type { Network } from "../../../src/core/hydraulics/network.ts";
import { solveNetwork } from "../../../src/core/hydraulics/solve-network.ts";
import { ownFaults } from "../../bench/checks/trees-against-epanet.ts";
import { createLateral } from "../../support/create-lateral.ts";
import {
  blockPipes,
  createEmitter,
  createNetwork,
  createSupply,
  createSupplyCurve,
  type PipeWish,
} from "../../support/create-network.ts";
import { randomTree } from "../../support/random-trees.ts";

const seed = 20_240_611;
const trees = fc.integer({ min: 1, max: 100_000 }).map(randomTree);
const share = { law: "darcy-weisbach", outlets: [createEmitter(2)] } as const;

/** A network with another law of friction; trees are made with EPANET's. */
const smooth = (network: Network): Network => ({ ...network, law: network.law.map(() => 0) });

describe("a tree of pipes", () => {
  it("with nothing leaving has the head of its source everywhere, heights or not", () => {
    const network = createNetwork(
      [
        { upstream: 0, length_m: 10, inside_mm: 20, height_m: 3 },
        { upstream: 1, length_m: 10, inside_mm: 20, height_m: -4 },
      ],
      share,
    );
    const { head_m, flow_lps, dry, isSettled } = solveNetwork(network, createSupply(12));
    expect([...head_m]).toEqual([12, 12, 12]);
    expect([...flow_lps]).toEqual([0, 0, 0]);
    expect([dry, isSettled]).toEqual([0, true]);
  });

  it("gives an emitter beside the source what the emitter's law says", () => {
    const network = createNetwork([{ upstream: 0, length_m: 0, inside_mm: 20, outlet: 0, height_m: 2 }], share);
    const { outflow_lps } = solveNetwork(network, createSupply(12));
    expect((outflow_lps[1] ?? 0) * 3600).toBeCloseTo(2, 9);
  });

  it("closes emitters above the water and counts them", () => {
    const pipes = [1, 11, 21].map(
      (height_m, i): PipeWish => ({ upstream: i, length_m: 10, inside_mm: 15, height_m, outlet: 0 }),
    );
    const { outflow_lps, dry, isSettled } = solveNetwork(createNetwork(pipes, share), createSupply(12));
    expect(outflow_lps[1]).toBeGreaterThan(0);
    expect(outflow_lps[2]).toBeGreaterThan(0);
    expect(outflow_lps[3]).toBe(0);
    expect([dry, isSettled]).toEqual([1, true]);
  });

  it("all above the water stands dry", () => {
    const network = createNetwork([{ upstream: 0, length_m: 10, inside_mm: 15, height_m: 20, outlet: 0 }], share);
    const { dry, flow_lps, isSettled } = solveNetwork(network, createSupply(12));
    expect([dry, flow_lps[0], isSettled]).toEqual([1, 0, true]);
  });

  it("takes from a source that weakens with flow no more than it gives", () => {
    const curve = createSupplyCurve([
      [0, 20],
      [1, 10],
      [2, 0],
    ]);
    const network = createNetwork([{ upstream: 0, length_m: 0, inside_mm: 50, outlet: 0 }], {
      ...share,
      outlets: [createEmitter(3600)],
    });
    const { head_m, flow_lps } = solveNetwork(network, curve);
    expect(head_m[0]).toBeCloseTo(10, 5);
    expect(flow_lps[0]).toBeCloseTo(1, 5);
  });

  it("lets a regulator hold the pressure down, and stand aside where there is too little", () => {
    const pipes: PipeWish[] = [
      { upstream: 0, length_m: 10, inside_mm: 50, height_m: 1 },
      { upstream: 1, length_m: 0, inside_mm: 50, height_m: 1, regulator_m: 7, outlet: 0 },
    ];
    const network = createNetwork(pipes, share);
    expect(solveNetwork(network, createSupply(30)).head_m[2]).toBeCloseTo(8, 9);
    expect(solveNetwork(network, createSupply(6)).head_m[2]).toBeCloseTo(6, 5);
  });

  it("is found again at once from its own solution", () => {
    const network = createNetwork(blockPipes({ laterals: 10, emitters: 30 }), share);
    const cold = solveNetwork(network, createSupply(15));
    const again = solveNetwork(network, createSupply(15), cold);
    expect(again.rounds).toBe(1);
    expect(again.flow_lps[0]).toBeCloseTo(cold.flow_lps[0] ?? 0, 9);
  });

  it("where a flow stands between laminar and Blasius, at Re 2000, has an answer", () => {
    // 0.19 m are lost by laminar flow and 0.27 m by Blasius, where the emitter leaves 0.20 to 0.26 m.
    const flow_lph = 86.5249;
    for (const head_m of [10.2, 10.23, 10.26]) {
      const pipe: PipeWish = { upstream: 0, length_m: 100, inside_mm: 15.24, outlet: 0 };
      const network = createNetwork([pipe], { ...share, outlets: [createEmitter(flow_lph)] });
      const { isSettled, flow_lps } = solveNetwork(network, createSupply(head_m));
      expect(isSettled).toBe(true);
      expect((flow_lps[0] ?? 0) * 3600).toBeCloseTo(86.525, 2);
    }
  });
});

describe("a lateral as one outlet", () => {
  it("makes the same network as its emitters one by one", () => {
    const lateral = createLateral({ emitters: 60 });
    const curve = condenseLateral(lateral, 8, 22);
    const tees = Array.from(
      { length: 10 },
      (_, i): PipeWish => ({ upstream: i, length_m: 5, inside_mm: 36.2, outlet: 0 }),
    );
    const shared = { law: "darcy-weisbach", outlets: [curve] } as const;
    const condensed = solveNetwork(createNetwork(tees, shared), createSupply(18));
    for (const [i, head_m] of condensed.head_m.entries()) {
      if (i === 0) continue;
      const { flow_lps } = lateralAt(lateral, head_m);
      expect((condensed.outflow_lps[i] ?? 0) / flow_lps).toBeCloseTo(1, 4);
    }
    expect(condensed.isSettled).toBe(true);
  });
});

describe("any tree", () => {
  it("keeps its mass at every node, and its heads are what its flows leave of them", () => {
    fc.assert(
      fc.property(trees, ({ network, supply }) => {
        expect(ownFaults(network, supply, solveNetwork(network, supply))).toEqual([]);
      }),
      { seed, numRuns: 150 },
    );
  });

  it("loses head along every pipe in which water flows", () => {
    fc.assert(
      fc.property(trees, ({ network, supply }) => {
        const { head_m, flow_lps } = solveNetwork(smooth(network), supply);
        for (const [i, upstream] of network.upstream.entries()) {
          if (upstream < 0) continue;
          const falls_m = (head_m[upstream] ?? 0) - (head_m[i] ?? 0);
          expect(falls_m).toBeGreaterThanOrEqual((flow_lps[i] ?? 0) > 1e-6 ? -1e-4 : -1e-3);
        }
      }),
      { seed, numRuns: 100 },
    );
  });

  it("gets no less pressure at any of its ends for one larger pipe, and no less water in all", () => {
    fc.assert(
      fc.property(trees, fc.nat(), ({ network, supply }, pick) => {
        const pipe = 1 + (pick % (network.upstream.length - 1));
        const wider = { ...network, inside_mm: network.inside_mm.map((d, i) => (i === pipe ? 1.5 * d : d)) };
        const before = solveNetwork(network, supply);
        const after = solveNetwork(wider, supply);
        expect(after.flow_lps[0]).toBeGreaterThanOrEqual((before.flow_lps[0] ?? 0) * (1 - 1e-5) - 1e-9);
        // What hangs on that pipe; others may lose what it takes more.
        expect(after.head_m[pipe]).toBeGreaterThanOrEqual((before.head_m[pipe] ?? 0) - 2e-3);
      }),
      { seed, numRuns: 100 },
    );
  });

  it("gives two halves that are alike the same, and twice what one half takes", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 1, max: 25 }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        fc.double({ min: 3, max: 30, noNaN: true }),
        (laterals, emitters, along, head_m) => {
          const half = blockPipes({ laterals, emitters, slope: [along, 0] });
          const other = half.map((pipe) => ({
            ...pipe,
            upstream: pipe.upstream === 0 ? 0 : pipe.upstream + half.length,
          }));
          const single = solveNetwork(createNetwork(half, share), createSupply(head_m));
          const both = solveNetwork(createNetwork([...half, ...other], share), createSupply(head_m));
          for (let i = 1; i <= half.length; i++) {
            expect(both.outflow_lps[i]).toBe(both.outflow_lps[i + half.length]);
            expect(both.head_m[i]).toBe(both.head_m[i + half.length]);
          }
          expect(both.flow_lps[0]).toBeCloseTo(2 * (single.flow_lps[0] ?? 0), 6);
        },
      ),
      { seed, numRuns: 60 },
    );
  });
});
