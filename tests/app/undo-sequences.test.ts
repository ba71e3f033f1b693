import { readFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import { batch } from "@preact/signals";
import { expect, test } from "vitest";
import { changeSetting } from "../../src/app/commands/change-setting.ts";
import { dropDraft, edit } from "../../src/app/commands/edit.ts";
import { openProject } from "../../src/app/commands/open-project.ts";
import { turnRows, turnRowsMeanwhile } from "../../src/app/commands/turn-rows.ts";
import { redo, undo } from "../../src/app/commands/undo.ts";
import { current, nextSteps } from "../../src/app/history.ts";
import { createStore, type Store } from "../../src/app/store.ts";
import { withCornerInserted, withCornerMoved, withoutCorner } from "../../src/core/drawing/corners.ts";
import { type DrawnThing, drawnThings } from "../../src/core/drawing/drawn.ts";
import { withBearingAlong, withEdgeSetback } from "../../src/core/drawing/edges.ts";
import { withoutThing, withThing, withThingProperty } from "../../src/core/drawing/things.ts";
import { createLeanPlanner } from "../../src/core/lean-planner.ts";
import { type Outcome, success } from "../../src/core/outcome.ts";
import { type LonLat, lonLat } from "../../src/core/plane/coordinate.ts";
import { parseProject } from "../../src/core/project/parse.ts";
import type { Project, Role } from "../../src/core/project/project.ts";
import { serializeProject } from "../../src/core/project/serialize.ts";
import { createRandom, type Random } from "../support/random.ts";

const samples = ["acre-with-notch", "brook-and-two-blocks", "crooked-strip"].map((name) =>
  readFileSync(new URL(`../../samples/${name}/project.geojson`, import.meta.url), "utf8"),
);
const sequences = 200;
const seed = 20261125;

function shown(store: Store) {
  const history = store.history.value;
  if (!history) throw new Error("nothing is open");
  return current(history).project;
}

type RandomEdit = (store: Store, random: Random) => void;

const pick = <T>(random: Random, list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)];
const length = (random: Random) => `${(1 + 3 * random()).toFixed(2)} m`;

const drawable: readonly (readonly [Role, "point" | "line" | "area"])[] = [
  ["mark", "point"],
  ["source", "point"],
  ["obstacle", "area"],
  ["no-plant", "line"],
  ["cross-alley", "line"],
];

/** A place within a few metres of the first parcel's first corner, or anywhere when there is none. */
function nearby(store: Store, random: Random): LonLat {
  const [lon = 10, lat = 50] = shown(store).parcels[0]?.polygons[0]?.[0]?.[0] ?? [];
  return lonLat(lon + 2e-4 * (random() - 0.5), lat + 2e-4 * (random() - 0.5));
}

function changeThing(
  store: Store,
  random: Random,
  change: (project: Project, thing: DrawnThing) => Outcome<Project>,
): void {
  const thing = pick(random, drawnThings(shown(store)));
  if (thing) edit(store, { name: `Change ${thing.key}` }, (project) => change(project, thing));
}

/** What a person does to a project, in the ways a page offers: typed values, choices, drags, keys, refused and dropped ones among them. */
const edits: readonly RandomEdit[] = [
  (store, random) => void turnRows(store, Math.round(1800 * random()) / 10),
  (store, random) => void turnRows(store, random() < 0.05 ? "best" : 90),
  (store) => void turnRows(store, "longest-edge", "turned by keys"),
  (store, random) => void turnRowsMeanwhile(store, 180 * random()),
  (store) => dropDraft(store),
  (store, random) => void changeSetting(store, "rows.vineSpacing", length(random)),
  (store, random) => {
    for (const typed of ["2", "2.", `2.${Math.floor(90 * random())} m`]) {
      changeSetting(store, "rows.rowSpacing", typed, { name: `Row spacing ${typed}`, joins: "one stay" });
    }
  },
  (store) => void changeSetting(store, "rows.rowSpacing", "-8 ft"),
  (store) => void changeSetting(store, "rows.headland", null),
  (store, random) => void changeSetting(store, "rows.rowOne", pick(random, ["centred", "most-row"]) ?? "centred"),
  (store, random) => void changeSetting(store, "ground.setback", length(random)),
  (store, random) => void changeSetting(store, "name", `Field ${Math.floor(1000 * random())}`),
  (store, random) => {
    const corners = [0, 1, 2].map(() => nearby(store, random));
    const [role, shape] = pick(random, drawable) ?? ["mark", "point"];
    const places = corners.slice(0, shape === "point" ? 1 : shape === "line" ? 2 : 3);
    edit(store, { name: "Draw" }, (project) => {
      const drawn = withThing(project, { role, shape, corners: places });
      return drawn.ok ? success(drawn.value.project) : drawn;
    });
  },
  (store, random) => void changeThing(store, random, (project, { key }) => withoutThing(project, key)),
  (store, random) =>
    void changeThing(store, random, (project, { key, paths }) => {
      const path = pick(random, paths);
      const corner = Math.floor(random() * (path?.corners.length ?? 0));
      return withCornerMoved(project, { key, path: path?.path ?? 0, corner }, nearby(store, random));
    }),
  (store, random) =>
    void changeThing(store, random, (project, { key }) =>
      withCornerInserted(project, { key, path: 0, edge: Math.floor(3 * random()) }, nearby(store, random)),
    ),
  (store, random) =>
    void changeThing(store, random, (project, { key }) =>
      withoutCorner(project, { key, path: 0, corner: Math.floor(4 * random()) }),
    ),
  (store, random) =>
    void changeThing(store, random, (project, { key }) => {
      const side = { key, path: 0, edge: Math.floor(4 * random()) };
      return random() < 0.3 ? withBearingAlong(project, "1", side) : withEdgeSetback(project, side, length(random));
    }),
  (store, random) =>
    void changeThing(store, random, (project, { key }) => withThingProperty(project, key, "name", length(random))),
];

test(`${sequences} random sequences of edits: undone to the start they are the start, done again they are the end`, () => {
  const random = createRandom(seed);
  let steps = 0;
  for (let sequence = 0; sequence < sequences; sequence++) {
    const told = `sequence ${sequence} of seed ${seed}`;
    const store = createStore();
    openProject(store, samples[sequence % samples.length] ?? "", "sample.geojson");
    const start = serializeProject(shown(store));
    // The plan follows after every few edits, as it does for a person; following each of them would take minutes.
    for (let group = 0; group < 5; group++) {
      batch(() => {
        for (let i = 0; i < 5; i++) {
          const chosen = random() < 0.15 ? pick(random, [undo, redo]) : pick(random, edits);
          chosen?.(store, random);
        }
      });
    }
    dropDraft(store);
    while (nextSteps(store.history.value ?? never()).redo !== null) redo(store);
    const end = serializeProject(shown(store));
    const path = store.history.value?.steps.map(({ project }) => serializeProject(project)) ?? [];
    steps += path.length - 1;

    batch(() => {
      for (const expected of path.slice(0, -1).reverse()) {
        undo(store);
        expect(serializeProject(shown(store)), told).toBe(expected);
      }
    });
    expect(nextSteps(store.history.value ?? never()).undo, told).toBeNull();
    expect(serializeProject(shown(store)), told).toBe(start);
    expectAsReadAnew(store, told);

    batch(() => {
      for (const expected of path.slice(1)) {
        redo(store);
        expect(serializeProject(shown(store)), told).toBe(expected);
      }
    });
    expect(serializeProject(shown(store)), told).toBe(end);
    expectAsReadAnew(store, told);
  }
  // So that the test is about something: most of what is done to the store are steps.
  expect(steps).toBeGreaterThan(10 * sequences);
});

/** What is shown is what a fresh page would make of the same file: the project's parts and the plan that follows from them. */
function expectAsReadAnew(store: Store, told: string): void {
  const read = parseProject(serializeProject(shown(store)));
  if (!read.ok) throw new Error(`${told}: it can not be read again`);
  const { parcels, edges, keepOuts, marks, sources, blocks } = shown(store);
  const [warm, cold] = [store.plan.value, createLeanPlanner().plan(read.value)];
  // Node's own comparison: the plan's long typed arrays take the test runner's a hundred times as long.
  expect(isDeepStrictEqual({ ...read.value, parcels, edges, keepOuts, marks, sources, blocks }, read.value), told).toBe(
    true,
  );
  expect(isDeepStrictEqual(warm?.rows, cold.rows), told).toBe(true);
  expect(isDeepStrictEqual(warm?.materials, cold.materials), told).toBe(true);
}

function never(): never {
  throw new Error("nothing is open");
}
