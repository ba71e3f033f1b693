import { beforeAll, describe, expect, it } from "vitest";
import { closedForm } from "../bench/checks/closed-form.ts";
import { distancesKept } from "../bench/checks/distances-kept.ts";
import { crossingsAgainstKernel, setbacksAgainstKernel } from "../bench/checks/rows-against-kernel.ts";
import { rowsOnCorners } from "../bench/checks/rows-on-corners.ts";
import { sameInEveryPose } from "../bench/checks/same-in-every-pose.ts";
import { seedsFrom, tally } from "../bench/checks/verdict.ts";
import { createGeos, type Geos } from "../support/geos.ts";

// A share of what `npm run soak` does with the same functions.
const seeds = seedsFrom(1, 50);
const fewSeeds = seedsFrom(1, 20);

describe("rows on random parcels in five poses", () => {
  it("keep every setback to a nanometre, and stand wherever they may", () => {
    expect(tally(seeds, distancesKept).faults).toEqual([]);
  });

  it("are the same rows in every pose", () => {
    expect(tally(seeds, sameInEveryPose).faults).toEqual([]);
  });

  it("add up to the closed form when nothing is taken off", () => {
    expect(tally(seeds, closedForm).faults).toEqual([]);
  });

  it("are the same rows in every pose when they run through corners and along edges", () => {
    expect(tally(seedsFrom(1, 200), rowsOnCorners).faults).toEqual([]);
  });
});

describe("rows on random parcels against an independent geometry kernel", () => {
  let geos: Geos;
  beforeAll(async () => {
    geos = await createGeos();
  });

  it("begin and end where the kernel says", () => {
    expect(tally(seeds, (seed) => crossingsAgainstKernel(geos, seed)).faults).toEqual([]);
  });

  it("with setbacks lie between the kernel's rows for arcs drawn inside and arcs drawn around", () => {
    const { faults, worst } = tally(fewSeeds, (seed) => setbacksAgainstKernel(geos, seed));
    expect(faults).toEqual([]);
    expect(worst).toBeLessThan(0.02);
  });
});
