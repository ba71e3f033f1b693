import type { Geometry } from "geojson";
import { describe, expect, it, test } from "vitest";
import type { FileAnswer, FileQuestion } from "../../src/app/bring-in/bring-in-messages.ts";
import { FileReading } from "../../src/app/bring-in/file-reading.ts";
import { countOf, groupsOf, sizeOf } from "../../src/app/bring-in/found-groups.ts";
import { withAnswer } from "../../src/app/bring-in/question-form.tsx";
import { takeIn } from "../../src/app/bring-in/take-in.ts";
import { beginProject } from "../../src/app/commands/begin-project.ts";
import { newProject } from "../../src/app/commands/new-project.ts";
import { openProject } from "../../src/app/commands/open-project.ts";
import { undo } from "../../src/app/commands/undo.ts";
import { openedEndings } from "../../src/app/opened-endings.ts";
import { createStore } from "../../src/app/store.ts";
import type { FoundThing } from "../../src/core/drawing/found-thing.ts";
import { readers } from "../../src/readers/read-file.ts";
import { noAnswers } from "../../src/readers/reading.ts";
import { testFrame } from "../support/create-project.ts";
import { codes, createFile, field } from "../support/project-files.ts";

const file = new File([], "survey.kml");

function createThing(geometry: Geometry, change: Partial<FoundThing> = {}): FoundThing {
  return { name: null, layer: null, geometry, values: [], ...change };
}
const outline = createThing({ type: "Polygon", coordinates: [field.map(([lon, lat]) => [lon, lat])] });
const oak = createThing({ type: "Point", coordinates: [-76.8994, 42.6004] }, { name: "Oak", layer: "Trees" });

/** A reading whose worker only notes what it is asked. */
function started() {
  const asked: FileQuestion[] = [];
  let ended = 0;
  let answer: (answer: FileAnswer) => void = () => undefined;
  let fail: () => void = () => undefined;
  const reading = new FileReading((tell, failed) => {
    [answer, fail] = [tell, failed];
    return { ask: (question) => asked.push(question), end: () => ended++ };
  });
  return { reading, asked, ended: () => ended, answer: (told: FileAnswer) => answer(told), fail: () => fail() };
}

describe("reading a file beside the page", () => {
  const found = { format: "KML 2.2", system: "longitude and latitude", features: [oak], questions: [] };

  it("asks, follows and tells what is found", () => {
    const { reading, asked, answer } = started();
    reading.read(file, "metric");
    expect(asked).toEqual([{ number: 1, file, answers: noAnswers, units: "metric" }]);
    answer({ number: 1, kind: "progress", share_ratio: 0.4 });
    expect(reading.state.value).toEqual({ kind: "reading", share_ratio: 0.4 });
    answer({ number: 1, kind: "found", found, sentences: ["One thing has no place."] });
    expect(reading.state.value).toEqual({ kind: "found", found, sentences: ["One thing has no place."] });
  });

  it("reads again with answers, and hears nothing of the reading before", () => {
    const { reading, asked, answer } = started();
    reading.read(file, "metric");
    const answers = { ...noAnswers, system: "EPSG:26910" };
    reading.read(file, "metric", answers);
    expect(reading.answers.value).toEqual(answers);
    answer({ number: 1, kind: "refused", sentences: [] });
    expect(reading.state.value.kind).toBe("reading");
    expect(asked.map(({ number }) => number)).toEqual([1, 2]);
  });

  it("ends its worker when it is stopped, when the file is refused, and when the worker breaks", () => {
    const stopped = started();
    stopped.reading.read(file, "us");
    stopped.reading.stop();
    stopped.answer({ number: 1, kind: "found", found, sentences: [] });
    expect([stopped.reading.state.value.kind, stopped.ended()]).toEqual(["none", 1]);
    const refused = started();
    refused.reading.read(file, "us");
    refused.answer({ number: 1, kind: "refused", sentences: ["It is cut off."] });
    expect([refused.reading.state.value, refused.ended()]).toEqual([
      { kind: "refused", sentences: ["It is cut off."] },
      1,
    ]);
    const broken = started();
    broken.reading.read(file, "us");
    broken.fail();
    expect([broken.reading.state.value.kind, broken.ended()]).toEqual(["refused", 1]);
  });
});

test("an answer is taken for what it is about, and none is guessed", () => {
  expect(withAnswer(noAnswers, ["system", " EPSG:2226 "])).toEqual({ ...noAnswers, system: "EPSG:2226" });
  expect(withAnswer(noAnswers, ["unit", "us-ft"]).unit).toBe("us-ft");
  expect(withAnswer(noAnswers, ["unit", "cubits"]).unit).toBeNull();
  expect(withAnswer(noAnswers, ["order", "yes"]).isSwapped).toBe(true);
  expect(withAnswer(noAnswers, ["order", "no"]).isSwapped).toBe(false);
});

test("things are shown by layer and shape, with their size", () => {
  const line = createThing(
    {
      type: "LineString",
      coordinates: [
        [-76.9, 42.6],
        [-76.9, 42.6008],
      ],
    },
    { layer: "Trees" },
  );
  const groups = groupsOf([oak, line, oak, outline]);
  expect(groups.map((group) => [group.layer, countOf(group)])).toEqual([
    ["Trees", "2 points"],
    ["Trees", "1 line"],
    [null, "1 area"],
  ]);
  expect(sizeOf(outline, testFrame, "metric")).toMatch(/^0\.87\d ha$/);
  expect(sizeOf(line, testFrame, "metric")).toMatch(/^88\.\d m$/);
  expect(sizeOf(oak, testFrame, "metric")).toBe("");
});

describe("taking things in", () => {
  it("is one step that undo takes back", () => {
    const store = createStore();
    openProject(store, createFile(), "field.geojson");
    const before = store.project.value;
    const { taken, findings } = takeIn(store, beginProject, [{ thing: oak, role: "obstacle" }], "survey.kml", "metric");
    expect([taken, findings]).toEqual([1, []]);
    expect(store.project.value?.keepOuts.map(({ name }) => name)).toEqual(["Oak"]);
    expect(store.history.value?.steps.at(-1)?.name).toBe("Bring in survey.kml (1 thing)");
    undo(store);
    expect(store.project.value).toBe(before);
  });

  it("begins a project, named after the file, where none is open", () => {
    const store = createStore();
    const things = [
      { thing: outline, role: "parcel" },
      { thing: oak, role: "obstacle" },
    ] as const;
    expect(takeIn(store, beginProject, things, "north field.kml", "us")).toEqual({ taken: 2, findings: [] });
    expect(store.project.value).toMatchObject({ name: "north field", units: "us" });
    expect(store.plan.value?.rows?.rows.length).toBeGreaterThan(5);
    expect(store.opened.value).toBe(1);
  });

  it("changes nothing when nothing can be taken, and tells why", () => {
    const store = createStore();
    const refused = takeIn(store, beginProject, [{ thing: oak, role: "parcel" }], "survey.kml", "metric");
    expect([refused.taken, codes(refused.findings)]).toEqual([0, ["drawing/found-wrong-shape"]]);
    expect(store.history.value).toBeNull();
    newProject(store, "metric");
    const before = store.history.value;
    takeIn(store, beginProject, [{ thing: oak, role: "parcel" }], "survey.kml", "metric");
    expect(store.history.value).toBe(before);
  });

  it("brings the first ground of an empty map before the eyes", () => {
    const store = createStore();
    newProject(store, "metric");
    takeIn(store, beginProject, [{ thing: outline, role: "parcel" }], "survey.kml", "metric");
    expect([store.opened.value, store.wholeAsked.value]).toEqual([1, 1]);
  });
});

test("the window that opens files shows every file that is read", () => {
  const offered = new Set<string>(openedEndings);
  const missing = readers.flatMap(({ endings }) => endings).filter((ending) => !offered.has(`.${ending}`));
  expect(missing).toEqual([]);
});
