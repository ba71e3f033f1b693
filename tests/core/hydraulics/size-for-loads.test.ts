import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LoadsJob } from "../../../src/core/hydraulics/loads-job.ts";
import { sizeForLoads } from "../../../src/core/hydraulics/size-for-loads.ts";
import { sizePipes } from "../../../src/core/hydraulics/size-pipes.ts";
import { createSizingJob } from "../../support/create-sizing-job.ts";

/** A main line of so many tees 2.5 m apart, 100 m from the source, 0.05 L/s and 10 m of head at each, watered in so many sets. */
function inSets(tees: number, sets: number, source_m: number): LoadsJob {
  const lengths_m = Array.from({ length: tees }, (_, i) => (i === 0 ? 100 : 2.5));
  const job = createSizingJob({ lengths_m, flows_lps: lengths_m.map(() => 0), wanted_m: 10, source_m });
  const loads = Array.from({ length: sets }, (_, set) => {
    const [from, to] = [Math.floor((tees * set) / sets), Math.floor((tees * (set + 1)) / sets)];
    const own = (i: number) => i >= from && i < to;
    return {
      flow_lps: Float64Array.from(lengths_m, (_, i) => (i < to ? 0.05 * (to - Math.max(from, i)) : 0)),
      wanted_m: Float64Array.from(lengths_m, (_, i) => (own(i) ? 10 : -Infinity)),
      source_m,
    };
  });
  return { ...job, loads };
}

describe("sizes for several sets over the same pipes", () => {
  it("one set alone is sized at least cost", () => {
    const job = inSets(20, 1, 14);
    const load = job.loads[0];
    if (load === undefined) throw new Error("there is one");
    expect(sizeForLoads(job).cost).toBe(sizePipes({ ...job, ...load })?.cost);
  });

  it("two sets need less pipe than one, and both have their head", () => {
    const two = sizeForLoads(inSets(20, 2, 14));
    expect(two.cost).toBeLessThan(sizeForLoads(inSets(20, 1, 14)).cost);
    expect(two.isShort).toEqual([false, false]);
  });

  it("a set that can not be served gets the widest pipe, and is named", () => {
    const job = inSets(20, 2, 14);
    const [first, second] = job.loads;
    if (first === undefined || second === undefined) throw new Error("there are two");
    const sized = sizeForLoads({ ...job, loads: [first, { ...second, source_m: 9 }] });
    expect(sized.isShort).toEqual([false, true]);
    expect(new Set(sized.size)).toEqual(new Set([job.sizes.length - 1]));
  });

  it("where a set takes nothing it has no head to tell", () => {
    const { head_m } = sizeForLoads(inSets(20, 2, 14));
    expect([...(head_m[0] ?? [])].filter(Number.isNaN)).toHaveLength(10);
    expect(head_m[1]?.some(Number.isNaN)).toBe(false);
  });

  it("every set has its head at every tee whatever the supply, and no pipe is wider than the one it goes on from", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 1, max: 5 }),
        fc.double({ min: 11, max: 30, noNaN: true }),
        (tees, sets, source_m) => {
          const job = inSets(tees, Math.min(sets, tees), source_m);
          const { size, head_m, isShort } = sizeForLoads(job);
          const isHeld = job.loads.every(
            ({ wanted_m }, load) =>
              isShort[load] === true ||
              wanted_m.every((each_m, i) => each_m === -Infinity || Number(head_m[load]?.[i]) >= each_m - 1e-6),
          );
          const isTapering = size.every((each, i) => i === 0 || each <= Number(size[i - 1]));
          return isHeld && isTapering;
        },
      ),
      { seed: 7, numRuns: 100 },
    );
  });
});
