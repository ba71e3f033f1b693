import { describe, expect, it, test } from "vitest";
import { isBlank } from "../../../src/core/drawing/blank.ts";
import { drawnThing, drawnThings, thingLabel } from "../../../src/core/drawing/drawn.ts";
import { withHole, withoutPath, withoutThing, withThing, withThingProperty } from "../../../src/core/drawing/things.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { Json, JsonObject, Role } from "../../../src/core/project/project.ts";
import { serializeProject } from "../../../src/core/project/serialize.ts";
import { text } from "../../../src/core/units.ts";
import {
  area,
  drawnAt,
  drawnProject,
  feature,
  fieldCorners,
  fieldProject,
  line,
  refused,
  ring,
  spot,
  taken,
} from "../../support/drawn-files.ts";
import { codes, fixtureNames, fixtureText, projectIn } from "../../support/project-files.ts";

const places = (...points: readonly (readonly [number, number])[]) => points.map(drawnAt);
const empty = () => drawnProject([], { version: 1, name: "New parcel", units: "metric" });

describe("an empty project", () => {
  it("is blank: only a file that is no project of ours is an error", () => {
    expect(isBlank(empty())).toBe(true);
    expect(empty().findings.find(({ code }) => code === "project/no-parcel")?.severity).toBe("error");
    expect(isBlank(projectIn(fixtureText("bad", "no-features.geojson")))).toBe(false);
    expect(isBlank(projectIn(fixtureText("bad", "outline-a-bow-tie.geojson")))).toBe(false);
    expect(isBlank(fieldProject())).toBe(false);
    expect(isBlank(drawnProject([], { version: 99 }))).toBe(false);
  });

  it("may have a mark and a source before its parcel, and is planned as soon as that is there", () => {
    const mark = taken(withThing(empty(), { role: "mark", shape: "point", corners: places([0, 0]), name: "pin" }));
    const source = taken(withThing(mark.project, { role: "source", shape: "point", corners: places([5, 0]) }));
    expect(isBlank(source.project)).toBe(true);
    expect(source.project.frameOrigin).toBeNull();
    const parcel = taken(
      withThing(source.project, {
        role: "parcel",
        shape: "area",
        corners: places(...fieldCorners),
        properties: { outline: "drawn" },
      }),
    );
    expect(parcel.key).toBe("parcel-1");
    expect(isBlank(parcel.project)).toBe(false);
    expect(parcel.project.frameOrigin?.[0]).toBeCloseTo(drawnAt([30, 60])[0], 5);
    expect(codes(parcel.project.findings)).toEqual(["project/defaults-used"]);
    const plan = createPlanner().plan(parcel.project);
    expect(plan.rows?.rows.length).toBeGreaterThan(10);
    // The frame that was taken is the one the planner would have taken.
    expect(plan.ground?.frame.origin).toEqual(parcel.project.frameOrigin);
  });
});

describe("a new thing", () => {
  it("has its role and the first free number for a key, and stands at the end of the file", () => {
    let project = fieldProject([spot("obstacle-1", { role: "mark" }, [1, 1])]);
    for (const expected of ["obstacle-2", "obstacle-3"]) {
      const { project: next, key } = taken(
        withThing(project, { role: "obstacle", shape: "point", corners: places([9, 9]) }),
      );
      expect(key).toBe(expected);
      project = next;
    }
    expect(project.document.features.at(-1)).toEqual({
      type: "Feature",
      id: "obstacle-3",
      properties: { role: "obstacle" },
      geometry: { type: "Point", coordinates: [...drawnAt([9, 9])] },
    });
    expect(project.keepOuts).toHaveLength(2);
  });

  it("is wound counter-clockwise and closed, without corners that repeat the one before", () => {
    const clockwise = places([0, 0], [0, 120], [0, 120], [60, 120], [60, 0], [0, 0]);
    const { project, key } = taken(withThing(empty(), { role: "parcel", shape: "area", corners: clockwise }));
    expect(drawnThing(project, key)?.paths).toEqual([
      { path: 0, closed: true, isHole: false, corners: places(...fieldCorners) },
    ]);
    expect(codes(project.findings)).toEqual(["project/defaults-used"]);
  });

  it("may lie across longitude 180", () => {
    const corners = [
      lonLat(179.9995, -17),
      lonLat(180.0005, -17),
      lonLat(180.0005, -16.999),
      lonLat(179.9995, -16.999),
    ];
    const { project } = taken(withThing(empty(), { role: "parcel", shape: "area", corners }));
    expect(JSON.stringify(project.document.features[0]?.geometry)).toContain("[-179.9995,-17]");
    expect(codes(project.findings)).toEqual(["project/defaults-used", "project/antimeridian"]);
    expect(createPlanner().plan(project).ground?.parcelArea_m2).toBeGreaterThan(10_000);
  });

  it.each<[Role, "point" | "line" | "area", JsonObject, string]>([
    ["main-line", "line", {}, "mainLines"],
    ["elevation", "point", { height: "214 m" }, "spotHeights"],
    ["cross-alley", "line", { width: "5 m" }, "crossAlleys"],
    ["no-plant", "area", { distance: 4 }, "keepOuts"],
    ["row", "line", { row: "3" }, "givenRows"],
    ["keep-row", "point", {}, "keptPlaces"],
    ["block", "area", { block: "1" }, "blockAreas"],
  ])("%s is read as one", (role, shape, properties, list) => {
    const corners = {
      point: places([30, 30]),
      line: places([5, 5], [50, 50]),
      area: places([5, 5], [50, 5], [50, 50]),
    }[shape];
    const { project, key } = taken(withThing(fieldProject(), { role, shape, corners, properties }));
    expect(codes(project.findings)).toEqual(["project/defaults-used"]);
    expect(new Map<string, unknown>(Object.entries(project)).get(list)).toMatchObject([{ key }]);
  });

  it("is refused with a reason", () => {
    const parcel = { role: "parcel", shape: "area" } as const;
    expect(refused(withThing(empty(), { ...parcel, corners: places([0, 0], [60, 0], [60, 0]) }))).toEqual([
      "drawing/too-few-corners",
    ]);
    expect(refused(withThing(empty(), { ...parcel, corners: [] }))).toEqual(["drawing/too-few-corners"]);
    expect(refused(withThing(empty(), { role: "parcel", shape: "line", corners: places([0, 0], [60, 0]) }))).toEqual([
      "drawing/wrong-shape",
    ]);
    expect(refused(withThing(empty(), { role: "mark", shape: "point", corners: [lonLat(0, 99)] }))).toEqual([
      "drawing/not-a-place",
    ]);
    const said = (role: Role, shape: "point" | "line" | "area") => {
      const { findings } = withThing(empty(), { role, shape, corners: places([0, 0]) });
      return findings.map(({ message }) => text(message, "metric")).join(" ");
    };
    expect(said("elevation", "area")).toBe("A spot height must be a point.");
    expect(said("edge", "point")).toBe("An edge must be a line.");
    expect(said("cross-alley", "point")).toBe("A cross alley must be a line or an area.");
    expect(said("parcel", "area")).toBe("An area must have at least 3 corners.");
    const setback = { ...parcel, corners: places(...fieldCorners), properties: { setback: "2,5" } };
    expect(refused(withThing(empty(), setback))).toEqual(["project/bad-setting"]);
  });
});

describe("a thing that is taken out", () => {
  it("takes the edge features with it that lie along nothing else", () => {
    const next = area("next", { role: "parcel" }, [
      [60, 0],
      [120, 0],
      [120, 120],
      [60, 120],
    ]);
    const edges = [
      line("own", { role: "edge", setback: 5 }, [
        [0, 0],
        [60, 0],
      ]),
      line("both", { role: "edge", setback: 5 }, [
        [60, 0],
        [60, 120],
      ]),
      line("other", { role: "edge", setback: 5 }, [
        [60, 0],
        [120, 0],
      ]),
    ];
    const after = taken(withoutThing(fieldProject([next, ...edges]), "home"));
    expect(after.document.features.map(({ id }) => id)).toEqual(["next", "both", "other"]);
  });

  it("leaves every other feature its key", () => {
    const parcel = area(null, { role: "parcel" }, fieldCorners);
    const tree = (x: number) => spot(null, { role: "obstacle" }, [x, 30]);
    const before = drawnProject([tree(5), parcel, tree(10), tree(15), spot("oak", { role: "obstacle" }, [20, 30])]);
    const keys = drawnThings(before).map(({ key }) => key);
    expect(keys).toEqual(["#0", "#1", "#2", "#3", "oak"]);
    const after = taken(withoutThing(before, "#2"));
    expect(drawnThings(after).map(({ key }) => key)).toEqual(["#0", "#1", "#3", "oak"]);
    expect(after.document.features.map(({ id }) => id)).toEqual([undefined, undefined, "#3", "oak"]);
    const again = taken(withoutThing(after, "#0"));
    expect(drawnThings(again).map(({ key }) => key)).toEqual(["#1", "#3", "oak"]);
    // What was read before an edit is the same thing after it.
    expect(drawnThings(again).map(({ paths }) => paths)).toEqual([1, 3, 4].map((i) => drawnThings(before)[i]?.paths));
  });

  it("leaves the rows along an edge that is named by its place in the file", () => {
    const lane = line(null, { role: "edge" }, [
      [0, 0],
      [60, 0],
    ]);
    const before = fieldProject([spot(null, { role: "mark" }, [0, 0]), lane], { rows: { bearing: { edge: "#2" } } });
    const after = taken(withoutThing(before, "#1"));
    const planner = createPlanner();
    expect(planner.bearing(after, "1")).toBe(planner.bearing(before, "1"));
    expect(codes(planner.plan(after).findings)).not.toContain("rows/bearing-edge-missing");
  });

  it("may be one that cannot be read, among others that cannot", () => {
    const broken = feature("broken", { role: "mark" }, { type: "Point", coordinates: ["x", 1] });
    const before = fieldProject([broken, null, feature("odd", 7, null)]);
    const after = taken(withoutThing(before, "broken"));
    expect(after.document.features).toHaveLength(3);
    expect(taken(withoutThing(after, "#1")).document.features.map((each) => each?.id)).toEqual(["home", "odd"]);
    expect(refused(withoutThing(before, "nothing"))).toEqual(["drawing/not-there"]);
  });
});

describe("a hole", () => {
  it("is cut into the polygon it lies in, clockwise", () => {
    const two = feature(
      "home",
      { role: "parcel" },
      {
        type: "MultiPolygon",
        coordinates: [
          [ring(fieldCorners)],
          [
            ring([
              [100, 0],
              [160, 0],
              [160, 120],
              [100, 120],
            ]),
          ],
        ],
      },
    );
    const after = taken(withHole(drawnProject([two]), "home", places([110, 20], [130, 20], [130, 40])));
    expect(drawnThing(after, "home")?.paths.map(({ isHole, corners }) => [isHole, corners.length])).toEqual([
      [false, 4],
      [false, 4],
      [true, 3],
    ]);
    expect(codes(after.findings)).toEqual(["project/defaults-used"]);
    const second = taken(withHole(after, "home", places([140, 20], [150, 20], [150, 40])));
    expect(codes(second.findings)).toEqual(["project/defaults-used"]);
    expect(second.parcels[0]?.polygons.map((polygon) => polygon.length)).toEqual([1, 3]);
  });

  it("is refused outside, in another hole, in what is no area, and with too few corners", () => {
    const oak = spot("oak", { role: "obstacle" }, [30, 30]);
    const project = fieldProject([oak]);
    expect(refused(withHole(project, "home", places([50, 20], [70, 20], [50, 40])))).toEqual([
      "drawing/hole-not-inside",
    ]);
    expect(refused(withHole(project, "home", places([500, 20], [570, 20], [550, 40])))).toEqual([
      "drawing/hole-not-inside",
    ]);
    expect(refused(withHole(project, "oak", places([5, 2], [7, 2], [5, 4])))).toEqual(["drawing/wrong-shape"]);
    expect(refused(withHole(project, "away", places([5, 2], [7, 2], [5, 4])))).toEqual(["drawing/not-there"]);
    expect(refused(withHole(project, "home", places([5, 2], [7, 2])))).toEqual(["drawing/too-few-corners"]);
    expect(refused(withHole(project, "home", [lonLat(0, 99), ...places([5, 2], [7, 2])]))).toEqual([
      "drawing/not-a-place",
    ]);
    const holed = taken(withHole(project, "home", places([10, 10], [40, 10], [40, 40], [10, 40])));
    for (const hole of [places([20, 20], [30, 20], [30, 30]), places([30, 30], [50, 30], [50, 50])]) {
      expect(refused(withHole(holed, "home", hole))).toEqual(["drawing/hole-in-hole"]);
    }
  });

  it("is taken out again, and so is one of several outlines with its holes and edges", () => {
    const two = feature(
      "home",
      { role: "parcel" },
      {
        type: "MultiPolygon",
        coordinates: [
          [
            ring(fieldCorners),
            ring([
              [10, 10],
              [10, 20],
              [20, 20],
            ]),
          ],
          [
            ring([
              [100, 0],
              [160, 0],
              [160, 120],
            ]),
          ],
        ],
      },
    );
    const bank = line("bank", { role: "edge", setback: 1 }, [
      [10, 10],
      [10, 20],
    ]);
    const before = drawnProject([two, bank]);
    const filled = taken(withoutPath(before, "home", 1));
    expect(drawnThing(filled, "home")?.paths).toHaveLength(2);
    expect(drawnThing(filled, "bank")).toBeNull();
    const one = taken(withoutPath(before, "home", 0));
    expect(drawnThing(one, "home")?.paths.map(({ corners }) => corners)).toEqual([
      places([100, 0], [160, 0], [160, 120]),
    ]);
    expect(taken(withoutPath(one, "home", 0)).document.features).toEqual([]);
    expect(refused(withoutPath(before, "home", 9))).toEqual(["drawing/not-there"]);
  });
});

describe("a property", () => {
  it("is kept as typed, beside what others wrote", () => {
    const before = drawnProject([
      feature("home", { role: "parcel", soil: { clay: 0.3 } }, { type: "Polygon", coordinates: [ring(fieldCorners)] }),
    ]);
    const after = taken(withThingProperty(before, "home", "setback", "12 ft"));
    expect(after.document.features[0]?.properties).toEqual({ role: "parcel", soil: { clay: 0.3 }, setback: "12 ft" });
    expect(after.parcels[0]?.setback_m).toBeCloseTo(3.6576, 12);
    expect(taken(withThingProperty(after, "home", "setback", null)).document.features[0]?.properties).toEqual({
      role: "parcel",
      soil: { clay: 0.3 },
    });
    expect(taken(withThingProperty(after, "home", "owner", ["me"])).document.features[0]?.properties?.owner).toEqual([
      "me",
    ]);
  });

  test.each<[string, Json, string]>([
    ["setback", "far", "project/bad-setting"],
    ["setback", -2, "project/setting-out-of-range"],
    ["outline", "guessed", "project/bad-setting"],
    ["name", { first: "x" }, "project/bad-setting"],
    ["role", "tree", "project/bad-setting"],
  ])("%s %j is refused", (name, value, code) => {
    expect(refused(withThingProperty(fieldProject(), "home", name, value))).toEqual([code]);
  });

  it("of what is not there is refused", () => {
    expect(refused(withThingProperty(fieldProject(), "away", "name", "x"))).toEqual(["drawing/not-there"]);
  });
});

describe("what is drawn", () => {
  it.each([
    ...fixtureNames("good").map((name) => ["good", name] as const),
    ...fixtureNames("bad").map((name) => ["bad", name] as const),
  ])("in %s/%s is listed without throwing, and its file is the same after", (kind, name) => {
    const file = fixtureText(kind, name);
    let project: ReturnType<typeof projectIn>;
    try {
      project = projectIn(file);
    } catch {
      return;
    }
    const before = serializeProject(project);
    for (const thing of drawnThings(project)) {
      expect(thingLabel(thing)).not.toBe("");
      for (const { corners } of thing.paths) {
        expect(corners.length).toBeGreaterThan(0);
        for (const [lon, lat] of corners) expect(Math.abs(lon) <= 180 && Math.abs(lat) <= 90).toBe(true);
      }
    }
    expect(serializeProject(project)).toBe(before);
  });

  it("is called by its name, its number, its id or its place in the file", () => {
    const project = drawnProject([
      area("home", { role: "parcel", name: "North field" }, fieldCorners),
      spot("x", { role: "obstacle", name: "Oak" }, [1, 1]),
      area("parcel-2", { role: "parcel" }, fieldCorners),
      spot("pin", { role: "mark" }, [1, 1]),
      area("bog", { role: "no-plant" }, fieldCorners),
      line(null, { role: "no-plant" }, [
        [1, 1],
        [2, 2],
      ]),
      spot("?", {}, [1, 1]),
      spot("gate", { role: "elevation" }, [1, 1]),
      line("walk", { role: "elevation" }, [
        [1, 1],
        [2, 2],
      ]),
      area("survey", { role: "elevation", name: "hill.tif" }, fieldCorners),
    ]);
    expect(drawnThings(project).map(thingLabel)).toEqual([
      "Parcel “North field”",
      "Oak (obstacle)",
      "Parcel 2",
      "Mark “pin”",
      "No-plant area “bog”",
      "No-plant line (number 6 of the file)",
      "Drawing “?”",
      "Spot height “gate”",
      "Walked heights “walk”",
    ]);
  });

  it("without a role is the parcel where there is no other", () => {
    const [thing] = drawnThings(projectIn(fixtureText("good", "bare-polygon.geojson")));
    expect(thing?.role).toBe("parcel");
  });

  it("stays the same objects for as long as the features do", () => {
    const before = fieldProject([spot("oak", { role: "obstacle" }, [30, 30])]);
    expect(drawnThings(before)).toBe(drawnThings(before));
    const after = taken(withThingProperty(before, "oak", "name", "Old oak"));
    expect(drawnThings(after)[0]).toBe(drawnThings(before)[0]);
  });
});

test("a grid of heights is no drawn thing: it would lie over all others", () => {
  const grid = {
    columns: 2,
    rows: 2,
    cell: 100,
    origin: [...drawnAt([30, 60])],
    heights: [100, 200, 300, null],
  };
  const project = fieldProject([
    area("grid", { role: "elevation", grid }, fieldCorners),
    spot("spot", { role: "elevation", height: 12 }, [10, 10]),
  ]);
  expect(project.heightGrids).toHaveLength(1);
  expect(drawnThings(project).map(({ key }) => key)).toEqual(["home", "spot"]);
  expect(drawnThing(project, "grid")).toBeNull();
});
