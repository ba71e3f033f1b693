import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import loadHighs from "highs";
import { pipeLosses } from "../../src/core/hydraulics/pipe-losses.ts";
import type { SizingJob } from "../../src/core/hydraulics/sizing-job.ts";
import { createManyTees, manyTees } from "./create-sizing-job.ts";

// Sizes main lines with many tees by a mixed-integer solver and stores what they cost: node --import tsx tests/support/solve-pipe-sizes.ts

const folder = new URL("../fixtures/pipe-sizes/", import.meta.url);

/** The model in the plain text format of linear programs: one size a pipe (x), heads (h). */
function model(job: SizingJob): string {
  const { sizes, upstream } = job;
  const { loss_m, least } = pipeLosses(job);
  const choices = [...upstream.keys()].map((pipe) => sizes.flatMap((_, d) => (d >= Number(least[pipe]) ? [d] : [])));
  const sum = (pipe: number, weight: (d: number) => number) =>
    (choices[pipe] ?? []).map((d) => `+ ${weight(d).toFixed(12)} x${pipe}_${d}`).join(" ");
  const cost = choices.map((_, pipe) => sum(pipe, (d) => Number(job.length_m[pipe]) * (sizes[d]?.cost_pm ?? 0)));
  const rows = [...upstream].flatMap((up, pipe) => {
    const lost = sum(pipe, (d) => Number(loss_m[pipe * sizes.length + d]));
    const wider = job.isTapering && up >= 0;
    const narrowed = (choices[pipe] ?? []).map((d) => `- ${d} x${pipe}_${d}`).join(" ");
    return [
      ` one${pipe}: ${sum(pipe, () => 1)} = 1`,
      up < 0 ? ` head${pipe}: h${pipe} ${lost} = ${job.source_m}` : ` head${pipe}: h${pipe} - h${up} ${lost} = 0`,
      ...(wider ? [` taper${pipe}: ${sum(up, (d) => d)} ${narrowed} >= 0`] : []),
    ];
  });
  const heads = [...job.wanted_m].map((wanted, pipe) =>
    wanted === -Infinity ? ` h${pipe} free` : ` h${pipe} >= ${wanted}`,
  );
  const names = choices.flatMap((own, pipe) => own.map((d) => ` x${pipe}_${d}`));
  return `Minimize\n cost: ${cost.join("\n ")}\nSubject To\n${rows.join("\n")}\nBounds\n${heads.join("\n")}\nBinary\n${names.join("\n")}\nEnd\n`;
}

const highs = await loadHighs();
const version: unknown = JSON.parse(
  readFileSync(new URL("../../node_modules/highs/package.json", import.meta.url), "utf8"),
);
const jobs = manyTees.map((wish) => {
  const begun = performance.now();
  const solved = highs.solve(model(createManyTees(wish)), { mip_rel_gap: 0, mip_abs_gap: 1e-6, time_limit: 300 });
  if (solved.Status !== "Optimal") throw new Error(`${wish.name}: ${solved.Status}`);
  console.log(
    wish.name,
    wish.isTapering,
    solved.ObjectiveValue,
    `${((performance.now() - begun) / 1000).toFixed(1)} s`,
  );
  return { ...wish, least: Math.round(1e4 * solved.ObjectiveValue) / 1e4 };
});
const solver =
  typeof version === "object" && version !== null && "version" in version
    ? `highs ${String(version.version)}`
    : "highs";
const head = { command: "node --import tsx tests/support/solve-pipe-sizes.ts", solver };
const lines = jobs.map((job) => `    ${JSON.stringify(job)}`).join(",\n");
mkdirSync(folder, { recursive: true });
writeFileSync(
  new URL("optimal.json", folder),
  `${JSON.stringify(head, null, 2).slice(0, -2)},\n  "jobs": [\n${lines}\n  ]\n}\n`,
);
