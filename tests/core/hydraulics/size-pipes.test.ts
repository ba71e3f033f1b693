import { describe, expect, it } from "vitest";
import { sizePipes } from "../../../src/core/hydraulics/size-pipes.ts";
import type { SizingJob } from "../../../src/core/hydraulics/sizing-job.ts";
import { cheapestByEnumeration, createSizingJob, heldHeads_m, randomTree } from "../../support/create-sizing-job.ts";
import { between, createRandom, wholeBetween } from "../../support/random.ts";

/** Two pipes of 50 m in a line, 1.9 and 0.5 L/s, 1 m of head wanted. */
function twoPipes(source_m: number, change: Partial<SizingJob> = {}): SizingJob {
  return { ...createSizingJob({ lengths_m: [50, 50], flows_lps: [1.9, 0.5], wanted_m: 1, source_m }), ...change };
}

describe("sizes of a tree of pipes", () => {
  it("takes the narrowest pipe that keeps the velocity, where head is plenty", () => {
    expect(sizePipes(twoPipes(100))?.size).toEqual(Uint8Array.of(3, 1));
  });

  it("takes wider pipe where head is scarce, and pays for it", () => {
    const plenty = sizePipes(twoPipes(100));
    const scarce = sizePipes(twoPipes(2));
    expect(scarce?.size).toEqual(Uint8Array.of(4, 4));
    expect(Number(scarce?.cost)).toBeGreaterThan(Number(plenty?.cost));
  });

  it("says that nothing serves where even the widest pipe loses too much", () => {
    expect(sizePipes(twoPipes(1.01))).toBeNull();
  });

  it("says that nothing serves where even the widest pipe runs too fast", () => {
    expect(sizePipes(twoPipes(100, { mostVelocity_mps: 0.1 }))).toBeNull();
  });

  it("gives no pipe less than it has to have", () => {
    expect(sizePipes(twoPipes(100, { least: Uint8Array.of(0, 2) }))?.size).toEqual(Uint8Array.of(3, 2));
  });

  it("never widens downstream, unless that is allowed", () => {
    // Dear near the source: the second pipe makes up for it where it may.
    const change = {
      flow_lps: Float64Array.of(0.5, 0.5),
      length_m: Float64Array.of(50, 50),
      least: Uint8Array.of(0, 4),
    };
    expect(sizePipes(twoPipes(100, { ...change, isTapering: false }))?.size).toEqual(Uint8Array.of(1, 4));
    expect(sizePipes(twoPipes(100, change))?.size).toEqual(Uint8Array.of(4, 4));
  });

  it("takes the cheaper one of two sizes though it is the wider one", () => {
    const sizes = [
      { inside_mm: 40.4368, cost_pm: 5 },
      { inside_mm: 52.0446, cost_pm: 3 },
    ];
    expect(sizePipes(twoPipes(100, { sizes }))?.size).toEqual(Uint8Array.of(1, 1));
  });

  it("sizes no pipe at no cost", () => {
    expect(sizePipes(createSizingJob({ lengths_m: [], flows_lps: [], wanted_m: 1, source_m: 10 }))?.cost).toBe(0);
  });
});

describe("300 random small trees cost what the cheapest of all ways to size them does", () => {
  const random = createRandom(71);
  for (const isTapering of [false, true]) {
    it(isTapering ? "never wider downstream" : "free", () => {
      const wrong: object[] = [];
      let possible = 0;
      for (let n = 0; n < 300; n++) {
        const job = {
          ...randomTree(random, wholeBetween(random, 1, 6), wholeBetween(random, 2, 4)),
          isTapering,
          source_m: between(random, 10, 25),
        };
        const least = cheapestByEnumeration(job);
        const sized = sizePipes(job);
        if (least !== null) possible++;
        const isEqual = least === null ? sized === null : Math.abs((sized?.cost ?? 0) - least) < 1e-9 * least;
        const isHeld =
          sized === null || heldHeads_m(job, sized.size).every((each_m, i) => each_m >= Number(job.wanted_m[i]) - 1e-8);
        if (!isEqual || !isHeld) wrong.push({ n, least, sized });
      }
      expect(wrong).toEqual([]);
      expect(possible).toBeGreaterThan(150);
    });
  }
});
