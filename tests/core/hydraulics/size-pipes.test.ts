import { describe, expect, it } from "vitest";
import { sizePipes } from "../../../src/core/hydraulics/size-pipes.ts";
import { cheapestByEnumeration, createSizingJob, heldHeads_m, randomTree } from "../../support/create-sizing-job.ts";
import { between, createRandom, wholeBetween } from "../../support/random.ts";

describe("sizes of a tree of pipes", () => {
  it("takes the narrowest pipe that keeps the velocity, where head is plenty", () => {
    const sized = sizePipes(
      createSizingJob({ lengths_m: [50, 50], flows_lps: [1.9, 0.5], wanted_m: 1, source_m: 100 }),
    );
    expect(sized?.size).toEqual(Uint8Array.of(3, 1));
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
