import { describe, expect, it } from "vitest";
import type { Network } from "../../src/core/hydraulics/network.ts";
import { sizePipes } from "../../src/core/hydraulics/size-pipes.ts";
import type { SizingJob } from "../../src/core/hydraulics/sizing-job.ts";
import { solveNetwork } from "../../src/core/hydraulics/solve-network.ts";
import optimal from "../fixtures/pipe-sizes/optimal.json" with { type: "json" };
import { createManyTees, heldHeads_m } from "../support/create-sizing-job.ts";

/** The sized pipes as a network of their own, an outlet that gives the same at any pressure at every tee. */
function solvedAgain(job: SizingJob, size: Uint8Array): Float64Array {
  const from = <T>(source: T, of: (pipe: number) => T): T[] => [source, ...Array.from(size, (_, pipe) => of(pipe))];
  const own_lps = Array.from(size, (_, pipe) =>
    job.upstream.reduce(
      (left, up, i) => (up === pipe ? left - Number(job.flow_lps[i]) : left),
      Number(job.flow_lps[pipe]),
    ),
  );
  const network: Network = {
    upstream: Int32Array.from(from(-1, (pipe) => Number(job.upstream[pipe]) + 1)),
    length_m: Float64Array.from(from(0, (pipe) => Number(job.length_m[pipe]))),
    inside_mm: Float64Array.from(from(100, (pipe) => job.sizes[Number(size[pipe])]?.inside_mm ?? 0)),
    law: new Uint8Array(size.length + 1).fill(job.law),
    roughness: new Float64Array(size.length + 1).fill(job.roughness),
    minor: new Float64Array(size.length + 1),
    height_m: new Float64Array(size.length + 1),
    regulator_m: new Float64Array(size.length + 1).fill(Number.NaN),
    outlet: Int32Array.from(from(-1, (pipe) => (job.wanted_m[pipe] === -Infinity ? -1 : pipe))),
    outlets: own_lps.map((nominal_lps) => ({
      kind: "emitter",
      nominal_lps,
      nominalHead_m: 10,
      exponent: 0,
      from_m: 1,
    })),
    viscosity_m2ps: job.viscosity_m2ps,
  };
  const supply = { flow_lps: Float64Array.of(0), head_m: Float64Array.of(job.source_m) };
  return solveNetwork(network, supply).head_m.subarray(1);
}

describe(`main lines with many tees cost what ${optimal.solver} found to be the least (${optimal.command})`, () => {
  it("there are eight, of 60 and of 400 tees, tight and loose, in one line and on submains, free and never wider downstream", () => {
    expect(optimal.jobs).toHaveLength(8);
    expect(new Set(optimal.jobs.map(({ tees }) => tees))).toEqual(new Set([60, 400]));
  });

  for (const stored of optimal.jobs) {
    it(`${stored.name}, ${stored.isTapering ? "never wider downstream" : "free"}: the same cost, and solved again every tee has its head`, () => {
      const job = createManyTees(stored);
      const sized = sizePipes(job);
      if (sized === null) throw new Error("the solver found sizes");
      expect(Math.abs(sized.cost / stored.least - 1)).toBeLessThan(1e-6);
      const solved_m = solvedAgain(job, sized.size);
      expect(Math.max(...solved_m.map((head_m, i) => Math.abs(head_m - Number(sized.head_m[i]))))).toBeLessThan(1e-6);
      const short = heldHeads_m(job, sized.size).map((head_m, i) => Number(job.wanted_m[i]) - head_m);
      expect(Math.max(...short)).toBeLessThan(1e-8);
    });
  }
});
