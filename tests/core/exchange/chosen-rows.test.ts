import { expect, test } from "vitest";
import { chosenRows } from "../../../src/core/exchange/chosen-rows.ts";
import type { Plan } from "../../../src/core/plan.ts";
import { planePoint } from "../../../src/core/plane/coordinate.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { createProject } from "../../support/create-project.ts";

const whole = createPlanner().plan(createProject());
const single = planOf("1", ["1", "2", "9", "10", "14a", "14b", "15"]);
const several = planOf(null, ["east-1", "east-2a", "east-2b", "west-1", "west-2", "west-10"]);

test.each([
  ["1-10", ["1", "2", "9", "10"]],
  ["10 - 1", ["1", "2", "9", "10"]],
  ["14", ["14a", "14b"]],
  ["14a", ["14a"]],
  ["14A, 2", ["2", "14a"]],
  ["14b..15", ["14b", "15"]],
  ["10–14a", ["10", "14a"]],
  ["row-9", ["9"]],
  [" 9 ,, 9", ["9"]],
])("of a plan with one block %j chooses rows %j", (text, ids) => {
  expect(idsOf(single, text)).toEqual(ids);
});

test.each([
  ["1", ["east-1", "west-1"]],
  ["east", ["east-1", "east-2a", "east-2b"]],
  ["east-2", ["east-2a", "east-2b"]],
  ["East 2b", ["east-2b"]],
  ["1-2", ["east-1", "east-2a", "east-2b", "west-1", "west-2"]],
  ["west-1-2", ["west-1", "west-2"]],
  ["west 2..10, east-1", ["east-1", "west-2", "west-10"]],
])("of a plan with several blocks %j chooses rows %j", (text, ids) => {
  expect(idsOf(several, text)).toEqual(ids);
});

test.each([null, "", " , "])("nothing written down (%j) chooses all rows", (text) => {
  expect(chosenRows(whole, text)).toEqual({ ok: true, value: null, findings: [] });
});

test("a row that is not there is named, and nothing is chosen", () => {
  const outcome = chosenRows(single, "1-3, 99, north");
  expect(outcome.ok).toBe(false);
  expect(outcome.findings.map(({ code }) => code)).toEqual(["exchange/rows-unknown"]);
  expect(outcome.findings[0]?.message.join("")).toBe('No row is called "99" and "north".');
  expect(outcome.findings[0]?.remedy.join("")).toContain("Rows go from 1 to 15");
});

test("of a plan without rows every part is unknown", () => {
  expect(chosenRows({ rows: null }, "1").findings.map(({ code }) => code)).toEqual(["exchange/rows-unknown"]);
});

test("where blocks are called by numbers, 1-10 is a row and a range: it is asked, never guessed", () => {
  const numbered = planOf(null, ["1-1", "1-5", "1-10", "2-1"]);
  const outcome = chosenRows(numbered, "1-10");
  expect([outcome.ok, outcome.findings.map(({ code }) => code)]).toEqual([false, ["exchange/rows-ambiguous"]]);
  expect(outcome.findings[0]?.remedy.join("")).toBe("Write row-1-10 for the one row, or 1..10 for the rows between.");
  expect(idsOf(numbered, "row-1-10")).toEqual(["1-10"]);
  expect(idsOf(numbered, "1..10")).toEqual(["1-1", "1-5", "1-10", "2-1"]);
  expect(idsOf(numbered, "2-1")).toEqual(["2-1"]);
});

/** A plan whose rows have these ids; the part before the last dash is the block, unless there is one block only. */
function planOf(only: string | null, ids: readonly string[]): Pick<Plan, "rows"> {
  const [first] = whole.rows?.rows ?? [];
  if (whole.rows === null || first === undefined) throw new Error("the plan has no rows");
  const rows = ids.map((id) => ({
    ...first,
    id,
    block: only ?? id.slice(0, id.lastIndexOf("-")),
    start: planePoint(0, 0),
  }));
  return { rows: { ...whole.rows, rows } };
}

function idsOf(plan: Pick<Plan, "rows">, text: string): readonly string[] {
  const outcome = chosenRows(plan, text);
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => message.join("")).join("; "));
  return (plan.rows?.rows ?? []).map(({ id }) => id).filter((id) => outcome.value?.has(id));
}
