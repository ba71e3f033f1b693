import { readFileSync, writeFileSync } from "node:fs";
import loadHighs from "highs";
import type { CutJob } from "../../src/core/materials/cutting/cut-job.ts";
import { usable_m } from "./create-cut-job.ts";
import { createRandom } from "./random.ts";
import { type SmallJobKind, smallCutJob, smallJobs } from "./random-cut-jobs.ts";

// Solves random small cutting jobs to the optimum with a mixed-integer solver, by listing every full way to cut a coil, and stores jobs and
// answers: node --import tsx tests/support/solve-cutting.ts

const path = new URL("../fixtures/cutting/optimal.json", import.meta.url);
const seed = 20_240_611;
/** Jobs with more ways to cut a coil than this, or that take the solver more than some seconds, are drawn anew. */
const mostPatterns = 2000;
const dust_m = 1e-7;

interface Pattern {
  readonly coil: number;
  readonly cost: number;
  readonly count: readonly number[];
}

/** Every way to cut so much that leaves no room for a piece that is still wanted; null when there are too many. */
function fullCuts(taken_m: readonly number[], wanted: readonly number[], room_m: number): number[][] | null {
  const found: number[][] = [];
  const count = taken_m.map(() => 0);
  const choose = (i: number, left_m: number): boolean => {
    if (i === taken_m.length) {
      const isFull = taken_m.every((each_m, k) => count[k] === wanted[k] || each_m > left_m + dust_m);
      if (isFull) found.push([...count]);
      return found.length <= mostPatterns;
    }
    const each_m = taken_m[i] ?? 0;
    const most = Math.min(wanted[i] ?? 0, Math.floor((left_m + dust_m) / each_m));
    for (let n = most; n >= 0; n--) {
      count[i] = n;
      if (!choose(i + 1, left_m - n * each_m)) return false;
    }
    count[i] = 0;
    return true;
  };
  return choose(0, room_m) ? found : null;
}

/** The model in the plain text format of linear programs; null when it would be too large. */
function model(job: CutJob): string | null {
  const lengths_m = [...new Set(job.runs.map(({ length_m }) => length_m))].sort((a, b) => b - a);
  const wanted = lengths_m.map((each_m) => job.runs.filter(({ length_m }) => length_m === each_m).length);
  const taken_m = lengths_m.map((each_m) => each_m + job.slop_m);
  const coils = [
    ...job.onHand_m.map((length_m) => ({ length_m, cost: 0, isOnHand: true })),
    ...job.sizes.map(({ length_m, price }) => ({ length_m, cost: price ?? length_m, isOnHand: false })),
  ];
  const patterns: Pattern[] = [];
  for (const [coil, { length_m, cost }] of coils.entries()) {
    const cuts = fullCuts(taken_m, wanted, usable_m(job, length_m));
    if (cuts === null) return null;
    patterns.push(...cuts.map((count) => ({ coil, cost, count })));
  }
  if (patterns.length > mostPatterns) return null;
  const sum = (weight: (pattern: Pattern) => number) =>
    patterns.flatMap((pattern, i) => (weight(pattern) === 0 ? [] : [`+ ${weight(pattern)} x${i}`])).join("\n ");
  const rows = lengths_m.map((_, k) => ` piece${k}: ${sum(({ count }) => count[k] ?? 0)} >= ${wanted[k]}`);
  const stock = coils.flatMap(({ isOnHand }, coil) =>
    isOnHand ? [` coil${coil}: ${sum((pattern) => (pattern.coil === coil ? 1 : 0))} <= 1`] : [],
  );
  const names = patterns.map((_, i) => ` x${i}`).join("\n");
  const text = `Minimize\n cost: ${sum(({ cost }) => cost)}\nSubject To\n${[...rows, ...stock].join("\n")}\nGeneral\n${names}\nEnd\n`;
  return text
    .split("\n")
    .filter((line) => !/^ coil\d+: +<=/.test(line))
    .join("\n");
}

const highs = await loadHighs();
const version: unknown = JSON.parse(
  readFileSync(new URL("../../node_modules/highs/package.json", import.meta.url), "utf8"),
);
const random = createRandom(seed);
const kinds: readonly SmallJobKind[] = ["one size", "all different", "part coils", "priced sizes"];
const jobs: object[] = [];
for (const kind of kinds) {
  for (let n = 0; n < smallJobs[kind]; ) {
    const job = smallCutJob(kind, random);
    const text = model(job);
    if (text === null) continue;
    const solved = highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: 1e-6, time_limit: 8 });
    if (solved.Status !== "Optimal") continue;
    n++;
    if (n % 10 === 0) console.log(`${kind}: ${n}`);
    jobs.push({
      kind,
      lengths_m: job.runs.map(({ length_m }) => length_m),
      onHand_m: job.onHand_m,
      sizes: job.sizes.map(({ length_m, price }) => ({ length_m, price })),
      least: Math.round(1e6 * solved.ObjectiveValue) / 1e6,
    });
  }
}
const solver =
  typeof version === "object" && version !== null && "version" in version
    ? `highs ${String(version.version)}`
    : "highs";
const head = {
  command: "node --import tsx tests/support/solve-cutting.ts",
  solver,
  measure:
    "price of what is bought where sizes have one, else metres bought; reserve 1 % and 2 m a coil, slop 0.3 m a cut",
};
const lines = jobs.map((job) => `    ${JSON.stringify(job)}`).join(",\n");
writeFileSync(path, `${JSON.stringify(head, null, 2).slice(0, -2)},\n  "jobs": [\n${lines}\n  ]\n}\n`);
console.log(`${jobs.length} jobs solved by ${solver}`);
