import fc from "fast-check";
import type { Feature, Point } from "geojson";
import { describe, expect, it, test } from "vitest";
import type { Outcome } from "../../../src/core/outcome.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import {
  withFeature,
  withFrameOrigin,
  withoutFeature,
  withSetting,
  withSettings,
} from "../../../src/core/project/edits.ts";
import type { Json, Project } from "../../../src/core/project/project.ts";
import { serializeProject } from "../../../src/core/project/serialize.ts";
import { text } from "../../../src/core/units.ts";
import { codes, createFeature, createFile, fixtureText, point, projectIn } from "../../support/project-files.ts";

function changed(outcome: Outcome<Project>): Project {
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => text(message, "metric")).join(" "));
  return outcome.value;
}

function refusal(outcome: Outcome<Project>): string {
  if (outcome.ok) throw new Error("the edit was taken");
  return outcome.findings.map(({ code, message }) => `${code}: ${text(message, "metric")}`).join(" ");
}

const oak: Json = createFeature("oak", { role: "obstacle" }, point(-76.899, 42.6004));
const twoBlocks = createFile(
  { rows: { rowSpacing: 3 }, blocks: [{ id: "east", rows: { rowSpacing: 2, vineSpacing: 1 } }, { id: "a.b" }] },
  [oak],
);

describe("a setting by its path", () => {
  test.each<[string, Json, (project: Project) => unknown, unknown]>([
    ["name", "Hill", (project) => project.name, "Hill"],
    ["units", "us", (project) => project.units, "us"],
    ["frame.origin", [-76.9, 42.6], (project) => project.frameOrigin, [-76.9, 42.6]],
    ["ground.setback", "10 ft", (project) => project.ground.setback_m, 3.048],
    ["materials.vineSpare", "3 %", (project) => project.materials.vineSpare_ratio, 0.03],
    [
      "rows.bearing",
      "24 deg",
      (project) => project.blocks.map(({ rows }) => rows.bearing),
      [
        { kind: "given", bearing_deg: 24 },
        { kind: "given", bearing_deg: 24 },
      ],
    ],
    ["rows.rowSpacing", "8 ft", (project) => project.blocks.map(({ rows }) => rows.rowSpacing_m), [2.4384, 2.4384]],
    ["rows.minRow.vines", "10", (project) => project.blocks[0]?.rows.minRow, { kind: "vines", vines: 10 }],
    [
      "rows.rowOne.fromSide",
      "10 ft",
      (project) => project.blocks[0]?.rows.rowOne,
      { kind: "from-side", distance_m: 3.048 },
    ],
    [
      "trellis.tieOffEnd.allowance",
      "1.2 m",
      (project) => project.blocks[0]?.trellis.tieOffEnd,
      { kind: "loop", allowance_m: 1.2 },
    ],
    ["blocks.east.rows.rowSpacing", 2.5, (project) => project.blocks.map(({ rows }) => rows.rowSpacing_m), [2.5, 3]],
    ["blocks.a.b.rows.rowSpacing", 2.5, (project) => project.blocks.map(({ rows }) => rows.rowSpacing_m), [2, 2.5]],
    ["blocks.a.b.name", "Low", (project) => project.blocks[1]?.name, "Low"],
    [
      "blocks.east.drip.emittersPerVine",
      2,
      (project) => project.blocks.map(({ drip }) => drip.emittersPerVine),
      [2, 1],
    ],
    ["blocks.east.plantings", [{ rows: "1-3", variety: "red" }], (project) => project.blocks[0]?.plantings.length, 1],
  ])("%s %j", (path, value, pick, expected) => {
    const project = changed(withSetting(projectIn(twoBlocks), path, value));
    expect(pick(project)).toEqual(expected);
    // What was set is in the file, and is read from it again.
    expect(pick(projectIn(serializeProject(project)))).toEqual(expected);
  });

  it("for all rows also replaces what a block states for itself, and only that", () => {
    const project = changed(withSetting(projectIn(twoBlocks), "rows.rowSpacing", 2.4));
    expect(project.document.tautrow?.blocks).toEqual([{ id: "east", rows: { vineSpacing: 1 } }, { id: "a.b" }]);
  });

  it("changes an entry of a list that the file states", () => {
    const file = createFile({
      trellis: {
        wires: [
          { purpose: "fruiting", height: 0.9 },
          { purpose: "drip", height: 0.4 },
        ],
      },
    });
    const project = changed(withSetting(projectIn(file), "trellis.wires.1.height", "18 in"));
    expect(project.blocks[0]?.trellis.wires.map(({ height_m }) => height_m)).toEqual([0.9, 0.4572]);
  });

  it("taken out with null is as usual again", () => {
    const project = changed(
      withSetting(projectIn(createFile({ rows: { rowSpacing: 3, headland: 5 } })), "rows.rowSpacing", null),
    );
    expect(project.blocks[0]?.rows.rowSpacing_m).toBe(2.4);
    expect(project.document.tautrow).toEqual({ rows: { headland: 5 } });
  });

  it("of a file without settings begins them, with the format's version", () => {
    const project = changed(
      withSetting(projectIn(fixtureText("good", "bare-polygon.geojson")), "blocks.1.rows.bearing", 24),
    );
    expect(project.document.tautrow).toEqual({ version: 1, blocks: [{ id: "1", rows: { bearing: 24 } }] });
  });

  it("keeps members that nobody knows, in their place", () => {
    const file = createFile({ colour: "green", rows: { rowSpacing: 3, odd: [1] }, zebra: null });
    const project = changed(withSetting(projectIn(file), "rows.rowSpacing", 2));
    expect(JSON.stringify(project.document.tautrow)).toBe(
      '{"colour":"green","rows":{"rowSpacing":2,"odd":[1]},"zebra":null}',
    );
  });

  test.each<[string, Json, string]>([
    ["rows.bearng", 24, "did you mean rows.bearing"],
    ["bearing", 24, "did you mean rows.bearing"],
    ["colour", "green", "no such setting"],
    ["version", 2, "no such setting"],
    ["rows", {}, "no such setting"],
    ["", 1, "no such setting"],
    ["blocks.esat.rows.bearing", 24, "did you mean blocks.east.rows.bearing"],
    ["blocks.west.rows.bearing", 24, "no such setting"],
    ["blocks.east.id", "west", "no such setting"],
    ["rows.__proto__.polluted", 1, "no such setting"],
    ["__proto__.rows", 1, "no such setting"],
    ["trellis.wires.7.height", 1, "no such entry"],
    ["rows.rowSpacing", "2,4 m", "comma"],
    ["rows.rowSpacing", -1, "setting-out-of-range"],
    ["rows.rowSpacing.deep", 1, "bad-setting"],
    ["rows.firstSide", "north", '"left" or "right"'],
  ])("%s %j is refused with a finding", (path, value, why) => {
    const before = projectIn(twoBlocks);
    const findings = refusal(withSetting(before, path, value));
    expect(findings).toContain("project/");
    expect(findings).toContain(why);
  });

  it("several are taken together, or none of them", () => {
    const before = projectIn(twoBlocks);
    const project = changed(
      withSettings(before, [
        ["rows.bearing", 24],
        ["ground.setback", 4],
        ["rows.bearing", 30],
      ]),
    );
    expect(project.blocks[0]?.rows.bearing).toEqual({ kind: "given", bearing_deg: 30 });
    expect(project.ground.setback_m).toBe(4);
    const outcome = withSettings(before, [
      ["rows.bearing", 24],
      ["rows.nothing", 4],
      ["ground.setback", "x"],
    ]);
    expect(codes(outcome.findings)).toEqual(["project/bad-setting", "project/bad-setting"]);
    expect(withSettings(before, [])).toMatchObject({ ok: true, value: before });
  });

  it("is refused where the file is of a newer format, or its settings are none", () => {
    const newer = projectIn(fixtureText("bad", "version-of-the-future.geojson"));
    expect(codes(withSetting(newer, "rows.bearing", 24).findings)).toEqual(["project/newer-version"]);
    const odd = projectIn(fixtureText("bad", "settings-a-list.geojson"));
    expect(codes(withSetting(odd, "rows.bearing", 24).findings)).toEqual(["project/bad-setting"]);
  });
});

describe("an edit keeps what it does not touch", () => {
  const lists = [
    "parcels",
    "edges",
    "keepOuts",
    "crossAlleys",
    "blockAreas",
    "givenRows",
    "keptPlaces",
    "sources",
    "marks",
    "mainLines",
    "spotHeights",
  ] as const;

  test("a change of bearing in one block leaves features, ground, materials and the other block the same objects", () => {
    const before = projectIn(fixtureText("good", "everything-stated.geojson"));
    const after = changed(withSetting(before, "blocks.east.rows.bearing", 30));
    for (const name of [...lists, "ground", "materials", "frameOrigin"] as const)
      expect(after[name]).toBe(before[name]);
    expect(after.blocks[1]).toBe(before.blocks[1]);
    expect(after.blocks[0]).not.toBe(before.blocks[0]);
    expect(after.document.features).toBe(before.document.features);
    expect(after.document.tautrow?.trellis).toBe(before.document.tautrow?.trellis);
  });

  test("a setting set to what it is leaves every block the same object", () => {
    const before = projectIn(fixtureText("good", "everything-stated.geojson"));
    const after = changed(withSetting(before, "rows.rowSpacing", "2.4384 m"));
    expect(after.blocks).toBe(before.blocks);
  });

  test("a usual distance touches only what has none of its own", () => {
    const near = createFeature("elm", { role: "obstacle", distance: 1 }, point(-76.8992, 42.6004));
    const before = projectIn(createFile(undefined, [oak, near]));
    const after = changed(withSetting(before, "ground.obstacleDistance", 5));
    expect(after.keepOuts.map(({ distance_m }) => distance_m)).toEqual([5, 1]);
    expect(after.keepOuts[1]).toBe(before.keepOuts[1]);
    expect(after.keepOuts[0]?.shape).toBe(before.keepOuts[0]?.shape);
    expect(after.parcels).toBe(before.parcels);
  });

  test("a moved tree leaves the parcel and the other trees the same objects", () => {
    const elm = createFeature("elm", { role: "obstacle" }, point(-76.8992, 42.6004));
    const before = projectIn(createFile(undefined, [oak, elm]));
    const after = withFeature(before, createTree("oak", -76.8994, 42.6005));
    expect(after.keepOuts[0]?.shape.points).toEqual([[-76.8994, 42.6005]]);
    expect(after.keepOuts[1]).toBe(before.keepOuts[1]);
    expect(after.parcels).toBe(before.parcels);
    expect(after.blocks).toBe(before.blocks);
    expect(after.document.features[0]).toBe(before.document.features[0]);
    expect(before.keepOuts[0]?.shape.points).toEqual([[-76.899, 42.6004]]);
  });

  test("any run of edits gives the project that reading the file anew gives", () => {
    const edit = fc.oneof(
      fc.tuple(fc.constantFrom("rows.bearing", "blocks.east.rows.bearing"), fc.integer({ min: 0, max: 179 })),
      fc.tuple(
        fc.constantFrom("rows.rowSpacing", "blocks.2.rows.vineSpacing", "ground.setback", "ground.obstacleDistance"),
        fc.integer({ min: 1, max: 19 }),
      ),
      fc.tuple(fc.constantFrom("rows.rowSpacing", "trellis.wires", "units", "blocks.east.rows"), fc.constant(null)),
    );
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 8 }), fc.integer({ min: -5, max: 5 }), (edits, step) => {
        let project = projectIn(fixtureText("good", "everything-stated.geojson"));
        for (const [path, value] of edits) {
          const outcome = withSetting(project, path, value);
          if (outcome.ok) project = outcome.value;
        }
        project = withFeature(project, createTree("oak", -76.8997 + step * 1e-5, 42.6003));
        if (step > 0) project = withoutFeature(project, "brook");
        const anew = projectIn(serializeProject(project));
        expect({ ...project, document: null }).toEqual({ ...anew, document: null });
      }),
      { seed: 41, numRuns: 200 },
    );
  });
});

describe("features", () => {
  it("are put in the place of the one with the same id, or at the end", () => {
    const before = projectIn(createFile(undefined, [oak]));
    const moved = withFeature(before, createTree("oak", -76.8995, 42.6002));
    expect(moved.document.features.map(({ id }) => id)).toEqual(["home", "oak"]);
    const added = withFeature(moved, createTree("elm", -76.8996, 42.6002));
    expect(added.keepOuts.map(({ key }) => key)).toEqual(["oak", "elm"]);
  });

  it("without an id are named by their place in the file", () => {
    const before = projectIn(fixtureText("good", "bare-polygon.geojson"));
    const moved = withFeature(before, createTree("oak", -76.8995, 42.6002), "#0");
    expect(moved.document.features).toHaveLength(1);
    expect(moved.keepOuts).toHaveLength(1);
  });

  it("are taken out by their key; taking out what is not there changes nothing", () => {
    const before = projectIn(createFile(undefined, [oak]));
    expect(withoutFeature(before, "oak").keepOuts).toEqual([]);
    expect(withoutFeature(before, "elm")).toBe(before);
  });

  it("that stay keep what they are called by, when one before them goes", () => {
    const before = projectIn(
      createFile(undefined, [createFeature("oak", { role: "obstacle" }, point(-76.899, 42.6004)), ...nameless]),
    );
    const after = withoutFeature(before, "oak");
    expect(before.keepOuts.map(({ key }) => key)).toEqual(["oak", "#2", "#3"]);
    expect(after.keepOuts.map(({ key }) => key)).toEqual(["#2", "#3"]);
    expect(after.keepOuts[0]).toBe(before.keepOuts[1]);
    expect(after.document.features.map(({ id }) => id)).toEqual(["home", "#2", "#3"]);
  });

  it("give the frame an origin that stays in the file", () => {
    const project = changed(withFrameOrigin(projectIn(createFile()), lonLat(-76.8994, 42.6004)));
    expect(projectIn(serializeProject(project)).frameOrigin).toEqual([-76.8994, 42.6004]);
  });
});

const nameless: readonly Json[] = [-76.8995, -76.8996].map((lon) => {
  return { type: "Feature", properties: { role: "obstacle" }, geometry: point(lon, 42.6002) };
});

function createTree(id: string, lon: number, lat: number): Feature<Point> {
  return {
    type: "Feature",
    id,
    properties: { role: "obstacle" },
    geometry: { type: "Point", coordinates: [lon, lat] },
  };
}
