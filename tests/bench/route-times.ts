import { createLeanPlanner } from "../../src/core/lean-planner.ts";
import { createMainWorks } from "../../src/core/main-works.ts";
import { layRoute } from "../../src/core/mainline/lay-route.ts";
import type { Project } from "../../src/core/project/project.ts";
import { largeFieldText } from "../support/large-field.ts";
import { projectIn } from "../support/project-files.ts";
import { readSample, sampleNames } from "../support/sample-plans.ts";
import { median, tell } from "./statistics.ts";

/** Milliseconds that the route takes, and the stages about main line and trench with it, each time anew. */
function timed(project: Project, times: number) {
  const { rows, ground, trellis, drip } = createLeanPlanner().plan(project);
  if (rows === null || ground === null || trellis === null || drip === null) throw new Error("no plan");
  const route_ms: number[] = [];
  const works_ms: number[] = [];
  let told = "";
  const processor = process.cpuUsage();
  for (let n = 0; n < times; n++) {
    const begun = performance.now();
    let own_ms = Number.NaN;
    const works = createMainWorks((job) => {
      const from = performance.now();
      const route = layRoute(job);
      own_ms = performance.now() - from;
      return route;
    });
    const main = works.mainline(rows, ground, project);
    if (!main.ok || main.value.route === null) throw new Error("no route");
    works.trench(main.value, rows, ground, trellis, [], project);
    works_ms.push(performance.now() - begun);
    route_ms.push(own_ms);
    const { length_m, upstream, crossings, unreached } = main.value.route;
    told = `${rows.rows.length} rows, ${project.keepOuts.length} things: ${length_m.toFixed(0)} m in ${upstream.length} points, ${crossings} crossings, ${unreached.length} rows unreached`;
  }
  const processor_ms = process.cpuUsage(processor).user / 1000 / times;
  return { route_ms, works_ms, processor_ms, told };
}

/** Prints how long route and trench take, and the processor's share of it where the machine is busy with other things too. */
export function tellRouteTimes(): void {
  for (const [i, name] of sampleNames().entries()) {
    const { route_ms, works_ms, processor_ms, told } = timed(readSample(name), 40);
    console.log(`${name}: ${told}`);
    tell("  route", route_ms);
    tell("  route, profile and earth", works_ms);
    console.log(`  processor, on average              ${processor_ms.toFixed(1)} ms`);
    if (i === 0) console.log(`  bar 50 ms: ${median(works_ms) < 50 ? "kept" : "MISSED"}`);
  }
  const large = timed(projectIn(largeFieldText()), 9);
  console.log(`40 ha: ${large.told}`);
  tell("  route", large.route_ms);
  tell("  route, profile and earth", large.works_ms);
  console.log(`  processor, on average              ${large.processor_ms.toFixed(1)} ms`);
  console.log(`  bar 1000 ms: ${median(large.works_ms) < 1000 ? "kept" : "MISSED"}`);
}
