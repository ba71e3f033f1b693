import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { changeSetting } from "../../src/app/commands/change-setting.ts";
import { draft } from "../../src/app/commands/edit.ts";
import { openProject } from "../../src/app/commands/open-project.ts";
import { turnRowsMeanwhile } from "../../src/app/commands/turn-rows.ts";
import { followWithPlantingArea } from "../../src/app/planting/follow-with-planting-area.ts";
import type { PlantingAnswer, PlantingQuestion } from "../../src/app/planting/planting-messages.ts";
import { createStore } from "../../src/app/store.ts";
import { plantingArea } from "../../src/core/plane/overlay.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { withSetting } from "../../src/core/project/edits.ts";

/** A store with a sample open, and a worker that answers when it is told to. */
function createFollowed() {
  const store = createStore();
  const file = new URL("../../samples/acre-with-notch/project.geojson", import.meta.url);
  openProject(store, readFileSync(file, "utf8"), "acre-with-notch.geojson");
  const questions: PlantingQuestion[] = [];
  const told: ((answer: PlantingAnswer) => void)[] = [];
  let ended = 0;
  const stop = followWithPlantingArea(store, (tell) => {
    told.push(tell);
    return {
      ask: (question) => {
        questions.push(question);
      },
      end: () => {
        ended++;
      },
    };
  });
  const answer = (question: PlantingQuestion | undefined, took_ms = 1) => {
    if (!question) throw new Error("nothing was asked");
    told.at(-1)?.({ number: question.number, area: plantingArea(question.parts), took_ms });
  };
  const workersEnded = () => ended;
  const area_m2 = () => store.plan.value?.ground?.plantingArea_m2 ?? null;
  return { store, questions, answer, area_m2, stop, workersEnded };
}

describe("the planting area", () => {
  test("is worked out beside the page, and the plan takes it when it comes", () => {
    const { store, questions, answer, area_m2 } = createFollowed();
    const rows = store.plan.value?.rows;
    expect([area_m2(), questions.length]).toEqual([null, 1]);
    answer(questions[0]);
    const project = store.project.value;
    if (!project) throw new Error("nothing is open");
    expect(area_m2()).toBe(createPlanner().plan(project).ground?.plantingArea_m2);
    expect(store.plan.value?.rows).toBe(rows);
    expect(questions).toHaveLength(1);
  });

  test("is not asked for again while the rows are turned", () => {
    const { store, questions, answer, area_m2 } = createFollowed();
    answer(questions[0]);
    const before = area_m2();
    turnRowsMeanwhile(store, 12);
    turnRowsMeanwhile(store, 13);
    expect([area_m2(), questions.length]).toEqual([before, 1]);
  });

  test("follows a drag where it is quick, and waits for its end where it is not", () => {
    const { store, questions, answer, area_m2 } = createFollowed();
    const setback = (length: string) => draft(store, (project) => withSetting(project, "ground.setback", length));
    answer(questions[0], 1);
    setback("4 m");
    expect(questions).toHaveLength(2);
    answer(questions[1], 500);
    setback("5 m");
    setback("6 m");
    expect([area_m2(), questions.length]).toEqual([null, 2]);
    changeSetting(store, "ground.setback", "6 m");
    expect(questions).toHaveLength(3);
    answer(questions[2], 500);
    expect(area_m2()).toBeGreaterThan(0);
  });

  test("of what is no longer shown is not taken for that of what is", () => {
    const { store, questions, answer, area_m2 } = createFollowed();
    changeSetting(store, "ground.setback", "10 m");
    answer(questions[0]);
    expect([area_m2(), questions.length]).toEqual([null, 2]);
    answer(questions[1]);
    const project = store.project.value;
    expect(area_m2()).toBe(project && createPlanner().plan(project).ground?.plantingArea_m2);
  });

  test("is asked of nobody once the map is gone", () => {
    const { store, questions, stop, workersEnded } = createFollowed();
    stop();
    changeSetting(store, "ground.setback", "10 m");
    expect([workersEnded(), questions.length]).toEqual([1, 1]);
  });
});
