import { sizePipes } from "../../src/core/hydraulics/size-pipes.ts";
import optimal from "../fixtures/pipe-sizes/optimal.json" with { type: "json" };
import { createManyTees, manyTees } from "../support/create-sizing-job.ts";
import { median } from "./statistics.ts";

// Prints how long choosing pipe sizes takes, and how far above the least cost it ends: node --import tsx tests/bench/pipe-sizes.ts

const times = 15;

for (const wish of manyTees) {
  const job = createManyTees(wish);
  const stored = optimal.jobs.find(({ name, isTapering }) => name === wish.name && isTapering === wish.isTapering);
  const ms: number[] = [];
  let cost = Number.NaN;
  for (let n = 0; n < times; n++) {
    const begun = performance.now();
    cost = sizePipes(job)?.cost ?? Number.NaN;
    ms.push(performance.now() - begun);
  }
  const above = Math.abs(100 * (cost / (stored?.least ?? Number.NaN) - 1)).toFixed(4);
  const name = `${wish.name}, ${wish.isTapering ? "never wider downstream" : "free"}`;
  console.log(
    `${name.padEnd(48)} median ${median(ms).toFixed(1).padStart(6)} ms, longest ${Math.max(...ms)
      .toFixed(0)
      .padStart(4)} ms, ${above} % from the least, ${Math.min(...ms).toFixed(1)} ms at best`,
  );
}
