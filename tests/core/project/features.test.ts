import { describe, expect, it, test } from "vitest";
import { parseProject } from "../../../src/core/project/parse.ts";
import type { Json } from "../../../src/core/project/project.ts";
import { text } from "../../../src/core/units.ts";
import {
  codesButDefaults,
  createFeature,
  createFile,
  field,
  fixtureText,
  point,
  projectIn,
} from "../../support/project-files.ts";

const open = field.slice(0, -1);

function line(...coordinates: readonly (readonly [number, number])[]): Json {
  return { type: "LineString", coordinates };
}

function area(...coordinates: readonly (readonly (readonly number[])[])[]): Json {
  return { type: "Polygon", coordinates };
}

describe("a parcel's outline is mended for planning, and stays as drawn in the file", () => {
  test.each([
    ["bare-polygon.geojson"],
    ["ring-not-closed.geojson"],
    ["corner-repeated.geojson"],
    ["corner-on-a-straight-edge.geojson"],
    ["heights.geojson"],
  ])("%s: four corners, counter-clockwise, none repeated", (name) => {
    const [parcel] = projectIn(fixtureText("good", name)).parcels;
    expect(parcel?.polygons).toEqual([[open]]);
  });

  test("rings that run the wrong way are turned: outer counter-clockwise, holes clockwise", () => {
    const { parcels, document } = projectIn(fixtureText("good", "rings-the-other-way-round.geojson"));
    const [outer = [], hole = []] = parcels[0]?.polygons[0] ?? [];
    expect(turn(outer)).toBe("counter-clockwise");
    expect(turn(hole)).toBe("clockwise");
    expect(document.features[0]?.geometry).toMatchObject({ coordinates: [[...field].reverse(), expect.anything()] });
  });

  test("across longitude 180 the longitudes go on from one side, for every feature", () => {
    const { parcels } = projectIn(fixtureText("good", "across-longitude-180.geojson"));
    const longitudes = parcels[0]?.polygons[0]?.[0]?.map(([lon]) => lon) ?? [];
    expect(longitudes).toEqual([179.9995, 180.0007, 180.0007, 179.9995]);
    const cut = projectIn(fixtureText("good", "cut-at-longitude-180.geojson"));
    expect(cut.parcels[0]?.polygons.flat(2).every(([lon]) => lon > 179)).toBe(true);
  });

  function turn(ring: readonly (readonly [number, number])[]): string {
    const twice = ring.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y];
      return sum + (x - nextX) * (y + nextY);
    }, 0);
    return twice > 0 ? "counter-clockwise" : "clockwise";
  }
});

describe("features by their role", () => {
  const stated = projectIn(fixtureText("good", "everything-stated.geojson"));

  it("a parcel has its own setback and says how its outline was made", () => {
    expect(stated.parcels).toMatchObject([{ key: "home", setback_m: 3.6576, outline: "drawn" }]);
    expect(projectIn(createFile()).parcels).toMatchObject([{ setback_m: null, outline: "surveyed" }]);
  });

  it("an edge has a setback and a name", () => {
    expect(stated.edges).toEqual([
      { key: "lane", line: [field[0], field[1]], setback_m: 6.096, tapedLength_m: null, name: "lane" },
    ]);
  });

  it("an obstacle keeps its own distance, else the usual one of its role", () => {
    expect(
      stated.keepOuts.map(({ key, role, distance_m, wiresPass, largestGap_m }) => [
        key,
        role,
        distance_m,
        wiresPass,
        largestGap_m,
      ]),
    ).toEqual([
      ["oak", "obstacle", 4.572, false, null],
      ["#5", "obstacle", 1, true, 7.3152],
      ["brook", "no-plant", 5, false, null],
    ]);
  });

  it("a distance of zero is a distance", () => {
    const { keepOuts } = projectIn(
      createFile(undefined, [createFeature("oak", { role: "obstacle", distance: 0 }, point(-76.899, 42.6004))]),
    );
    expect(keepOuts[0]?.distance_m).toBe(0);
  });

  it("rows that stand already have their end posts, their taped length, or both", () => {
    expect(stated.givenRows).toEqual([
      {
        key: "old-row",
        block: "east",
        row: "3",
        ends: [
          [-76.8996, 42.6001],
          [-76.8996, 42.6006],
        ],
        tapedLength_m: 55.3212,
      },
      { key: "taped-row", block: "east", row: "4a", ends: null, tapedLength_m: 55.2 },
    ]);
  });

  it("points: places to keep a row, sources, marks (each point of several)", () => {
    expect(stated.keptPlaces).toEqual([{ key: "keep", at: [-76.8999, 42.6001] }]);
    expect(stated.sources).toEqual([{ key: "well", name: "well", at: [-76.9001, 42.6004] }]);
    expect(stated.marks.map(({ at }) => at)).toEqual([
      [-76.9001, 42.6],
      [-76.9001, 42.6008],
    ]);
  });

  it("a main line has its way", () => {
    const line = [
      [-76.9001, 42.6004],
      [-76.9, 42.6002],
    ];
    expect(stated.mainLines).toEqual([{ key: "main", name: null, line }]);
  });

  it("a spot height is what it states, else the third number of its place", () => {
    expect(stated.spotHeights).toEqual([{ key: "spot", name: null, at: [-76.8995, 42.6005], height_m: 214 }]);
    const several = {
      type: "MultiPoint",
      coordinates: [
        [-76.8995, 42.6005, 0],
        [-76.8996, 42.6005, -3.5],
        [-76.8997, 42.6005],
      ],
    };
    const { spotHeights, findings } = projectIn(
      createFile(undefined, [
        createFeature("several", { role: "elevation" }, several),
        createFeature(
          "stated",
          { role: "elevation", height: "100 ft", name: "gate" },
          { type: "Point", coordinates: [-76.899, 42.6004, 9] },
        ),
        createFeature("zero", { role: "elevation", height: 0 }, point(-76.899, 42.6004)),
        createFeature(
          "line",
          { role: "elevation", height: 7 },
          { type: "LineString", coordinates: field.slice(0, 2).map((each) => [...each]) },
        ),
        createFeature("odd", { role: "elevation", height: "high" }, point(-76.899, 42.6004)),
      ]),
    );
    expect(spotHeights.map(({ key, height_m }) => [key, height_m])).toEqual([
      ["several", 0],
      ["several", -3.5],
      ["stated", 30.48],
      ["zero", 0],
      ["line", 7],
      ["line", 7],
    ]);
    expect(spotHeights[2]?.name).toBe("gate");
    // What has a height for the ground does not have it in vain.
    expect(findings.map(({ code, feature }) => [code, feature]).slice(1)).toEqual([
      ["project/height-missing", "several"],
      ["project/bad-setting", "odd"],
    ]);
  });

  it("blocks have their areas", () => {
    expect(stated.blockAreas.map(({ key, block, polygons }) => [key, block, polygons.length])).toEqual([
      ["e", "east", 1],
      ["w", "2", 1],
    ]);
  });

  it("an area that names no block belongs to the only one", () => {
    const { blockAreas } = projectIn(createFile(undefined, [createFeature("half", { role: "block" }, area(field))]));
    expect(blockAreas).toMatchObject([{ key: "half", block: "1" }]);
  });

  it("an obstacle may be a collection of anything", () => {
    const parts = [
      point(-76.8992, 42.6002),
      line([-76.8992, 42.6002], [-76.8991, 42.6003]),
      area(field.map(([x, y]) => [x + 0.0004, y + 0.0004])),
    ];
    const project = projectIn(
      createFile(undefined, [
        createFeature("yard", { role: "obstacle" }, { type: "GeometryCollection", geometries: parts }),
      ]),
    );
    const [yard] = project.keepOuts;
    expect([yard?.shape.points.length, yard?.shape.lines.length, yard?.shape.areas.length]).toEqual([1, 1, 1]);
    expect(codesButDefaults(project.findings)).toEqual(["project/collection-folded"]);
  });

  it.each([
    ["source", line([-76.9, 42.6], [-76.89, 42.6])],
    ["mark", area(field)],
    ["keep-row", area(field)],
    ["edge", point(-76.9, 42.6)],
    ["cross-alley", point(-76.9, 42.6)],
    ["row", point(-76.9, 42.6)],
    ["block", point(-76.9, 42.6)],
  ])("a %s of the wrong kind of geometry is kept and not used, with a warning", (role, geometry) => {
    const { findings } = projectIn(createFile(undefined, [createFeature("it", { role }, geometry)]));
    expect(codesButDefaults(findings)).toEqual(["project/wrong-geometry"]);
  });

  it("areas without a role are parcels only as long as no feature has that role", () => {
    const shed = createFeature("shed", { name: "shed" }, area(field.map(([x, y]) => [x + 0.01, y])));
    const withRole = projectIn(createFile(undefined, [shed]));
    expect(withRole.parcels.map(({ key }) => key)).toEqual(["home"]);
    expect(codesButDefaults(withRole.findings)).toEqual(["project/no-role"]);
    const without = projectIn(createFile(undefined, [shed]).replace('"role":"parcel"', '"colour":"green"'));
    expect(without.parcels.map(({ key }) => key)).toEqual(["home", "shed"]);
    expect(codesButDefaults(without.findings)).toEqual(["project/parcel-assumed", "project/parcel-assumed"]);
  });
});

describe("a file with an error", () => {
  it("keeps its good features", () => {
    const barn = createFeature(
      "barn",
      { role: "obstacle" },
      area([
        [-76.8996, 42.6002],
        [-76.8994, 42.6004],
        [-76.8994, 42.6002],
        [-76.8996, 42.6004],
      ]),
    );
    const project = projectIn(
      createFile(undefined, [barn, createFeature("oak", { role: "obstacle" }, point(-76.899, 42.6004))]),
    );
    expect(project.parcels).toHaveLength(1);
    expect(project.keepOuts.filter(({ shape }) => shape.points.length > 0).map(({ key }) => key)).toEqual(["oak"]);
    expect(project.document.features).toHaveLength(3);
  });

  it("is told where in the text it is", () => {
    const { findings } = parseProject('{\n  "type": "Polygon",\n  "coordinates": [[[1, 2], [NaN, 4]]]\n}');
    expect(text(findings[0]?.message ?? [], "metric")).toContain("Line 3, column 29 has NaN");
  });

  it("is told each place where the outline crosses itself", () => {
    const { findings } = parseProject(fixtureText("bad", "outline-crosses-in-two-places.geojson"));
    const places = findings
      .filter(({ code }) => code === "project/self-crossing")
      .map(({ at }) => at?.map((degrees) => degrees.toFixed(5)));
    expect(places).toHaveLength(2);
    expect(places.map((place) => place?.[1])).toEqual(["42.60000", "42.60000"]);
  });
});
