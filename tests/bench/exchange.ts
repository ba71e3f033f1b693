import { type HandOverChoice, usualChoice } from "../../src/core/exchange/choice.ts";
import type { Chunk } from "../../src/core/exchange/format.ts";
import { handingOver } from "../../src/core/exchange/hand-over.ts";
import { text } from "../../src/core/units.ts";
import { writtenAt } from "../support/handed-over.ts";
import { manyVinesPlan } from "./many-vines.ts";
import { table } from "./timing.ts";

// A quarter of a million vines out into each format that is written piece by piece: best time of three, what of it the
// processor worked (another job on the machine does not add to that), bytes, and the longest stretch without giving way. The bar of GeoJSON, CSV and shapefile is 3 s each, and no stretch over 100 ms. Nothing here passes or fails.

const bar_s = 3;
const rounds = 3;
const jobs: readonly (readonly [said: string, as: string, change: Partial<HandOverChoice>, bar: boolean])[] = [
  ["GeoJSON", "geojson", {}, true],
  ["CSV", "csv", {}, true],
  ["CSV, UTM", "csv", { system: "utm" }, false],
  ["shapefile", "shapefile", {}, true],
  ["shapefile, UTM", "shapefile", { system: "utm" }, false],
  ["GeoJSON, names by a pattern", "geojson", { naming: "{row}-{number}" }, false],
  ["KML", "kml", {}, false],
  ["GPX, 10 letters", "gpx", {}, false],
  ["points for survey controllers", "survey-csv", { system: "utm" }, false],
  ["DXF", "dxf", {}, false],
  ["XLSX", "xlsx", {}, false],
];

const plan = manyVinesPlan();
const vines = (plan.rows?.rows ?? []).reduce((sum, row) => sum + row.vines, 0);
console.log(
  `${vines.toLocaleString("en-US")} vines in ${plan.rows?.rows.length} rows out into open formats, best of ${rounds}\n`,
);

// Names of formats behind the command: only those.
const wanted = process.argv.slice(2);
const chosen = jobs.filter(([, as]) => wanted.length === 0 || wanted.includes(as));
const lines = chosen.map(([said, as, change, hasBar]) => {
  const measured = Array.from({ length: rounds }, () => written({ ...usualChoice, as, of: ["vines"], ...change }));
  const best = measured.reduce((a, b) => (b.all_ms < a.all_ms ? b : a));
  return [
    said,
    `${(best.all_ms / 1000).toFixed(2)} s`,
    `${Math.min(...measured.map(({ worked_ms }) => worked_ms / 1000)).toFixed(2)} s`,
    hasBar ? `${bar_s} s` : "",
    `${Math.min(...measured.map(({ longest_ms }) => longest_ms)).toFixed(0)} ms`,
    `${(best.bytes / 1e6).toFixed(1)} MB`,
  ];
});
console.log(table([["", "time", "processor", "bar", "longest stretch", "size"], ...lines]));

/** All of it written and thrown away. */
function written(choice: HandOverChoice) {
  let [bytes, longest_ms] = [0, 0];
  const begun = performance.now();
  const before = process.cpuUsage();
  let last = begun;
  const gaveWay = () => {
    const now = performance.now();
    longest_ms = Math.max(longest_ms, now - last);
    last = now;
  };
  const work = handingOver(plan, choice, writtenAt);
  let step = work.next();
  for (; step.done !== true; step = work.next()) gaveWay();
  gaveWay();
  if (!step.value.ok) throw new Error(step.value.findings.map(({ message }) => text(message, "metric")).join("; "));
  for (const { content } of step.value.value.files) {
    if (content.kind === "database") continue;
    for (const chunk of content.chunks()) {
      gaveWay();
      bytes += sizeOf(chunk);
    }
    gaveWay();
  }
  const { user, system } = process.cpuUsage(before);
  return { all_ms: performance.now() - begun, worked_ms: (user + system) / 1000, longest_ms, bytes };
}

function sizeOf(chunk: Chunk): number {
  return chunk.length;
}
