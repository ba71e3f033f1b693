import { expect, test } from "vitest";
import { lonLat, planePoint } from "../../../src/core/plane/coordinate.ts";
import { createFrame } from "../../../src/core/plane/frame.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { createBlock, createParcel, createProject, rectangle } from "../../support/create-project.ts";
import { collectionOf, handedOver, textsOf } from "../../support/handed-over.ts";

/** 8 decimals of a degree, half of the last one, in metres along a meridian. */
const roundTrip_m = 0.002;

const project = createProject();
const plan = createPlanner().plan(project);
const rows = plan.rows?.rows ?? [];

test("every row is a line from its start to its end that comes back within 2 mm", () => {
  const { features } = collectionOf(plan, ["rows"]);
  expect(features).toHaveLength(rows.length);
  expect(rows.length).toBeGreaterThan(10);
  for (const [index, feature] of features.entries()) {
    const row = rows[index];
    if (feature.geometry.type !== "LineString" || row === undefined || plan.ground === null) throw new Error("no line");
    for (const [i, post] of [row.start, row.end].entries()) {
      const [lon = 0, lat = 0] = feature.geometry.coordinates[i] ?? [];
      const back = plan.ground.frame.toPlane(lonLat(lon, lat));
      expect(Math.hypot(back[0] - post[0], back[1] - post[1])).toBeLessThan(roundTrip_m);
      expect(String(lon).split(".")[1]?.length ?? 0).toBeLessThanOrEqual(8);
    }
    expect(feature.properties).toMatchObject({ role: "row", row: row.id, vines: row.vines, waterEnd: "start" });
    expect(feature.properties?.length_m).toBeCloseTo(row.length_m, 3);
  }
});

test("every vine is a point with its row, its number in the row and its station", () => {
  const { features } = collectionOf(plan, ["vines"]);
  const first = rows[0];
  if (first === undefined) throw new Error("no row");
  expect(features).toHaveLength(rows.reduce((sum, row) => sum + row.vines, 0));
  expect(features[0]?.properties).toMatchObject({ role: "vine", row: first.id, number: 1 });
  expect(features[first.vines]?.properties).toMatchObject({ row: rows[1]?.id, number: 1 });
  expect(collectionOf(plan, ["stakes"]).features).toHaveLength(features.length);
});

test("posts stand in order from end post to end post", () => {
  const first = rows[0];
  if (first === undefined) throw new Error("no row");
  const posts = collectionOf(plan, ["posts"]).features.filter((feature) => feature.properties?.row === first.id);
  expect(posts.map((post) => post.properties?.role)).toEqual([
    "end-post",
    ...Array.from({ length: first.linePosts }, () => "line-post"),
    "end-post",
  ]);
  const stations = posts.map((post) => Number(post.properties?.station_m));
  expect(stations).toEqual([...stations].sort((a, b) => a - b));
});

test("ids are unique within each collection and the same in a second plan", () => {
  const again = createPlanner().plan(project);
  for (const kind of ["rows", "vines", "posts", "stakes"] as const) {
    const ids = collectionOf(plan, [kind]).features.map((feature) => feature.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(collectionOf(again, [kind]).features.map((feature) => feature.id)).toEqual(ids);
  }
});

test("a project of several blocks names the block and the row's number apart", () => {
  const half = (block: string, x: number) => ({
    key: block,
    block,
    polygons: createParcel([rectangle(30, 120, [x, 0])]).polygons,
  });
  const twins = createProject({
    blocks: [createBlock({}, { id: "west" }), createBlock({}, { id: "east" })],
    blockAreas: [half("west", 0), half("east", 30)],
  });
  const [feature] = collectionOf(createPlanner().plan(twins), ["rows"]).features.filter(
    (each) => each.properties?.block === "east",
  );
  expect(feature?.properties?.row).toBe("1");
  expect(feature?.id).toBe("row-east-1");
});

test("a plan without rows gives an empty collection, and says why it is empty", () => {
  const nothing = createPlanner().plan(createProject({ parcels: [] }));
  const handed = handedOver(nothing, { of: ["rows"] });
  expect(textsOf(handed)["rows.geojson"]).toBe('{"type":"FeatureCollection","features":[]}\n');
  expect(handed.findings.map(({ code }) => code)).toEqual(["exchange/nothing-of-kind"]);
});

test("a row over the antimeridian is cut there into two lines that meet", () => {
  const frame = createFrame(lonLat(180, -17));
  const ring = rectangle(120, 60, [-60, -30]).map(([x, y]) => frame.toLonLat(planePoint(x, y)));
  const unwrapped = ring.map(([lon, lat]) => lonLat(lon < 0 ? lon + 360 : lon, lat));
  const parcel = { ...createParcel([rectangle(1, 1)]), polygons: [[unwrapped]] };
  const across = createProject({
    frameOrigin: lonLat(180, -17),
    parcels: [parcel],
    blocks: [createBlock({ bearing: { kind: "given", bearing_deg: 90 } })],
  });
  const { features } = collectionOf(createPlanner().plan(across), ["rows"]);
  expect(features.length).toBeGreaterThan(5);
  for (const { geometry } of features) {
    if (geometry.type !== "MultiLineString") throw new Error("not cut");
    const [before, after] = geometry.coordinates;
    expect(Math.abs(before?.[1]?.[0] ?? 0)).toBe(180);
    expect(after?.[0]?.[0]).toBe(-(before?.[1]?.[0] ?? 0));
    expect(after?.[0]?.[1]).toBe(before?.[1]?.[1]);
    for (const [lon = 0] of geometry.coordinates.flat()) expect(Math.abs(lon)).toBeLessThanOrEqual(180);
    expect(Math.abs((before?.[0]?.[0] ?? 0) - (before?.[1]?.[0] ?? 0))).toBeLessThan(1);
  }
});
