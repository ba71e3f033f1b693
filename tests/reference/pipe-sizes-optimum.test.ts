import { describe, expect, it } from "vitest";
import { sizePipes } from "../../src/core/hydraulics/size-pipes.ts";
import optimal from "../fixtures/pipe-sizes/optimal.json" with { type: "json" };
import { createManyTees, heldHeads_m } from "../support/create-sizing-job.ts";

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
      const short = heldHeads_m(job, sized.size).map((head_m, i) => Number(job.wanted_m[i]) - head_m);
      expect(Math.max(...short)).toBeLessThan(1e-8);
    });
  }
});
