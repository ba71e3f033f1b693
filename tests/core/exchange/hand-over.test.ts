import { describe, expect, test } from "vitest";
import { type HandOverChoice, usualChoice } from "../../../src/core/exchange/choice.ts";
import { formats } from "../../../src/core/exchange/formats.ts";
import { handingOver, handOver } from "../../../src/core/exchange/hand-over.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { text } from "../../../src/core/units.ts";
import {
  at,
  createBlock,
  createParcel,
  createProject,
  createTrellisSettings,
  rectangle,
  testFrame,
} from "../../support/create-project.ts";
import { collectionOf, handedOver, textsOf, writtenAt } from "../../support/handed-over.ts";

const plan = createPlanner().plan(createProject());
const empty = createPlanner().plan(createProject({ parcels: [] }));

test("a format that there is not is refused, and those that there are named", () => {
  const outcome = handOver(plan, { ...usualChoice, as: "punched-tape" }, writtenAt);
  expect([outcome.ok, outcome.findings.map(({ code }) => code)]).toEqual([false, ["exchange/no-such-format"]]);
  expect(text(outcome.findings[0]?.remedy ?? [], "metric")).toContain("landxml");
});

describe("what a format has no place for", () => {
  test("is told by name, and the rest goes out", () => {
    const { files, findings } = handedOver(plan, { as: "gpx", of: ["rows", "materials", "plan"] });
    expect(files.map(({ name }) => name)).toEqual(["rows.gpx"]);
    const [finding] = findings.filter(({ code }) => code === "exchange/not-in-format");
    expect(finding?.severity).toBe("warning");
    expect(text(finding?.message ?? [], "metric")).toBe("GPX 1.1 has no place for materials and plan.");
  });

  test("is an error when nothing is left", () => {
    const outcome = handOver(plan, { ...usualChoice, as: "json", of: ["vines"] }, writtenAt);
    expect([outcome.ok, outcome.findings.map(({ code, severity }) => [code, severity])]).toEqual([
      false,
      [["exchange/not-in-format", "error"]],
    ]);
  });

  test("choices that mean nothing in it are told as a note, and change nothing", () => {
    const change = { system: "EPSG:32618", unit: "ft", nameLength: 8, pointsAFile: 5, baseline: "row 1" } as const;
    const { findings, system } = handedOver(plan, { as: "kml", of: ["rows"], ...change });
    const [finding] = findings.filter(({ code }) => code === "exchange/choice-not-used");
    expect(finding?.severity).toBe("note");
    expect(text(finding?.message ?? [], "metric")).toContain(
      "the coordinate system, the unit, the length of names, the number of points to a file and the baseline",
    );
    expect(system.code).toBe(4326);
  });

  test("the usual choices of every format are told of nothing but what the plan has not got", () => {
    for (const { name, holds } of formats) {
      const { findings } = handedOver(plan, { as: name, of: holds });
      const ours = findings.filter(({ code }) => /^exchange\/(choice|not-in|naming|rows|baseline)/.test(code));
      expect([name, ours]).toEqual([name, []]);
    }
  });
});

describe("what the plan has not got", () => {
  test("is told with the reason, one finding a reason, and its file is empty", () => {
    const handed = handedOver(plan, { of: ["rows", "marks", "route", "fittings", "pipes"] });
    expect(handed.findings.map(({ code, reason }) => [code, reason.join("")])).toEqual([
      ["exchange/nothing-of-kind", "No mark is drawn."],
      ["exchange/nothing-of-kind", "There is no route of the main line yet."],
    ]);
    expect(handed.findings[1]?.message.join("")).toBe("There is nothing to hand over of route, fittings and pipes.");
    expect(collectionOf(plan, ["marks"]).features).toEqual([]);
  });

  test("is told of chosen rows as of all, and of a plan without ground", () => {
    const trellis = createTrellisSettings();
    const braced = createPlanner().plan(
      createProject({
        blocks: [
          createBlock({}, { trellis: { ...trellis, endAssembly: { ...trellis.endAssembly, kind: "h-brace" } } }),
        ],
      }),
    );
    const reasons = (of: typeof plan, choice: Partial<HandOverChoice>) =>
      handedOver(of, choice).findings.map(({ reason }) => reason.join(""));
    expect(reasons(braced, { of: ["anchors"] })).toEqual(["The ends of rows have no anchors."]);
    expect(reasons(braced, { of: ["anchors"], rows: "1" })).toEqual(["The ends of the chosen rows have no anchors."]);
    expect(reasons(empty, { of: ["rows"] })).toEqual(["The plan has no ground yet."]);
  });
});

describe("names", () => {
  test("are what the format is used to, with the block in them where there are several", () => {
    const names = textsOf(handedOver(plan, { as: "gpx", of: ["posts"] }))["posts.gpx"] ?? "";
    expect(names).toContain("<name>R1E01</name>");
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
    expect(textsOf(handedOver(twins, { as: "gpx", of: ["posts"] }))["posts.gpx"]).toContain("<name>we1E01</name>");
  });

  test("that had to be changed are told with how many and an example", () => {
    const { findings, names } = handedOver(plan, { as: "gpx", of: ["posts"], naming: "post {row}" });
    const [finding] = findings.filter(({ code }) => code === "exchange/names-changed");
    expect(finding?.severity).toBe("warning");
    expect(finding?.message.join("")).toBe(`${names.changed.length} names are changed; "post 1" is "post 1-2".`);
    expect(names.changed.length).toBeGreaterThan(100);
  });

  test("of a pattern with a word that means nothing are refused", () => {
    const outcome = handOver(plan, { ...usualChoice, naming: "{row}-{vine}-{row:x}" }, writtenAt);
    expect(outcome.findings.map(({ code, message }) => [code, message.join("")])).toEqual([
      ["exchange/naming-token-unknown", "In the pattern of names, {vine} and {row:x} mean nothing."],
    ]);
  });

  test("too short to be told apart are refused", () => {
    const outcome = handOver(plan, { ...usualChoice, as: "gpx", of: ["vines"], nameLength: 4 }, writtenAt);
    expect(outcome.findings.map(({ code }) => code)).toEqual(["exchange/names-too-short"]);
  });
});

describe("numbers that make no sense are refused", () => {
  test.each([0, -1, 2.5, Number.NaN])("%d points to a file", (pointsAFile) => {
    const outcome = handOver(plan, { ...usualChoice, as: "gpx", of: ["posts"], pointsAFile }, writtenAt);
    expect(outcome.findings.map(({ code }) => code)).toEqual(["exchange/choice-out-of-range"]);
  });

  test.each([-0.1, 101, Number.NaN])("pegs %d m beyond the anchor", (pegBeyond_m) => {
    const outcome = handOver(plan, { ...usualChoice, of: ["pegs"], pegBeyond_m }, writtenAt);
    expect(outcome.findings.map(({ code }) => code)).toEqual(["exchange/choice-out-of-range"]);
  });
});

describe("the coordinate system", () => {
  test("is degrees where nothing is said, and the local plane where a format has no degrees", () => {
    expect(handedOver(plan, { as: "csv", of: ["rows"] }).system.code).toBe(4326);
    expect(handedOver(plan, { as: "dxf", of: ["rows"] }).system.kind).toBe("local");
  });

  test("utm is the zone of the place: longitude -76.9 lies in zone 18", () => {
    expect(handedOver(plan, { as: "dxf", of: ["rows"], system: "utm" }).system.code).toBe(32618);
  });

  test.each([
    ["EPSG:4326", "exchange/system-in-degrees"],
    ["EPSG:9999", "systems/unknown-system"],
    ["nonsense", "systems/bad-system"],
  ])("%s is refused for a drawing: %s", (system, code) => {
    const outcome = handOver(plan, { ...usualChoice, as: "dxf", system }, writtenAt);
    expect([outcome.ok, outcome.findings.map((finding) => finding.code)]).toEqual([false, [code]]);
  });

  test("one that is made for other ground is told with what it does to lengths", () => {
    const { findings } = handedOver(plan, { as: "csv", of: ["rows"], system: "EPSG:3857" });
    expect(findings.map(({ code }) => code)).toContain("exchange/system-out-of-reach");
  });

  test("one that has no numbers for the place is refused: a view from space shows half the earth", () => {
    const system = "+proj=ortho +lat_0=-42.6 +lon_0=103.1 +datum=WGS84 +units=m";
    const outcome = handOver(plan, { ...usualChoice, as: "csv", system }, writtenAt);
    expect(outcome.ok).toBe(false);
    expect(outcome.findings.map(({ code }) => code)).toEqual(["exchange/system-out-of-reach"]);
  });

  test("local needs a ground", () => {
    const outcome = handOver(empty, { ...usualChoice, as: "dxf", system: "local" }, writtenAt);
    expect(outcome.findings.map(({ code }) => code)).toEqual(["exchange/no-ground"]);
  });
});

describe("heights", () => {
  const spots = (
    [
      [0, 0],
      [60, 0],
      [0, 60],
    ] as const
  ).map((place, i) => ({ key: `spot-${i}`, name: null, at: at(place), height_m: 100 + i }));
  const hilly = createPlanner().plan(createProject({ spotHeights: spots }));

  test("that are known at some row ends only are told with how many", () => {
    const { findings } = handedOver(hilly, { of: ["posts"] });
    const [finding] = findings.filter(({ code }) => code === "exchange/heights-missing");
    const ends = (hilly.rows?.rows ?? []).flatMap(({ start, end }) => [start, end]);
    const missing = ends.filter(([x, y]) => x + y > 60).length;
    expect(missing).toBeGreaterThan(0);
    expect(finding?.message.join("")).toBe(
      `At ${missing} of ${ends.length} row ends the height of the ground is not known.`,
    );
  });

  test("that are not wished are in no file, and nothing is said of them", () => {
    const handed = handedOver(hilly, { of: ["posts"], heights: false });
    expect(handed.findings).toEqual([]);
    for (const [place] of Array.from(handed.layers[0]?.features() ?? [], ({ geometry }) =>
      geometry.shape === "point" ? [geometry.place] : [],
    )) {
      expect(place?.height_m).toBeNull();
    }
  });
});

test("the same work step by step gives the same, and gives way often", () => {
  const work = handingOver(plan, { ...usualChoice, of: ["vines"], naming: "{row}-{number}" }, writtenAt);
  let steps = 0;
  let step = work.next();
  for (; step.done !== true; step = work.next()) steps++;
  if (!step.value.ok) throw new Error("nothing was handed over");
  const at_once = handedOver(plan, { of: ["vines"], naming: "{row}-{number}" });
  expect(textsOf(step.value.value)).toEqual(textsOf(at_once));
  const vines = (plan.rows?.rows ?? []).reduce((sum, row) => sum + row.vines, 0);
  expect(steps).toBeGreaterThanOrEqual(Math.floor(vines / 2000) + 1);
});

test("an offset from a baseline stands beside every point: 10 m east of a line north is 10 to the right", () => {
  const marks = [
    { key: "a", name: "a", at: at([0, 0]) },
    { key: "b", name: "b", at: at([0, 100]) },
  ];
  const marked = createPlanner().plan(createProject({ marks }));
  const collection = JSON.parse(
    textsOf(handedOver(marked, { of: ["posts"], baseline: "a, b" }))["posts.geojson"] ?? "",
  );
  expect(collection.features.length).toBeGreaterThan(10);
  for (const { geometry, properties } of collection.features) {
    const [x, y] = testFrame.toPlane(geometry.coordinates);
    expect(Math.abs(properties.baselineStation_m - y)).toBeLessThan(0.002);
    expect(Math.abs(properties.baselineOffset_m - x)).toBeLessThan(0.002);
  }
});

test("asked for twice, a kind goes out once", () => {
  expect(handedOver(plan, { of: ["rows", "rows"] }).files.map(({ name }) => name)).toEqual(["rows.geojson"]);
});
