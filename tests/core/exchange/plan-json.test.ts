import { expect, test } from "vitest";
import { emptyPlanJson, planJson } from "../../../src/core/exchange/plan-json.ts";
import { sweepJson } from "../../../src/core/exchange/sweep-json.ts";
import { type Finding, quantity, say } from "../../../src/core/finding.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { createProject } from "../../support/create-project.ts";

const sum_m = 1e-6;
const plan = createPlanner().plan(createProject());

const finding: Finding = {
  code: "ground/example",
  severity: "error",
  at: lonLat(-76.9, 42.6),
  feature: "oak",
  message: say`It is ${quantity("length", 3.048)} off.`,
  reason: say`So.`,
  remedy: say`Move it.`,
};

test("totals are the sums of the rows", () => {
  const { rows, totals } = planJson(plan);
  const sum = (of: (row: (typeof rows)[number]) => number) => rows.reduce((total, row) => total + of(row), 0);
  expect(rows.length).toBe(totals.rows);
  expect(totals.vines).toBe(sum((row) => row.vines));
  expect(totals.emitters).toBe(sum((row) => row.emitters));
  expect(Math.abs(totals.rowLength_m - sum((row) => row.length_m))).toBeLessThan(sum_m);
  expect(Math.abs(totals.lateral_m - sum((row) => row.lateral_m))).toBeLessThan(sum_m);
  expect(Math.abs((totals.wire_m.fruiting ?? 0) - sum((row) => row.wire_m.fruiting ?? 0))).toBeLessThan(sum_m);
});

test("row ends are [lon, lat] with at most 9 decimals, lengths are not rounded", () => {
  const [row] = planJson(plan).rows;
  expect(row?.start[0]).toBeCloseTo(-76.9, 2);
  expect(row?.start[1]).toBeCloseTo(42.6, 2);
  expect(String(row?.end[1]).split(".")[1]?.length ?? 0).toBeLessThanOrEqual(9);
  expect(row?.length_m).toBe(plan.rows?.rows[0]?.length_m);
});

test("the object says which schema it is and survives JSON", () => {
  const json = planJson(plan, { source: "a.geojson" });
  expect(json).toMatchObject({ schema: "tautrow-plan", version: 1, source: "a.geojson", name: "Test ground" });
  expect(JSON.parse(JSON.stringify(json))).toEqual(json);
});

test("a project with an error keeps every member: no rows, totals of zero", () => {
  const json = planJson(createPlanner().plan(createProject({ findings: [finding] })));
  expect(json.rows).toEqual([]);
  expect(json.ground).toEqual({ parcelArea_m2: null, plantingArea_m2: null, sketch: false, frame: null });
  expect(json.totals).toMatchObject({
    rows: 0,
    rowLength_m: 0,
    vines: 0,
    lateral_m: 0,
    wire_m: { drip: 0, fruiting: 0 },
  });
  expect(Object.keys(json)).toEqual(Object.keys(planJson(plan)));
  expect(json.findings.map((each) => each.code)).toEqual(["ground/example"]);
});

test("an input that is no project gives the same members", () => {
  expect(Object.keys(emptyPlanJson([finding]))).toEqual(Object.keys(planJson(plan)));
  expect(Object.keys(emptyPlanJson([finding]).totals)).toEqual(Object.keys(planJson(plan).totals));
});

test("a finding carries its place, its feature and its sentences in the units asked for", () => {
  expect(emptyPlanJson([finding]).findings[0]).toEqual({
    code: "ground/example",
    severity: "error",
    message: "It is 3.05 m off.",
    reason: "So.",
    remedy: "Move it.",
    at: [-76.9, 42.6],
    feature: "oak",
  });
  expect(emptyPlanJson([finding], { units: "us" }).findings[0]?.message).toBe("It is 10 ft off.");
});

test("a sweep is one object with its points and the best of them", () => {
  const sweep = createPlanner().sweep(createProject(), "1", 30);
  const json = sweepJson([sweep], 30);
  expect(json).toMatchObject({ schema: "tautrow-sweep", version: 1, step_deg: 30 });
  expect(json.blocks[0]?.points.map((point) => point.bearing_deg)).toEqual([0, 30, 60, 90, 120, 150]);
  expect(json.blocks[0]?.points).toContainEqual(json.blocks[0]?.best);
});

test("the runs of the rows are the wire of the list, its coils cut every one of them, and blocks cost what the whole does", () => {
  const json = planJson(plan, { units: "us" });
  const [wire] = json.coils;
  const ofArticle = json.rows.flatMap(({ runs }) => runs.filter(({ article }) => article === wire?.article));
  expect(ofArticle.length).toBe(wire?.runs.length);
  const line = json.materials.find(({ article }) => article === wire?.article);
  const run_m = ofArticle.reduce((sum, { count, length_m }) => sum + count * length_m, 0);
  expect(Math.abs(run_m - Number(line?.needed))).toBeLessThan(sum_m);
  expect(line?.spec).toContain(" ga");
  const cuts = wire?.plan?.noJoins?.coils.flatMap((coil) => coil.cuts.map(({ run }) => run)) ?? [];
  expect(cuts.toSorted((a, b) => a - b)).toEqual(wire?.runs.map((_, i) => i));
  const endPosts = json.rows.flatMap(({ parts }) => parts.filter(({ article }) => article.startsWith("end-post")));
  expect(endPosts.reduce((sum, { quantity: posts }) => sum + posts, 0)).toBe(2 * json.totals.rows);
  expect(json.trellis.blocks[0]?.loads?.wires).toHaveLength(json.trellis.blocks[0]?.wires.length ?? -1);
  expect(json.cost.blocks.reduce((sum, { mass_kg }) => sum + mass_kg, 0)).toBeCloseTo(json.cost.mass_kg, 6);
});
