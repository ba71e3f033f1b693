import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import {
  createPlanner,
  type Plan,
  type Project,
  parseProject,
  planJson,
  rowSideSvg,
  trenchProfileSvg,
} from "../../src/core/index.ts";
import { handedOver, textsOf } from "./handed-over.ts";

const folder = "samples";

/** Names of the samples in alphabetical order; the first is the one that everything starts with. */
export function sampleNames(): readonly string[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

/** A file of a sample. */
export function samplePath(sample: string, ...names: readonly string[]): string {
  return join(folder, sample, ...names);
}

/** The project of a sample. */
export function readSample(sample: string): Project {
  const read = parseProject(readFileSync(samplePath(sample, "project.geojson"), "utf8"));
  if (!read.ok) throw new Error(`${sample} is no project`);
  return read.value;
}

/** What a sample's plan should be, as the files under its `expected` folder; written by `npm run regen`, compared by a test. */
export function expectedFiles(sample: string): Readonly<Record<string, string>> {
  const plan = createPlanner().plan(readSample(sample));
  const { ground, blocks, totals, materials, findings } = planJson(plan);
  const codes = findings.map(({ code, severity, feature }) => ({ severity, code, feature }));
  const summary = { ground, blocks, totals, materials, findings: codes };
  return {
    ...textsOf(handedOver(plan, { as: "geojson", of: ["rows"] })),
    "summary.json": `${JSON.stringify(summary, rounded, 2)}\n`,
    "row.svg": drawnRow(plan),
    ...drawnTrench(plan),
  };
}

/** The longest row from its side. */
function drawnRow(plan: Plan): string {
  const [first, ...others] = plan.rows?.rows ?? [];
  const longest = others.reduce((long, row) => (long && row.length_m > long.length_m ? row : long), first);
  return `${rowSideSvg(plan, longest?.id ?? "", { units: plan.project.units }) ?? ""}\n`;
}

/** The main line's profile, where there is one. */
function drawnTrench(plan: Plan): Readonly<Record<string, string>> {
  const svg = trenchProfileSvg(plan, null, { units: plan.project.units });
  return svg === null ? {} : { "trench.svg": `${svg}\n` };
}

/** Millimetres and square decimetres are enough to review, and no last bit of a sine shows. */
function rounded(_name: string, value: unknown): unknown {
  return typeof value === "number" ? Number(value.toFixed(value > 1000 ? 2 : 4)) : value;
}
