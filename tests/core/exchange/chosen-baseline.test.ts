import { expect, test } from "vitest";
import { chosenBaseline } from "../../../src/core/exchange/chosen-baseline.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { at, createBlock, createParcel, createProject, rectangle } from "../../support/create-project.ts";
import { geodesic } from "../../support/geodesic.ts";

const marks = [
  { key: "pin", name: "Gate pin", at: at([0, 0]) },
  { key: "nail", name: "Nail, oak", at: at([60, 0]) },
  { key: "near", name: "Other pin", at: at([0.4, 0]) },
  { key: "a", name: "Twin", at: at([0, 50]) },
  { key: "b", name: "Twin", at: at([0, 90]) },
];
const plan = createPlanner().plan(createProject({ marks }));

test.each(["gate pin, nail, oak", "Gate pin,Nail, oak", "pin, nail"])(
  "%j is the line from one mark to the other, commas in names or not",
  (text) => {
    const outcome = chosenBaseline(plan, text);
    expect(outcome.ok && outcome.value).toEqual({ name: text, from: marks[0]?.at, to: marks[1]?.at });
  },
);

test.each(["row 1", "1", "Row-1"])("%j is the line of a row from its start to its end", (text) => {
  const outcome = chosenBaseline(plan, text);
  const row = plan.rows?.rows[0];
  if (!outcome.ok || outcome.value === null || row === undefined) throw new Error("no baseline");
  expect(Math.abs(geodesic(outcome.value.from, outcome.value.to).length_m - row.length_m)).toBeLessThan(0.0002);
});

test.each([null, "", "  "])("nothing written down (%j) is no baseline", (text) => {
  expect(chosenBaseline(plan, text)).toEqual({ ok: true, value: null, findings: [] });
});

test.each([
  ["gate pin, well", "exchange/baseline-unknown"],
  ["row 99", "exchange/baseline-unknown"],
  ["gate pin", "exchange/baseline-unknown"],
  ["gate pin, twin", "exchange/baseline-ambiguous"],
  ["twin, gate pin", "exchange/baseline-ambiguous"],
  ["gate pin, other pin", "exchange/baseline-too-short"],
  ["gate pin, gate pin", "exchange/baseline-too-short"],
])("%j is refused: %s", (text, code) => {
  const outcome = chosenBaseline(plan, text);
  expect([outcome.ok, outcome.findings.map((finding) => finding.code)]).toEqual([false, [code]]);
});

test("a number that rows of two blocks have is refused, with its block it is one", () => {
  const half = (block: string, x: number) => ({
    key: block,
    block,
    polygons: createParcel([rectangle(30, 120, [x, 0])]).polygons,
  });
  const twins = createPlanner().plan(
    createProject({
      blocks: [createBlock({}, { id: "west" }), createBlock({}, { id: "east" })],
      blockAreas: [half("west", 0), half("east", 30)],
    }),
  );
  expect(chosenBaseline(twins, "row 1").findings.map(({ code }) => code)).toEqual(["exchange/baseline-ambiguous"]);
  expect(chosenBaseline(twins, "row east-1").ok).toBe(true);
});

test("a plan without ground has no baseline", () => {
  const nothing = createPlanner().plan(createProject({ parcels: [] }));
  expect(chosenBaseline(nothing, "row 1").findings.map(({ code }) => code)).toEqual(["exchange/baseline-unknown"]);
});
