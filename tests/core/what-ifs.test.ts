import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Plan } from "../../src/core/plan.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { withSettings } from "../../src/core/project/edits.ts";
import { parseProject } from "../../src/core/project/parse.ts";
import type { Project } from "../../src/core/project/project.ts";
import { si } from "../../src/core/project/si.ts";
import { comparePlans } from "../../src/core/variants.ts";
import { whatIfs } from "../../src/core/what-ifs.ts";

const read = parseProject(readFileSync("samples/acre-with-notch/project.geojson", "utf8"));
if (!read.ok) throw new Error("the sample reads");
const project: Project = read.value;
const [block] = project.blocks;
const planOf = (of: Project): Plan => createPlanner().plan(of);
const asItIs = planOf(project);

function changedBy(id: string): Project {
  const found = whatIfs(project, block?.id ?? "").find((each) => each.id === id);
  const outcome = withSettings(project, found?.edits ?? []);
  if (found === undefined || !outcome.ok) throw new Error(`${id} is offered and can be set`);
  return outcome.value;
}

test("every change of mind that is offered can be set and changes what is bought, or which pipe goes where", () => {
  const offered = whatIfs(project, block?.id ?? "");
  expect(new Set(offered.map(({ id }) => id)).size).toBe(offered.length);
  for (const { id } of offered) {
    const changed = planOf(changedBy(id));
    const { lines } = comparePlans(asItIs, changed);
    const isBought = lines.some((line) => line.left !== line.right || line.leftPacks !== line.rightPacks);
    const isLaid = changed.watering?.watering?.pipes.some(
      ({ line, points }, i) =>
        line !== asItIs.watering?.watering?.pipes[i]?.line ||
        points.join() !== asItIs.watering.watering.pipes[i]?.points.join(),
    );
    expect(isBought || isLaid, id).toBe(true);
  }
});

test("what is built already is not offered, nor anything for a block that is not there", () => {
  const one = changedBy("one-fruiting-wire");
  const ids = whatIfs(one, block?.id ?? "").map(({ id }) => id);
  expect(ids).not.toContain("one-fruiting-wire");
  expect(ids).toContain("two-fruiting-wires");
  expect(ids).not.toContain("coils-1000ft");
  expect(whatIfs(project, "nowhere")).toEqual([]);
});

test("one fruiting wire takes the upper one's length off, and clips and grippers with it", () => {
  const comparison = comparePlans(asItIs, planOf(changedBy("one-fruiting-wire")));
  const total = comparison.totals.find(({ name }) => name === "Wire");
  expect(Number(total?.left) * (2 / 3)).toBeCloseTo(Number(total?.right), 6);
  const clips = comparison.lines.find(({ article }) => article.startsWith("stake-clip"));
  expect(Number(clips?.right)).toBeLessThan(Number(clips?.left));
});

test("thicker wire is another article: gone on one side, new on the other", () => {
  const { lines } = comparePlans(asItIs, planOf(changedBy("wire-12ga")));
  expect(lines.filter(({ item, right }) => item === "Wire" && right === null)).toHaveLength(1);
  expect(lines.filter(({ item, left }) => item === "Wire" && left === null)).toHaveLength(1);
});

test("a plan beside itself differs in nothing", () => {
  const comparison = comparePlans(asItIs, asItIs);
  expect(comparison.onlyLeft).toEqual([]);
  expect(comparison.onlyRight).toEqual([]);
  expect(comparison.totals.every(({ left, right }) => left === right)).toBe(true);
});

test("rows that are all fed at one end take as much trench as the cheapest ends do, or more, or some get no water", () => {
  const lost = (plan: Plan) => plan.mainline?.route?.unreached ?? [];
  for (const end of ["start", "end"] as const) {
    const plan = planOf(changedBy(`water-at-the-${end}`));
    const fed = plan.mainline?.waterEnd.filter((_, row) => !lost(plan).includes(row));
    expect(new Set(fed)).toEqual(new Set([end]));
    const isLonger = Number(plan.mainline?.route?.length_m) >= Number(asItIs.mainline?.route?.length_m) - 1e-6;
    expect(isLonger || lost(plan).length > lost(asItIs).length).toBe(true);
  }
});

test("a deeper cover moves more earth along the same line", () => {
  const { totals } = comparePlans(asItIs, planOf(changedBy("cover-24in")));
  const total = (name: string) => totals.find((each) => each.name === name);
  expect(total("Trench to dig")?.right).toBeCloseTo(Number(total("Trench to dig")?.left), 9);
  expect(Number(total("Earth to dig")?.right)).toBeGreaterThan(1.2 * Number(total("Earth to dig")?.left));
  expect(whatIfs(changedBy("cover-30in"), block?.id ?? "").map(({ id }) => id)).not.toContain("cover-24in");
});

test("smaller emitters are as many, and less water at a time; two at a vine are twice as many", () => {
  const smaller = planOf(changedBy("emitters-0.4gph"));
  expect(smaller.drip?.emitters).toBe(asItIs.drip?.emitters);
  expect(Number(smaller.drip?.flow_lph) / Number(asItIs.drip?.flow_lph)).toBeCloseTo(
    si("flow", "0.4 gal/h") / Number(block?.drip.emitterFlow_lph),
    9,
  );
  expect(planOf(changedBy("two-emitters")).drip?.emitters).toBe(2 * Number(asItIs.drip?.emitters));
});

test("valves and pipes are offered where there is water to open and shut, in the sizes of the country", () => {
  const ids = (of: Project) => whatIfs(of, block?.id ?? "").map(({ id }) => id);
  expect(ids(project)).toContain("cock-a-row");
  expect(ids(project)).toContain("pipe-pvc-sdr26");
  expect(ids(project)).not.toContain("pipe-pvc-pn6");
  const dry = { ...project, water: { ...project.water, kind: "unknown" as const } };
  expect(ids(dry)).not.toContain("cock-a-row");
  expect(ids({ ...project, sets: { ...project.sets, sizing: "as-set" } })).not.toContain("pipe-pvc-sdr26");
  const first = project.blocks[0];
  if (first === undefined) throw new Error("the sample has a block");
  const built = { ...project, blocks: [{ ...first, drip: { ...first.drip, emitterPlacing: "in-line" as const } }] };
  expect(ids(built)).not.toContain("two-emitters");
});
