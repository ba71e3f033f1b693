import { describe, expect, test } from "vitest";
import { usualChoice } from "../../../src/core/exchange/choice.ts";
import type { Layer, LayerFeature, LayerKind } from "../../../src/core/exchange/layers/layer.ts";
import { layerKinds } from "../../../src/core/exchange/layers/layer.ts";
import type { LayerJob } from "../../../src/core/exchange/layers/layer-job.ts";
import { layerOf } from "../../../src/core/exchange/layers/layers.ts";
import type { Plan } from "../../../src/core/plan.ts";
import { type LonLat, lonLat, planePoint } from "../../../src/core/plane/coordinate.ts";
import { createFrame } from "../../../src/core/plane/frame.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import {
  at,
  createBlock,
  createParcel,
  createProject,
  createTrellisSettings,
  rectangle,
  testFrame,
} from "../../support/create-project.ts";
import { createTrenchPlan } from "../../support/create-trench-plan.ts";
import { geodesic, geodesicArea } from "../../support/geodesic.ts";

/** What the plane of a project may be off over a row's length near its origin, with room for the last digits. */
const plane_m = 0.0002;

const marks = [
  { key: "pin", name: "Gate pin", at: at([0, 0]) },
  { key: "#7", name: null, at: at([60, 0]) },
];
const plan = createPlanner().plan(createProject({ marks }));
const watered = createTrenchPlan((station_m) => 100 + station_m / 50);

test("there are as many of each kind as the plan has, and each layer counts them right", () => {
  const rows = plan.rows?.rows ?? [];
  const sum = (of: (row: (typeof rows)[number]) => number) => rows.reduce((all, row) => all + of(row), 0);
  expect(rows.length).toBeGreaterThan(10);
  const wanted: Partial<Record<LayerKind, number>> = {
    parcels: 1,
    blocks: 1,
    rows: rows.length,
    vines: sum(({ vines }) => vines),
    stakes: sum(({ stakes }) => stakes),
    posts: sum(({ linePosts }) => linePosts + 2),
    anchors: 2 * rows.length,
    pegs: 2 * rows.length,
    marks: 2,
    route: 0,
  };
  for (const kind of layerKinds) {
    const layer = layerOf[kind](jobOf(plan));
    expect([kind, Array.from(layer.features()).length]).toEqual([kind, layer.count]);
    expect([kind, layer.count]).toEqual([kind, wanted[kind] ?? 0]);
  }
});

test.each(layerKinds)(
  "the %s have ids of their own, a value a column, and are named in the order they come in",
  (kind) => {
    for (const one of [plan, watered]) {
      const layer = layerOf[kind](jobOf(one));
      const features = Array.from(layer.features());
      expect(new Set(features.map(({ id }) => id)).size).toBe(features.length);
      expect(Array.from(layer.named(), ({ id, parts }) => ({ id, parts }))).toEqual(
        features.map(({ id, parts }) => ({ id, parts })),
      );
      for (const { geometry, values } of features) {
        expect(geometry.shape).toBe(layer.shape);
        expect(values).toHaveLength(layer.columns.length);
        layer.columns.forEach((column, i) => {
          const value = values[i] ?? null;
          if (value === null) return;
          expect([column.name, typeof value]).toEqual([column.name, typeOf[column.type]]);
          if (column.type === "whole") expect(Number.isInteger(value)).toBe(true);
          if (column.type === "number") expect(value).toBe(Number(Number(value).toFixed(column.decimals ?? 20)));
        });
      }
    }
  },
);

test("ids are unique over all layers together, and the same in a second plan", () => {
  const ids = (of: Plan) =>
    layerKinds.flatMap((kind) => Array.from(layerOf[kind](jobOf(of)).features(), ({ id }) => id));
  const first = ids(watered);
  expect(new Set(first).size).toBe(first.length);
  expect(ids(createTrenchPlan((station_m) => 100 + station_m / 50))).toEqual(first);
});

test("a row is as long between its two ends as it says, by the geodesic", () => {
  for (const row of featuresOf("rows")) {
    const [from, to] = lineOf(row);
    expect(Math.abs(geodesic(from, to).length_m - Number(valueIn("rows", row, "length_m")))).toBeLessThan(
      0.0005 + plane_m,
    );
  }
});

test("vines and posts stand at their station from the start of their row, on its line, by the geodesic", () => {
  const starts = new Map(featuresOf("rows").map((row) => [row.parts.row, lineOf(row)]));
  for (const kind of ["vines", "stakes", "posts"] as const) {
    for (const feature of featuresOf(kind)) {
      const [start, end] = starts.get(feature.parts.row) ?? [];
      if (start === undefined || end === undefined) throw new Error("a vine without a row");
      const [from, back] = [geodesic(start, pointOf(feature)), geodesic(pointOf(feature), end)];
      const whole_m = geodesic(start, end).length_m;
      expect(Math.abs(from.length_m - Number(valueIn(kind, feature, "station_m")))).toBeLessThan(0.0005 + plane_m);
      expect(Math.abs(from.length_m + back.length_m - whole_m)).toBeLessThan(plane_m);
    }
  }
});

test.each([
  ["anchors", 1.5],
  ["pegs", 2.3],
] as const)("%s stand beyond both end posts on the line of the row, by the geodesic", (kind, beyond_m) => {
  const rows = new Map(featuresOf("rows").map((row) => [row.parts.row, lineOf(row)]));
  const features = featuresOf(kind, jobOf(plan, { pegBeyond_m: 0.8 }));
  expect(features.length).toBe(2 * rows.size);
  for (const feature of features) {
    const [start, end] = rows.get(feature.parts.row) ?? [];
    if (start === undefined || end === undefined) throw new Error("an anchor without a row");
    const [near, far] = feature.parts.number === 1 ? [start, end] : [end, start];
    const out = geodesic(near, pointOf(feature));
    expect(Math.abs(out.length_m - beyond_m)).toBeLessThan(plane_m);
    // Away from the other end: all the way is the row and what is beyond.
    const all_m = geodesic(far, pointOf(feature)).length_m;
    expect(Math.abs(all_m - geodesic(far, near).length_m - beyond_m)).toBeLessThan(plane_m);
    const station_m = Number(valueIn(kind, feature, "station_m"));
    const from_m = geodesic(start, pointOf(feature)).length_m;
    expect(Math.abs(station_m - (feature.parts.number === 1 ? -from_m : from_m))).toBeLessThan(0.0005 + plane_m);
  }
});

test("ends that are braced have no anchor, and their peg stands beyond the end post itself", () => {
  const trellis = createTrellisSettings();
  const braced = createPlanner().plan(
    createProject({
      blocks: [createBlock({}, { trellis: { ...trellis, endAssembly: { ...trellis.endAssembly, kind: "h-brace" } } })],
    }),
  );
  expect(layerOf.anchors(jobOf(braced)).count).toBe(0);
  const job = jobOf(braced, { pegBeyond_m: 0.8 });
  const [first] = featuresOf("pegs", job);
  expect(first?.values[4]).toBe(-0.8);
});

describe("stations and offsets from a baseline", () => {
  // Along the south side of the ground from west to east: stations count east, offsets to the right are south.
  const baseline = { name: "Gate pin, other", from: at([0, 0]), to: at([60, 0]) };
  const job = jobOf(plan, { baseline });

  test("the mark it starts from has station 0, the other its distance, and neither stands off", () => {
    const layer = layerOf.marks(job);
    const [from, to] = Array.from(layer.features(), ({ values }) => values.slice(-2));
    expect(from).toEqual([0, 0]);
    expect(to).toEqual([60, 0]);
  });

  test("a post 10 m east and 20 m north of it has station 10 and stands 20 m to the left: -20", () => {
    const layer = layerOf.posts(job);
    expect(layer.columns.map(({ name }) => name).slice(-2)).toEqual(["baselineStation_m", "baselineOffset_m"]);
    for (const feature of layer.features()) {
      const [x, y] = testFrame.toPlane(pointOf(feature));
      const [station_m, offset_m] = feature.values.slice(-2).map(Number);
      expect(Math.abs(Number(station_m) - x)).toBeLessThan(0.001);
      expect(Math.abs(Number(offset_m) + y)).toBeLessThan(0.001);
    }
  });

  test("from the other end stations run the other way, and left is right", () => {
    const turned = jobOf(plan, { baseline: { ...baseline, from: baseline.to, to: baseline.from } });
    const [first] = layerOf.posts(turned).features();
    if (first === undefined) throw new Error("no post");
    const [x, y] = testFrame.toPlane(pointOf(first));
    const [station_m, offset_m] = first.values.slice(-2).map(Number);
    expect(Math.abs(Number(station_m) - (60 - x))).toBeLessThan(0.001);
    expect(Math.abs(Number(offset_m) - y)).toBeLessThan(0.001);
  });
});

describe("the ground of blocks", () => {
  const half = (block: string, x: number) => ({
    key: block,
    block,
    polygons: createParcel([rectangle(30, 140, [x, -10])]).polygons,
  });

  test("a block that has all of a parcel is that parcel, to the last digit but for the way through the plane", () => {
    const [block] = featuresOf("blocks");
    const [parcel] = featuresOf("parcels");
    const [ring = [], corners = []] = [block, parcel].map((each) => ringsOf(each)[0]);
    expect(ring.length).toBe(4);
    corners.forEach((corner, i) => {
      expect(geodesic(corner, ring[i] ?? corner).length_m).toBeLessThan(1e-6);
    });
  });

  test("a drawn block is what its area has of the parcel, the block without a drawing gets the rest", () => {
    const twins = createPlanner().plan(
      createProject({
        blocks: [createBlock({}, { id: "west" }), createBlock({}, { id: "rest" })],
        blockAreas: [half("west", -5)],
      }),
    );
    const [west, rest] = featuresOf("blocks", jobOf(twins));
    const areas_m2 = [west, rest].map((each) => ringsOf(each).reduce((sum, ring) => sum + geodesicArea(ring), 0));
    expect(areas_m2.map((area_m2) => Math.round(area_m2))).toEqual([25 * 120, 35 * 120]);
    expect([west, rest].map((each) => each?.values[2])).toEqual([3000, 4200]);
  });

  test("a block in the middle of another is a hole of it, which goes clockwise", () => {
    const inner = { key: "inner", block: "inner", polygons: createParcel([rectangle(20, 40, [20, 40])]).polygons };
    const ringed = createPlanner().plan(
      createProject({
        blocks: [createBlock({}, { id: "outer" }), createBlock({}, { id: "inner" })],
        blockAreas: [inner],
      }),
    );
    const [outer] = featuresOf("blocks", jobOf(ringed));
    const signs = ringsOf(outer).map((ring) => Math.sign(geodesicArea(ring)));
    expect(signs).toEqual([1, -1]);
    expect(outer?.values[2]).toBe(60 * 120 - 20 * 40);
  });
});

test("what lies across the antimeridian leaves with longitudes within 180", () => {
  const frame = createFrame(lonLat(180, -17));
  const ring = rectangle(120, 60, [-60, -30]).map(([x, y]) => frame.toLonLat(planePoint(x, y)));
  const unwrapped = ring.map(([lon, lat]) => lonLat(lon < 0 ? lon + 360 : lon, lat));
  const across = createPlanner().plan(
    createProject({
      frameOrigin: lonLat(180, -17),
      parcels: [{ ...createParcel([rectangle(1, 1)]), polygons: [[unwrapped]] }],
    }),
  );
  for (const kind of ["parcels", "blocks"] as const) {
    const [first] = featuresOf(kind, jobOf(across));
    const longitudes = ringsOf(first).flatMap((places) => places.map(([lon]) => lon));
    expect(longitudes.some((lon) => lon > 179)).toBe(true);
    expect(longitudes.some((lon) => lon < -179)).toBe(true);
    for (const lon of longitudes) expect(Math.abs(lon)).toBeLessThanOrEqual(180);
  }
});

test("heights are those of the ground where it is known, and null where it is not", () => {
  const spots = [
    [0, 0, 100],
    [60, 0, 103],
    [0, 60, 106],
  ].map(([x = 0, y = 0, height_m = 0], i) => ({ key: `spot-${i}`, name: null, at: at([x, y]), height_m }));
  const hilly = createPlanner().plan(createProject({ spotHeights: spots }));
  const heightAt = (x: number, y: number) => (x + y <= 60 ? 100 + 0.05 * x + 0.1 * y : null);
  const posts = featuresOf("posts", jobOf(hilly, { heightAt }));
  const known = posts.filter(({ geometry }) => geometry.shape === "point" && geometry.place.height_m !== null);
  expect(known.length).toBeGreaterThan(10);
  expect(known.length).toBeLessThan(posts.length);
  for (const { geometry } of known) {
    if (geometry.shape !== "point") throw new Error("not a point");
    const [x, y] = testFrame.toPlane(geometry.place.at);
    expect(geometry.place.height_m).toBeCloseTo(100 + 0.05 * x + 0.1 * y, 5);
  }
});

test("only the rows that are chosen go out, with what stands along them; the main line stays", () => {
  const chosen = jobOf(watered, { rows: new Set(["2"]) });
  expect(featuresOf("rows", chosen).map(({ parts }) => parts.row)).toEqual(["2"]);
  for (const kind of ["vines", "posts", "anchors", "pegs"] as const) {
    expect([kind, [...new Set(featuresOf(kind, chosen).map(({ parts }) => parts.row))]]).toEqual([kind, ["2"]]);
  }
  expect(layerOf.fittings(chosen).count).toBe(layerOf.fittings(jobOf(watered)).count);
});

test("what follows from an outline that was walked says in every layer that it is a sketch", () => {
  const walked = createPlanner().plan(
    createProject({ marks, parcels: [createParcel([rectangle(60, 120)], { outline: "walked" })] }),
  );
  for (const kind of layerKinds) {
    const layer = layerOf[kind](jobOf(walked));
    expect([kind, layer.columns.at(-1)]).toEqual([kind, { name: "sketch", type: "yes" }]);
    for (const { values } of layer.features()) expect(values.at(-1)).toBe(true);
  }
});

const typeOf = { text: "string", number: "number", whole: "number", yes: "boolean" } as const;

function jobOf(of: Plan, change: Partial<LayerJob> = {}): LayerJob {
  return {
    plan: of,
    rows: null,
    pegBeyond_m: usualChoice.pegBeyond_m,
    baseline: null,
    hasHeights: true,
    heightAt: () => null,
    ...change,
  };
}

function featuresOf(kind: LayerKind, job: LayerJob = jobOf(plan)): readonly LayerFeature[] {
  return Array.from(layerOf[kind](job).features());
}

function valueIn(kind: LayerKind, feature: LayerFeature, column: string) {
  const layer: Layer = layerOf[kind](jobOf(plan));
  return feature.values[layer.columns.findIndex(({ name }) => name === column)];
}

function pointOf({ geometry }: LayerFeature): LonLat {
  if (geometry.shape !== "point") throw new Error("not a point");
  return geometry.place.at;
}

function lineOf({ geometry }: LayerFeature): readonly [LonLat, LonLat] {
  if (geometry.shape !== "line") throw new Error("not a line");
  const [from, to] = geometry.places;
  if (from === undefined || to === undefined) throw new Error("no line");
  return [from.at, to.at];
}

function ringsOf(feature: LayerFeature | undefined): readonly (readonly LonLat[])[] {
  if (feature?.geometry.shape !== "area") throw new Error("not an area");
  return feature.geometry.polygons.flat().map((ring) => ring.map((place) => place.at));
}
