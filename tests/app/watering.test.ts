import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { changeSetting } from "../../src/app/commands/change-setting.ts";
import { openProject } from "../../src/app/commands/open-project.ts";
import { turnRows, turnRowsMeanwhile } from "../../src/app/commands/turn-rows.ts";
import { createStore } from "../../src/app/store.ts";
import { followWithWaterings } from "../../src/app/watering/follow-with-waterings.ts";
import type { WateringAnswer, WateringQuestion } from "../../src/app/watering/watering-messages.ts";
import { waterRows } from "../../src/core/drip/water-rows.ts";
import { createMainWorks } from "../../src/core/main-works.ts";
import { layRoute } from "../../src/core/mainline/lay-route.ts";
import { createPlanner } from "../../src/core/planner.ts";

/** A store with a sample open and its main line laid, and a worker that answers when it is told to. */
function createWatered(sample: string) {
  const store = createStore();
  const file = new URL(`../../samples/${sample}/project.geojson`, import.meta.url);
  openProject(store, readFileSync(file, "utf8"), `${sample}.geojson`);
  const works = createMainWorks(layRoute);
  store.mainWorksOf.value = () => works;
  const questions: WateringQuestion[] = [];
  const told: ((answer: WateringAnswer) => void)[] = [];
  let ended = 0;
  const stop = followWithWaterings(store, (tell) => {
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
  const answer = (question: WateringQuestion | undefined): void => {
    if (question === undefined) throw new Error("nothing was asked");
    told.at(-1)?.({ number: question.number, watering: waterRows(question.job) });
  };
  return { store, questions, answer, stop, watering: () => store.plan.value?.watering?.watering, ended: () => ended };
}

test("a small field is watered on the spot, as a full planner does it, and asks no worker", () => {
  const { store, questions, watering } = createWatered("acre-with-notch");
  const project = store.project.value;
  if (!project) throw new Error("nothing is open");
  expect(watering()?.sets.length).toBeGreaterThan(0);
  expect(watering()).toEqual(createPlanner().plan(project).watering?.watering);
  expect([questions.length, store.isWateringAsked.value]).toEqual([0, false]);
});

test("another emitter waters it anew, and taking that back finds the first watering again", () => {
  const { store, watering } = createWatered("acre-with-notch");
  const before = watering();
  expect(changeSetting(store, "drip.emitterFlow", "1 gal/h")).toEqual([]);
  expect(watering()?.sets.length).toBeGreaterThan(before?.sets.length ?? Infinity);
  changeSetting(store, "drip.emitterFlow", "0.5 gal/h");
  expect(watering()).toBe(before);
});

test("a large field is asked of the worker; until it answers anew the last watering stands in", () => {
  const { store, questions, answer, watering } = createWatered("brook-and-two-blocks");
  expect([questions.length, watering(), store.isWateringAsked.value]).toEqual([1, null, true]);
  answer(questions[0]);
  const first = watering();
  expect(first?.sets.length).toBeGreaterThan(0);
  expect(store.isWateringAsked.value).toBe(false);
  changeSetting(store, "sets.mostVelocity", 1.2);
  expect([questions.length, watering(), store.isWateringAsked.value]).toEqual([2, first, true]);
  answer(questions[1]);
  expect(watering()).not.toBe(first);
  expect(store.isWateringAsked.value).toBe(false);
}, 30_000);

test("while rows are turned nothing is watered, and it follows when they are let go", () => {
  const { store, watering } = createWatered("acre-with-notch");
  turnRowsMeanwhile(store, 12);
  expect(store.plan.value?.watering).toBeNull();
  turnRows(store, 12);
  expect(watering()?.sets.length).toBeGreaterThan(0);
});

test("who stops following leaves no worker behind, and no watering", () => {
  const { store, stop, ended } = createWatered("brook-and-two-blocks");
  stop();
  expect([store.plan.value?.watering, ended()]).toEqual([null, 1]);
});
