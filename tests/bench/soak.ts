import { parseArgs } from "node:util";
import { createEpanet } from "../support/epanet.ts";
import { createGeos } from "../support/geos.ts";
import { closedForm } from "./checks/closed-form.ts";
import { distancesKept } from "./checks/distances-kept.ts";
import { overlayAgainstKernel } from "./checks/overlay-against-kernel.ts";
import { crossingsAgainstKernel, setbacksAgainstKernel } from "./checks/rows-against-kernel.ts";
import { rowsOnCorners } from "./checks/rows-on-corners.ts";
import { sameInEveryPose } from "./checks/same-in-every-pose.ts";
import { treeAgainstEpanet } from "./checks/trees-against-epanet.ts";
import { seedsFrom, tally, type Verdict } from "./checks/verdict.ts";
import { soakKeeping } from "./keeping/soak-keeping.ts";
import { soakLargeFiles } from "./large-files/soak-large-files.ts";

// The full counts of the random checks. `npm run soak -- 5000` starts at seed 5000 instead of 1; a fault names its seed.
// `--only keeping`, `--only trees`, `--only plan` or `--only files` leaves the other parts out; `--kill 200` and `--tabs 50` say how often the browser is killed and a
// project edited in two tabs.

const { values: asked, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    only: { type: "string" },
    kill: { type: "string", default: "200" },
    tabs: { type: "string", default: "50" },
  },
});
const first = wholeNumber(positionals[0] ?? "1", "a seed");

let keepingFailed = 0;
if (asked.only === undefined || asked.only === "keeping") {
  keepingFailed = await soakKeeping(wholeNumber(asked.kill, "a count"), wholeNumber(asked.tabs, "a count"), first);
}
if (asked.only === "keeping") process.exit(keepingFailed === 0 ? 0 : 1);

let filesFailed = 0;
if (asked.only === undefined || asked.only === "files") filesFailed = soakLargeFiles();
if (asked.only === "files") process.exit(filesFailed === 0 ? 0 : 1);

const geos = await createGeos();
const epanet = await createEpanet();
let judged = 0;

interface Soak {
  readonly name: string;
  readonly count: number;
  readonly check: (seed: number) => Verdict;
  readonly worstMeans: string;
}

const trees: Soak = {
  name: "trees of pipes and EPANET",
  count: 800,
  check: (seed) => {
    const verdict = treeAgainstEpanet(epanet, seed);
    if (verdict.isJudged) judged++;
    return verdict;
  },
  worstMeans: "m of head where EPANET got to its accuracy",
};

const plans: readonly Soak[] = [
  {
    name: "setbacks kept, rows wherever they may stand, five poses",
    count: 1000,
    check: distancesKept,
    worstMeans: "m too near",
  },
  { name: "same rows in five poses", count: 1000, check: sameInEveryPose, worstMeans: "m between poses" },
  { name: "sum of the rows and the closed form, five poses", count: 1000, check: closedForm, worstMeans: "of the sum" },
  {
    name: "rows through corners and along edges, five poses",
    count: 3000,
    check: rowsOnCorners,
    worstMeans: "m between poses",
  },
  {
    name: "row ends and the geometry kernel",
    count: 400,
    check: (seed) => crossingsAgainstKernel(geos, seed),
    worstMeans: "m",
  },
  {
    name: "rows with setbacks between the kernel's two answers",
    count: 400,
    check: (seed) => setbacksAgainstKernel(geos, seed),
    worstMeans: "of the sum between the two",
  },
  {
    name: "planting area and the geometry kernel",
    count: 400,
    check: (seed) => overlayAgainstKernel(geos, seed),
    worstMeans: "m2 per m of boundary",
  },
];

const soaks = asked.only === "trees" ? [trees] : asked.only === "plan" ? plans : [...plans, trees];
let failed = 0;
for (const { name, count, check, worstMeans } of soaks) {
  const begun = performance.now();
  const { faults, worst } = tally(seedsFrom(first, count), check);
  const seconds = ((performance.now() - begun) / 1000).toFixed(1);
  console.log(
    `${faults.length === 0 ? "ok  " : "FAIL"} ${name}: seeds ${first} to ${first + count - 1}, worst ${worst.toExponential(1)} ${worstMeans}, ${seconds} s`,
  );
  for (const fault of faults.slice(0, 20)) console.log(`     ${fault}`);
  if (faults.length > 20) console.log(`     and ${faults.length - 20} more`);
  if (faults.length > 0) failed++;
}
if (soaks.includes(trees)) console.log(`EPANET got to its accuracy on ${judged} of ${trees.count} trees`);
const cases = soaks.reduce((sum, { count }) => sum + count, 0);
console.log(`\n${cases} random cases from seed ${first}: ${soaks.length - failed} checks passed, ${failed} failed`);
process.exitCode = failed + keepingFailed + filesFailed === 0 ? 0 : 1;

function wholeNumber(typed: string, what: string): number {
  const value = Number(typed);
  if (!Number.isInteger(value)) throw new Error(`not ${what}: ${typed}`);
  return value;
}
