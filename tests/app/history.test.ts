import { describe, expect, test } from "vitest";
import { begin, current, type History, nextSteps, redone, undone, withStep } from "../../src/app/history.ts";
import { createProject } from "../support/create-project.ts";

function createHistory(...names: readonly string[]): History {
  return names.reduce(
    (history, name) => withStep(history, { name, project: createProject({ name }), joins: null }),
    begin(createProject()),
  );
}

describe("the steps of a project", () => {
  test("each edit is a step that can be taken back and brought again", () => {
    const history = createHistory("Draw the parcel", "Turn the rows to 24°");
    expect(nextSteps(history)).toEqual({ undo: "Turn the rows to 24°", redo: null });
    const back = undone(history);
    expect(nextSteps(back)).toEqual({ undo: "Draw the parcel", redo: "Turn the rows to 24°" });
    expect(current(redone(back))).toBe(current(history));
  });

  test("there is nothing before the start and nothing after the end", () => {
    const start = begin(createProject());
    expect(undone(start)).toBe(start);
    expect(redone(start)).toBe(start);
    expect(nextSteps(start)).toEqual({ undo: null, redo: null });
  });

  test("a new step after an undo takes the place of what was undone", () => {
    const history = undone(createHistory("one", "two"));
    const changed = withStep(history, { name: "three", project: createProject({ name: "three" }), joins: null });
    expect(changed.steps.map(({ name }) => name)).toEqual(["Start", "one", "three"]);
    expect(nextSteps(changed).redo).toBeNull();
  });

  test("an edit that changes nothing is no step", () => {
    const history = createHistory("one");
    expect(withStep(history, { name: "nothing", project: current(history).project, joins: null })).toBe(history);
  });

  test("the letters of one typed value are one step, those of the next another", () => {
    const typed = (history: History, name: string, joins: string) =>
      withStep(history, { name, project: createProject({ name }), joins });
    let history = begin(createProject());
    for (const name of ["2", "2.", "2.5"]) history = typed(history, name, "row spacing, first stay");
    for (const name of ["3", "3.5"]) history = typed(history, name, "row spacing, second stay");
    expect(history.steps.map(({ name }) => name)).toEqual(["Start", "2.5", "3.5"]);
  });

  test("a value typed after an undo does not join the step that is shown again from before", () => {
    const first = { name: "2.5", project: createProject({ name: "2.5" }), joins: "stay" };
    const start = begin(createProject());
    const back = undone(withStep(start, first));
    expect(current(back).name).toBe("Start");
    expect(withStep(back, { ...first, project: createProject({ name: "again" }) }).steps).toHaveLength(2);
  });

  test("the oldest steps fall off after a thousand, and undo still ends at a start", () => {
    let history = begin(createProject());
    for (let i = 0; i < 1010; i++) {
      history = withStep(history, { name: `step ${i}`, project: createProject({ name: `step ${i}` }), joins: null });
    }
    expect(history.steps).toHaveLength(1001);
    expect(history.steps[0]).toMatchObject({ name: "Start", project: { name: "step 9" } });
    expect(current(history).name).toBe("step 1009");
    expect(nextSteps({ ...history, at: 1 }).undo).toBe("step 10");
  });
});
