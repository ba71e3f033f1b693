import { lateralNeeds } from "../../src/core/drip/lateral-needs.ts";
import { waterRows } from "../../src/core/drip/water-rows.ts";
import type { WateringJob } from "../../src/core/drip/watering-job.ts";
import { createPlanner } from "../../src/core/planner.ts";
import type { Project } from "../../src/core/project/project.ts";
import { largeFieldText } from "../support/large-field.ts";
import { projectIn } from "../support/project-files.ts";
import { readSample, sampleNames } from "../support/sample-plans.ts";
import { median, tell } from "./statistics.ts";

// How long a watering takes, worked out anew each time. Times on a machine that does other things too: read the processor's share.

/** Town water where the project does not know its own. Invented. */
function withWater(project: Project, limitFlow_lph: number): Project {
  if (project.water.kind !== "unknown") return project;
  return { ...project, water: { ...project.water, kind: "town", staticPressure_kpa: 500, limitFlow_lph } };
}

function jobOf(project: Project): WateringJob {
  const { watering } = createPlanner().plan(project);
  if (watering === null) throw new Error("no watering");
  return watering.job;
}

function timed(work: () => unknown, times: number): { readonly each_ms: number[]; readonly processor_ms: number } {
  for (let n = 0; n < times; n++) work();
  const each_ms: number[] = [];
  const processor = process.cpuUsage();
  for (let n = 0; n < times; n++) {
    const from = performance.now();
    work();
    each_ms.push(performance.now() - from);
  }
  return { each_ms, processor_ms: process.cpuUsage(processor).user / 1000 / times };
}

function tellTimes(name: string, job: WateringJob, times: number, bar_ms: number | null): void {
  const watering = waterRows(job);
  const { sets = [], pipes = [], isShort } = watering ?? {};
  console.log(
    `${name}: ${job.laterals.row.length} rows, ${job.laterals.at_m.length} emitters; ${sets.length} sets, ${pipes.length} pipes${isShort === true ? ", short of water" : ""}`,
  );
  const { each_ms, processor_ms } = timed(() => waterRows(job), times);
  tell("  watering", each_ms);
  console.log(`  processor, on average              ${processor_ms.toFixed(1)} ms`);
  tell("  needs of the rows alone", timed(() => lateralNeeds(job), times).each_ms);
  if (bar_ms !== null) console.log(`  bar ${bar_ms} ms: ${median(each_ms) < bar_ms ? "kept" : "MISSED"}`);
}

for (const [i, name] of sampleNames().entries()) {
  tellTimes(name, jobOf(withWater(readSample(name), 2500)), 100, i === 0 ? 8 : null);
}
tellTimes("40 ha", jobOf(withWater(projectIn(largeFieldText()), 90_000)), 5, 1000);
