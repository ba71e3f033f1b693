import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { changeSetting } from "../../src/app/commands/change-setting.ts";
import { draft, dropDraft, edit } from "../../src/app/commands/edit.ts";
import { openProject } from "../../src/app/commands/open-project.ts";
import { turnRowsMeanwhile } from "../../src/app/commands/turn-rows.ts";
import { undo } from "../../src/app/commands/undo.ts";
import { findAgain, takeOverRoute } from "../../src/app/mainline/take-over.ts";
import { followWithRoutes } from "../../src/app/route/follow-with-routes.ts";
import type { RouteAnswer, RouteQuestion } from "../../src/app/route/route-messages.ts";
import { createStore } from "../../src/app/store.ts";
import { withCornerMoved } from "../../src/core/drawing/corners.ts";
import { createLeanPlanner } from "../../src/core/lean-planner.ts";
import { createMainWorks } from "../../src/core/main-works.ts";
import { layRoute } from "../../src/core/mainline/lay-route.ts";
import { lonLat } from "../../src/core/plane/coordinate.ts";

/** A store with a sample open, and a worker that answers when it is told to. */
function createFollowed(sample = "acre-with-notch") {
  const store = createStore();
  const file = new URL(`../../samples/${sample}/project.geojson`, import.meta.url);
  openProject(store, readFileSync(file, "utf8"), `${sample}.geojson`);
  const questions: RouteQuestion[] = [];
  const told: ((answer: RouteAnswer) => void)[] = [];
  const stop = followWithRoutes(store, (tell) => {
    told.push(tell);
    return {
      ask: (question) => {
        questions.push(question);
      },
      end: () => {},
    };
  });
  const answer = (question: RouteQuestion | undefined) => {
    if (!question) throw new Error("nothing was asked");
    told.at(-1)?.({ number: question.number, route: layRoute(question.job) });
  };
  const answerWithout = (question: RouteQuestion | undefined) => {
    if (!question) throw new Error("nothing was asked");
    told.at(-1)?.({ number: question.number, route: null });
  };
  const route = () => store.plan.value?.mainline?.route ?? null;
  const sourceKey = store.project.value?.sources[0]?.key ?? "";
  /** Holds the first source a little aside, as a drag would. */
  const holdSource = (by_deg: number) => {
    const at = store.history.value?.steps[0]?.project.sources[0]?.at;
    if (!at) throw new Error("no source to hold");
    draft(store, (project) =>
      withCornerMoved(project, { key: sourceKey, path: 0, corner: 0 }, lonLat(at[0] + by_deg, at[1])),
    );
  };
  return { store, questions, answer, answerWithout, route, holdSource, stop };
}

describe("the route of the main line", () => {
  test("is laid beside the page, and the plan is then the same as one that lays it itself", () => {
    const { store, questions, answer, route } = createFollowed();
    expect(route()).toBeNull();
    expect(store.routeState.value).toBe("asked");
    expect(questions).toHaveLength(1);
    answer(questions[0]);
    const project = store.project.value;
    if (!project) throw new Error("nothing is open");
    const whole = createLeanPlanner({ mainWorks: createMainWorks(layRoute) }).plan(project);
    expect(route()).not.toBeNull();
    expect(store.plan.value?.mainline).toEqual(whole.mainline);
    expect(store.plan.value?.trench).toEqual(whole.trench);
    expect(store.routeState.value).toBe("laid");
    expect(questions).toHaveLength(1);
  });

  test("is neither shown nor asked for while rows are turned, and is there again when the turn is dropped", () => {
    const { store, questions, answer, route } = createFollowed();
    answer(questions[0]);
    const before = route();
    for (const bearing_deg of [12, 13, 14]) turnRowsMeanwhile(store, bearing_deg);
    expect(store.plan.value?.mainline).toMatchObject({ job: null, route: null });
    expect(store.routeState.value).toBe("waiting");
    expect(questions).toHaveLength(1);
    dropDraft(store);
    expect(route()).toBe(before);
    expect(store.routeState.value).toBe("laid");
    expect(questions).toHaveLength(1);
  });

  test("follows a source that is held: one question at a time, the newest next, the last answer shown meanwhile", () => {
    const { store, questions, answer, route, holdSource } = createFollowed();
    answer(questions[0]);
    const first = route();
    for (const by_deg of [1e-5, 2e-5, 3e-5]) holdSource(by_deg);
    expect(questions).toHaveLength(2);
    expect(route()).toBe(first);
    expect(store.routeState.value).toBe("asked");
    answer(questions[1]);
    // The middle place was passed over.
    expect(questions).toHaveLength(3);
    expect(route()).not.toBe(first);
    answer(questions[2]);
    expect(store.routeState.value).toBe("laid");
    const now = store.plan.value?.mainline;
    expect(now?.job && layRoute(now.job)).toEqual(now?.route);
  });

  test("is found again when an edit is taken back, and never shown on rows it was not laid for", () => {
    const { store, questions, answer, route } = createFollowed();
    answer(questions[0]);
    const before = route();
    changeSetting(store, "rows.rowSpacing", "12 ft");
    expect(route()).toBeNull();
    expect(questions).toHaveLength(2);
    answer(questions[1]);
    expect(route()?.waterEnd).toHaveLength(store.plan.value?.rows?.rows.length ?? -1);
    undo(store);
    expect(route()).toBe(before);
    expect(questions).toHaveLength(2);
  });

  test("is not asked for twice where none came of it", () => {
    const { store, questions, answerWithout, route, stop } = createFollowed();
    answerWithout(questions[0]);
    expect(store.routeState.value).toBe("laid");
    expect(route()).toBeNull();
    changeSetting(store, "name", "Another name");
    expect(questions).toHaveLength(1);
    stop();
    expect(store.plan.value?.mainline?.job).toBeNull();
  });

  test("is not asked for without a source", () => {
    const { store, questions, answer } = createFollowed();
    answer(questions[0]);
    edit(store, { name: "none" }, (project) => ({ ok: true, value: { ...project, sources: [] }, findings: [] }));
    expect(store.plan.value?.mainline?.job).toBeNull();
    expect(questions).toHaveLength(1);
    expect(store.routeState.value).toBe("laid");
  });
});

describe("taking the route over", () => {
  test("makes its trunk a drawn line as one step, which can be let go again", () => {
    const { store, questions, answer, route } = createFollowed();
    answer(questions[0]);
    const found = route();
    expect(takeOverRoute(store)).toEqual([]);
    const [line] = store.project.value?.mainLines ?? [];
    expect(line?.line.length).toBeGreaterThanOrEqual(2);
    expect(store.drawing.selected.value).toBe(line?.key);
    expect(store.history.value?.steps).toHaveLength(2);
    answer(questions[1]);
    // What was found and is kept is no longer trench than before.
    expect(route()?.length_m).toBeLessThanOrEqual((found?.length_m ?? 0) * 1.02);
    expect([...(route()?.isDrawn ?? [])]).toContain(1);
    expect(findAgain(store)).toEqual([]);
    expect(store.project.value?.mainLines).toEqual([]);
    expect(route()).toBe(found);
  });
});
