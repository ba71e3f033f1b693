import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { changeSetting } from "../../src/app/commands/change-setting.ts";
import { dropDraft } from "../../src/app/commands/edit.ts";
import { openProject } from "../../src/app/commands/open-project.ts";
import { turnRowsMeanwhile } from "../../src/app/commands/turn-rows.ts";
import { undo } from "../../src/app/commands/undo.ts";
import type { CuttingAnswer, CuttingQuestion } from "../../src/app/cutting/cutting-messages.ts";
import { followWithCutting } from "../../src/app/cutting/follow-with-cutting.ts";
import { createStore } from "../../src/app/store.ts";
import { createLeanPlanner } from "../../src/core/lean-planner.ts";
import { cutCoils } from "../../src/core/materials/cutting/cut-coils.ts";
import { materials } from "../../src/core/materials/materials.ts";

/** A store with a sample open, and a worker that answers when it is told to. */
function createFollowed() {
  const store = createStore();
  store.materialsOf.value = materials;
  const file = new URL("../../samples/acre-with-notch/project.geojson", import.meta.url);
  openProject(store, readFileSync(file, "utf8"), "acre-with-notch.geojson");
  const questions: CuttingQuestion[] = [];
  const told: ((answer: CuttingAnswer) => void)[] = [];
  followWithCutting(store, (tell) => {
    told.push(tell);
    return {
      ask: (question) => {
        questions.push(question);
      },
      end: () => {},
    };
  });
  const answer = (question: CuttingQuestion | undefined) => {
    if (!question) throw new Error("nothing was asked");
    told.at(-1)?.({ number: question.number, plans: question.jobs.map(cutCoils) });
  };
  const coils = () => store.plan.value?.materials?.coils ?? [];
  return { store, questions, answer, coils };
}

describe("the cutting plans", () => {
  test("are worked out beside the page, and the list takes them when they come", () => {
    const { store, questions, answer, coils } = createFollowed();
    expect(coils().map(({ plan }) => plan)).toEqual([null, null]);
    expect(questions.map(({ jobs }) => jobs.length)).toEqual([2]);
    answer(questions[0]);
    const project = store.project.value;
    if (!project) throw new Error("nothing is open");
    expect(store.plan.value?.materials).toEqual(
      createLeanPlanner({ cutOf: cutCoils, materialsOf: materials }).plan(project).materials,
    );
    expect(questions).toHaveLength(1);
  });

  test("are not asked for while rows are turned, and are as they were when the turn is dropped", () => {
    const { store, questions, answer, coils } = createFollowed();
    answer(questions[0]);
    turnRowsMeanwhile(store, 12);
    expect(questions).toHaveLength(1);
    expect(coils().some(({ plan }) => plan === null)).toBe(true);
    dropDraft(store);
    expect(coils().every(({ plan }) => plan !== null)).toBe(true);
    expect(questions).toHaveLength(1);
  });

  test("are asked for one at a time, only where something changed, and are found again when it is taken back", () => {
    const { store, questions, answer, coils } = createFollowed();
    changeSetting(store, "materials.wireCoil", "2000 ft");
    changeSetting(store, "materials.wireCoil", "4000 ft");
    expect(questions).toHaveLength(1);
    answer(questions[0]);
    // The hose is as it was: only the wire is asked for, as it is now.
    expect(questions.map(({ jobs }) => jobs.map(({ article }) => article))).toEqual([
      ["wire-13ga", "hose"],
      ["wire-13ga"],
    ]);
    answer(questions[1]);
    expect(coils().every(({ plan }) => plan !== null)).toBe(true);
    undo(store);
    // The step between was passed over and never asked for.
    expect(questions).toHaveLength(3);
    undo(store);
    expect(coils().every(({ plan }) => plan !== null)).toBe(true);
    expect(questions).toHaveLength(3);
  });
});
