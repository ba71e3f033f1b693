import fc from "fast-check";
import type { Geometry, Position } from "geojson";
import { describe, expect, test } from "vitest";
import type { FoundThing } from "../../../src/core/drawing/found-thing.ts";
import { joinedPoints } from "../../../src/core/drawing/joined-points.ts";
import { likelyRoles, possibleRoles } from "../../../src/core/drawing/likely-roles.ts";
import { mostTaken, withFound } from "../../../src/core/drawing/take-found.ts";
import type { Project, Role } from "../../../src/core/project/project.ts";
import { codes, createFile, field, projectIn } from "../../support/project-files.ts";

/* The places are invented, around the field of the test files: 42.6 N, 76.9 W. */
const oak: Position = [-76.8994, 42.6004];
const pond: Position[] = [
  [-76.8996, 42.6002],
  [-76.8995, 42.6002],
  [-76.8995, 42.6003],
  [-76.8996, 42.6003],
  [-76.8996, 42.6002],
];
const outline: Position[] = field.map(([lon, lat]) => [lon, lat]);

function createThing(geometry: Geometry, change: Partial<FoundThing> = {}): FoundThing {
  return { name: null, layer: null, geometry, values: [], ...change };
}
const point = (at: Position, change: Partial<FoundThing> = {}) =>
  createThing({ type: "Point", coordinates: at }, change);
const line = (places: Position[], change: Partial<FoundThing> = {}) =>
  createThing({ type: "LineString", coordinates: places }, change);
const area = (ring: Position[], change: Partial<FoundThing> = {}) =>
  createThing({ type: "Polygon", coordinates: [ring] }, change);

const empty = (): Project =>
  projectIn(JSON.stringify({ type: "FeatureCollection", features: [], tautrow: { version: 1, units: "metric" } }));
const home = (): Project => projectIn(createFile());

/** The project with one thing in a role, which must work. */
function taken(project: Project, thing: FoundThing, role: Role) {
  const outcome = withFound(project, [{ thing, role }]);
  if (!outcome.ok) throw new Error(`not taken: ${codes(outcome.findings).join(", ")}`);
  const feature = outcome.value.project.document.features.at(-1);
  return { ...outcome.value, findings: outcome.findings, feature };
}

describe("the role that a found thing most likely plays", () => {
  const likely = (thing: FoundThing, project: Project | null = home()) => likelyRoles([thing], project)[0];

  test("what a plan handed over comes back as what it was", () => {
    const roles: readonly (readonly [FoundThing, Role | null])[] = [
      [line([oak, [-76.899, 42.6004]], { values: [["role", "row"]] }), "row"],
      [area(outline, { values: [["role", "parcel"]] }), "parcel"],
      [area(outline, { values: [["role", "block"]] }), "block"],
      [line([oak, [-76.899, 42.6004]], { values: [["role", "main-line"]] }), "main-line"],
      [point(oak, { values: [["role", "mark"]] }), "mark"],
      [point([...oak, 212.5], { values: [["role", "trench-station"]] }), "elevation"],
      [point(oak, { values: [["role", "trench-station"]] }), null],
      [point([...oak, 212.5], { values: [["role", "vine"]] }), null],
      [point([...oak, 212.5], { values: [["kind", "end-post"]] }), null],
    ];
    for (const [thing, role] of roles) expect([thing.values, likely(thing)]).toEqual([thing.values, role]);
  });

  test("goes by the layer, then by the name", () => {
    expect(likely(point(oak, { layer: "Trees", name: "17" }))).toBe("obstacle");
    expect(likely(point(oak, { layer: "survey", name: "Old oak" }))).toBe("obstacle");
    expect(likely(point(oak, { layer: "Parcel boundary", name: "Well" }))).toBe("source");
    expect(likely(line([oak, [-76.899, 42.6004]], { layer: "ROWS" }))).toBe("row");
    expect(likely(line([oak, [-76.899, 42.6004]], { name: "Creek bank" }))).toBe("no-plant");
    expect(likely(line([oak, [-76.899, 42.6004]], { name: "main line" }))).toBe("main-line");
    expect(likely(point(oak, { layer: "vines", name: "Oak 3" }))).toBeNull();
    expect(likely(point(oak, { name: "Tomorrow" }))).toBeNull();
    expect(likely(point([...oak, 212.5], { name: "1041", values: [["code", "TREE"]] }))).toBe("obstacle");
    expect(likely(line([oak, [-76.899, 42.6004]], { layer: "tracks", values: [["type", "row"]] }))).toBe("row");
  });

  test("an outline about which nothing is said is the parcel where there is none yet, and what lies in it is not", () => {
    expect(likelyRoles([area(outline), area(pond), point(oak)], empty())).toEqual(["parcel", null, null]);
    expect(likely(area(outline))).toBeNull();
    expect(likely(line(outline), empty())).toBe("parcel");
    expect(likely(line(outline.slice(0, 4)), empty())).toBeNull();
  });

  test("points with heights are spot heights, unless every height is the 0 that some formats write for none", () => {
    expect(likely(point([...oak, 212.5]))).toBe("elevation");
    expect(likely(point([...oak, 0]))).toBeNull();
    expect(likelyRoles([point([...oak, 0]), point([-76.8993, 42.6, -1.5])], home())).toEqual([
      "elevation",
      "elevation",
    ]);
    expect(likely(point(oak, { values: [["elevation_m", 212.5]] }))).toBe("elevation");
    // The height of a tree is none of the ground.
    expect(likely(point(oak, { values: [["height", 12]] }))).toBeNull();
  });

  test("only roles that can be drawn so are offered, and a line of three places can become an outline", () => {
    expect(possibleRoles(point(oak))).toEqual(["obstacle", "no-plant", "keep-row", "mark", "source"]);
    expect(possibleRoles(point([...oak, 3]))).toContain("elevation");
    expect(possibleRoles(line([oak, [-76.899, 42.6004]]))).not.toContain("parcel");
    expect(possibleRoles(line(outline))).toEqual(expect.arrayContaining(["parcel", "block", "row", "main-line"]));
    expect(possibleRoles(area(outline))).toEqual(["parcel", "block", "obstacle", "no-plant", "cross-alley"]);
  });
});

describe("taking found things into a project", () => {
  test("each gets its role, its name, an id that is free, and what else it says", () => {
    const thing = point(oak, {
      name: " Old oak ",
      values: [
        ["species", "Quercus"],
        ["girth_m", 2.5],
      ],
    });
    const { project, keysOf, feature, findings } = taken(
      taken(home(), point([-76.8991, 42.6001]), "obstacle").project,
      thing,
      "obstacle",
    );
    expect(keysOf).toEqual([["obstacle-2"]]);
    expect(feature).toEqual({
      type: "Feature",
      id: "obstacle-2",
      properties: { role: "obstacle", name: "Old oak", species: "Quercus", girth_m: 2.5 },
      geometry: { type: "Point", coordinates: oak },
    });
    expect(findings).toEqual([]);
    expect(project.keepOuts.map(({ name }) => name)).toEqual([null, "Old oak"]);
  });

  test("a closed line becomes the parcel, and its hole, which came as a line too, a hole", () => {
    const walk = createThing({ type: "MultiLineString", coordinates: [outline, pond] });
    const { project, findings } = taken(empty(), walk, "parcel");
    expect(project.parcels[0]?.polygons[0]).toHaveLength(2);
    expect(codes(findings)).toEqual([]);
  });

  test("a line that does not come back is closed, and the length of the new side is told", () => {
    const { project, findings } = taken(empty(), line(outline.slice(0, 4), { name: "walk" }), "parcel");
    expect(project.parcels).toHaveLength(1);
    expect(codes(findings)).toEqual(["drawing/found-closed"]);
    expect(findings[0]?.message).toContainEqual({ kind: "length", value: expect.closeTo(89, 0) });
  });

  test("a collection of polygons becomes one parcel of several, and what else is in it is told", () => {
    const collection: Geometry = {
      type: "GeometryCollection",
      geometries: [
        { type: "Polygon", coordinates: [outline] },
        { type: "Polygon", coordinates: [outline.map(([lon = 0, lat = 0]) => [lon + 0.002, lat])] },
        { type: "Point", coordinates: oak },
      ],
    };
    const { project, feature, findings } = taken(empty(), createThing(collection), "parcel");
    expect(feature?.geometry?.type).toBe("MultiPolygon");
    expect(project.parcels[0]?.polygons).toHaveLength(2);
    expect(codes(findings)).toEqual(["drawing/found-part-left-out"]);
  });

  test("the bank of a pond is an obstacle as a whole, a fence around the field keeps its inside", () => {
    expect(taken(home(), line(pond), "obstacle").feature?.geometry?.type).toBe("Polygon");
    expect(taken(home(), line(outline), "no-plant").feature?.geometry?.type).toBe("LineString");
  });

  test("every line of a file's rows is a row that stands, also where one thing holds several", () => {
    const rows: Position[][] = [42.6002, 42.6003, 42.6004].map((lat) => [
      [-76.8998, lat],
      [-76.899, lat],
    ]);
    const { project, keysOf } = taken(home(), createThing({ type: "MultiLineString", coordinates: rows }), "row");
    expect(keysOf).toEqual([["row-1", "row-2", "row-3"]]);
    expect(project.givenRows.map(({ ends }) => ends)).toEqual(rows);
  });

  test("heights make spot heights: the third number, or a value with or without a unit", () => {
    expect(taken(home(), point([...oak, 0]), "elevation").project.spotHeights[0]?.height_m).toBe(0);
    const feet = taken(home(), point(oak, { values: [["elev_ft", 100]] }), "elevation");
    expect(feet.project.spotHeights[0]?.height_m).toBeCloseTo(30.48, 9);
    expect(codes(feet.findings)).toEqual([]);
    const survey = taken(home(), point(oak, { values: [["ELEV_US_FT", "3937"]] }), "elevation");
    expect(survey.project.spotHeights[0]?.height_m).toBeCloseTo(1200, 9);
    const said = taken(home(), point(oak, { values: [["Height", "12.5 ft"]] }), "elevation");
    expect(said.project.spotHeights[0]?.height_m).toBeCloseTo(3.81, 9);
    const bare = taken(home(), point(oak, { values: [["z", "212.5"]] }), "elevation");
    expect(bare.project.spotHeights[0]?.height_m).toBe(212.5);
    expect(codes(bare.findings)).toEqual(["drawing/found-heights-as-metres"]);
  });

  test("heights of corners are left out, and that is told once for all", () => {
    const things = [point([...oak, 3]), point([-76.8991, 42.6001, 4], { name: "shed" })];
    const outcome = withFound(
      home(),
      things.map((thing) => ({ thing, role: "obstacle" })),
    );
    expect(codes(outcome.findings)).toEqual(["drawing/found-heights-left-out"]);
    expect(outcome.findings[0]?.message.join("")).toBe("The heights of “shed” and a point were left out.");
    // 0 is what some formats write where there is none.
    expect(codes(taken(home(), point([...oak, 0]), "mark").findings)).toEqual([]);
  });

  test("hundreds of spot heights of a layer become one thing of many points", () => {
    const spots = Array.from({ length: 300 }, (_, i) =>
      point([-76.9 + (i % 20) * 5e-5, 42.6 + Math.floor(i / 20) * 5e-5, 200 + i / 10], {
        name: `p${i}`,
        layer: "survey",
      }),
    );
    const outcome = withFound(
      home(),
      spots.map((thing) => ({ thing, role: "elevation" })),
    );
    expect(outcome.ok && outcome.value.taken).toBe(300);
    expect(outcome.ok && new Set(outcome.value.keysOf.flat())).toEqual(new Set(["elevation-1"]));
    expect(outcome.ok && outcome.value.project.spotHeights).toHaveLength(300);
    expect(codes(outcome.findings)).toEqual(["drawing/found-heights-together"]);
  });

  test("what a project would read as a setting is believed of our own files only", () => {
    const foreign = area(pond, {
      values: [
        ["distance", 30],
        ["role", "water"],
        ["name", "x"],
      ],
      name: "Pond",
    });
    const { feature, findings } = taken(home(), foreign, "obstacle");
    expect(feature?.properties).toEqual({ role: "obstacle", name: "Pond" });
    expect(codes(findings)).toEqual(["drawing/found-property-left-out"]);
    expect(findings[0]?.message.join("")).toContain('"distance", "role" and "name"');
    const own = area(pond, {
      values: [
        ["role", "obstacle"],
        ["distance", "12 ft"],
        ["wiresPass", "true"],
      ],
    });
    expect(taken(home(), own, "obstacle").project.keepOuts[0]).toMatchObject({ distance_m: 3.6576, wiresPass: true });
    const row = line([oak, [-76.899, 42.6004]], {
      values: [
        ["role", "row"],
        ["block", "east"],
        ["row", "14"],
      ],
    });
    expect(taken(home(), row, "row").project.givenRows[0]).toMatchObject({ block: null, row: "14" });
  });

  test("names of properties and things that mean something to the language, or hold HTML, are text like any other", () => {
    const hostile = point(oak, {
      name: "<img src=x onerror=alert(1)>",
      values: [
        ["__proto__", "a"],
        ["constructor", "b"],
        ["hasOwnProperty", true],
      ],
    });
    const { feature, project } = taken(home(), hostile, "mark");
    expect(Object.entries(feature?.properties ?? {})).toEqual([
      ["role", "mark"],
      ["name", "<img src=x onerror=alert(1)>"],
      ["__proto__", "a"],
      ["constructor", "b"],
      ["hasOwnProperty", true],
    ]);
    expect(project.marks[0]?.name).toBe("<img src=x onerror=alert(1)>");
    expect(Object.getPrototypeOf(feature?.properties)).toBe(Object.prototype);
  });

  test("an own file that comes in twice changes nothing the second time", () => {
    const thing = area(outline, { name: "home" });
    const once = taken(empty(), thing, "parcel");
    const twice = withFound(once.project, [{ thing, role: "parcel" }]);
    expect(twice.ok).toBe(false);
    expect(codes(twice.findings)).toEqual(["drawing/found-already-there"]);
  });
});

describe("points joined into an outline", () => {
  const corners = outline.slice(0, 4).map((at, i) => point(at, { name: `${i + 1}`, layer: "corners" }));

  test("follow their order and are called after their layer", () => {
    const outlined = joinedPoints(corners);
    expect(outlined).toEqual(area(outline, { layer: "corners" }));
    expect(taken(empty(), outlined ?? point(oak), "parcel").project.parcels[0]?.polygons).toEqual([
      [outline.slice(0, 4)],
    ]);
  });

  test("are from three to five hundred, and nothing else among them", () => {
    expect(joinedPoints(corners.slice(0, 2))).toBeNull();
    expect(joinedPoints([...corners, line(outline)])).toBeNull();
    expect(joinedPoints(Array.from({ length: 501 }, () => point(oak)))).toBeNull();
  });
});

describe("what cannot be taken is told, and the rest is taken", () => {
  const refused = (thing: FoundThing, role: Role) => {
    const good = point([-76.8991, 42.6001], { name: "good" });
    const outcome = withFound(home(), [
      { thing, role },
      { thing: good, role: "mark" },
    ]);
    expect(outcome.ok && outcome.value.taken).toBe(1);
    return codes(outcome.findings);
  };

  test("a shape that cannot play the role", () => {
    expect(refused(point(oak), "parcel")).toEqual(["drawing/found-wrong-shape"]);
    expect(refused(area(pond), "mark")).toEqual(["drawing/found-wrong-shape"]);
    expect(refused(createThing({ type: "GeometryCollection", geometries: [] }), "mark")).toEqual([
      "drawing/found-wrong-shape",
    ]);
  });

  test("places that are none", () => {
    expect(refused(point([512_345, 4_265_432]), "mark")).toEqual(["drawing/found-not-a-place"]);
    expect(refused(point([Number.NaN, 42]), "mark")).toEqual(["drawing/found-not-a-place"]);
    expect(refused(point([1]), "mark")).toEqual(["drawing/found-not-a-place"]);
  });

  test("too few corners", () => {
    expect(refused(area([oak, oak, oak, oak]), "obstacle")).toEqual(["drawing/found-too-few-corners"]);
    expect(refused(line([oak, oak]), "row")).toEqual(["drawing/found-too-few-corners"]);
  });

  test("what lies so far away that the project could not be planned any more", () => {
    expect(refused(point([-75, 42.6]), "mark")).toEqual(["drawing/found-far-away"]);
  });

  test("spot heights without a height", () => {
    expect(refused(point(oak), "elevation")).toEqual(["drawing/found-without-height"]);
  });

  test("more things than a project holds well", () => {
    const things = Array.from({ length: mostTaken + 1 }, (_, i) => point([-76.9 + i * 1e-7, 42.6]));
    const outcome = withFound(
      home(),
      things.map((thing) => ({ thing, role: "mark" })),
    );
    expect([outcome.ok, codes(outcome.findings)]).toEqual([false, ["drawing/found-too-many"]]);
  });
});

test("whatever is found, taking it in never throws, and leaves the project before it as it was", () => {
  const number = fc.oneof(fc.double(), fc.double({ min: -76.91, max: -76.89 }), fc.double({ min: 42.59, max: 42.61 }));
  const position = fc.oneof(
    fc.array(number, { maxLength: 4 }),
    fc.tuple(fc.double({ min: -76.91, max: -76.89 }), fc.double({ min: 42.59, max: 42.61 })),
  );
  const positions = fc.array(position, { maxLength: 6 });
  const simple: fc.Arbitrary<Geometry> = fc.oneof(
    position.map((coordinates): Geometry => ({ type: "Point", coordinates })),
    positions.map((coordinates): Geometry => ({ type: "MultiPoint", coordinates })),
    positions.map((coordinates): Geometry => ({ type: "LineString", coordinates })),
    fc.array(positions, { maxLength: 3 }).map((coordinates): Geometry => ({ type: "MultiLineString", coordinates })),
    fc.array(positions, { maxLength: 3 }).map((coordinates): Geometry => ({ type: "Polygon", coordinates })),
    fc
      .array(fc.array(positions, { maxLength: 2 }), { maxLength: 2 })
      .map((coordinates): Geometry => ({ type: "MultiPolygon", coordinates })),
  );
  const geometry = fc.oneof(
    simple,
    fc.array(simple, { maxLength: 3 }).map((geometries): Geometry => ({ type: "GeometryCollection", geometries })),
  );
  const text = fc.option(fc.string());
  const value = fc.oneof(fc.string(), fc.boolean(), fc.double());
  const thing = fc.record({ name: text, layer: text, geometry, values: fc.array(fc.tuple(fc.string(), value)) });
  fc.assert(
    fc.property(fc.array(thing, { maxLength: 4 }), fc.nat(), (things, pick) => {
      const project = home();
      const before = JSON.stringify(project.document);
      const roles = likelyRoles(things, project);
      const chosen = things.map((each, i) => {
        const possible = possibleRoles(each);
        if (roles[i] !== null) expect(possible).toContain(roles[i]);
        return { thing: each, role: roles[i] ?? possible[pick % Math.max(1, possible.length)] ?? "mark" };
      });
      const outcome = withFound(project, chosen);
      if (!outcome.ok && things.length > 0) expect(outcome.findings.length).toBeGreaterThan(0);
      if (outcome.ok) {
        expect(outcome.value.project.document.features.length).toBe(1 + new Set(outcome.value.keysOf.flat()).size);
        expect(() => JSON.stringify(outcome.value.project.document)).not.toThrow();
      }
      expect(JSON.stringify(project.document)).toBe(before);
    }),
    { seed: 20_261, numRuns: 400 },
  );
});
