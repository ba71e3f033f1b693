import { cutCoils } from "../../src/core/materials/cutting/cut-coils.ts";
import type { CutJob } from "../../src/core/materials/cutting/cut-job.ts";
import { fieldCutJobs, largeCutJob, leaningCutJobs } from "../support/random-cut-jobs.ts";
import { median, tell } from "./statistics.ts";

// Prints how near cutting plans come to their proven bound and how long they take: node --import tsx tests/bench/cutting.ts

function timed(job: CutJob, times: number): { readonly ms: readonly number[]; readonly gap: number } {
  const ms: number[] = [];
  let gap = 0;
  for (let n = 0; n < times; n++) {
    const begun = performance.now();
    const { noJoins } = cutCoils(job);
    ms.push(performance.now() - begun);
    gap = noJoins === null ? Number.NaN : noJoins.boughtCount - noJoins.bound.coils;
  }
  return { ms, gap };
}

for (const [name, jobs] of [
  ["20 to 60 rows x 3 wires of one length", fieldCutJobs(100, 1)],
  ["20 to 60 rows x 3 wires, posts leaning", leaningCutJobs(100, 1)],
] as const) {
  const results = jobs.map((job) => timed(job, 1));
  const gaps = results.map(({ gap }) => gap);
  tell(
    name,
    results.flatMap(({ ms }) => ms),
  );
  console.log(
    `  equal to the bound in ${gaps.filter((gap) => gap === 0).length} of ${gaps.length}, worst ${Math.max(...gaps)} above`,
  );
}
for (const isLeaning of [false, true]) {
  for (const coil_m of [304.8, 1524]) {
    for (const isJoinable of [false, true]) {
      const { ms, gap } = timed(largeCutJob(isLeaning, coil_m, isJoinable), 9);
      const name = `400 rows x 5 wires${isLeaning ? ", leaning" : ""}${isJoinable ? ", joins" : ""}, ${coil_m} m`;
      console.log(`${name.padEnd(48)} median ${median(ms).toFixed(0)} ms, ${gap} above the bound`);
    }
  }
}
