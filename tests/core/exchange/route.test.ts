import type { Position } from "geojson";
import { isFeatureCollection } from "geojson-validation";
import { expect, test } from "vitest";
import { emptyPlanJson, planJson } from "../../../src/core/exchange/plan-json.ts";
import { mainlineJson, trenchJson } from "../../../src/core/exchange/trench-json.ts";
import type { Plan } from "../../../src/core/plan.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { createProject, testFrame } from "../../support/create-project.ts";
import { createTrenchPlan, type GroundOf, withPoints } from "../../support/create-trench-plan.ts";
import { cellsOf, collectionOf } from "../../support/handed-over.ts";

/** 8 decimals of a degree, half of the last one, in metres along a meridian. */
const roundTrip_m = 0.002;
/** Numbers leave in whole millimetres. */
const millimetre_m = 0.0005000001;

const wave: GroundOf = (station_m) => 100 + 1.2 * Math.sin(station_m / 8);
const plan = withPoints(createTrenchPlan(wave), {
  lows: [{ station_m: 12 * Math.PI, by_m: 1.1, isFitted: true }],
  highs: [{ station_m: 4 * Math.PI, by_m: 1.2, isFitted: false }],
});
const dry = createPlanner().plan(createProject());

function toPlane([lon = 0, lat = 0]: Position | readonly number[]): readonly [number, number] {
  return testFrame.toPlane(lonLat(lon, lat));
}

function length_m(places: readonly Position[]): number {
  return places.slice(1).reduce((sum_m, to, i) => {
    const [from, here] = [toPlane(places[i] ?? to), toPlane(to)];
    return sum_m + Math.hypot(here[0] - from[0], here[1] - from[1]);
  }, 0);
}

const mainLine = ["route", "pipes", "fittings"] as const;

test("every branch is a line that comes back within 2 mm a corner, and as long as it says", () => {
  const { route, trench } = { ...plan.mainline, ...plan };
  if (!route || !trench) throw new Error("the plan has no route");
  const branches = collectionOf(plan, mainLine).features.filter(({ properties }) => properties?.role === "main-line");
  expect(branches.map(({ id }) => id)).toEqual(["main-line-main", "main-line-a"]);
  branches.forEach(({ geometry, properties }, b) => {
    if (geometry.type !== "LineString") throw new Error("not a line");
    const points = trench.branches[b]?.points ?? [];
    expect(geometry.coordinates).toHaveLength(points.length);
    geometry.coordinates.forEach((at, i) => {
      const [x, y] = toPlane(at);
      const point = points[i] ?? -1;
      expect(Math.hypot(x - (route.xy[2 * point] ?? 0), y - (route.xy[2 * point + 1] ?? 0))).toBeLessThan(roundTrip_m);
    });
    expect(Math.abs(length_m(geometry.coordinates) - Number(properties?.length_m))).toBeLessThan(
      roundTrip_m * points.length,
    );
  });
  expect(branches.map(({ properties }) => properties?.groundLength_m === null)).toEqual([false, true]);
});

test("every row's tee is a point on its line; low and high points say what is fitted there", () => {
  const { features } = collectionOf(plan, mainLine);
  const ofRole = (role: string) => features.filter(({ properties }) => properties?.role === role);
  const tees = ofRole("row-tee");
  expect(tees.map(({ properties }) => properties?.row)).toEqual(plan.rows?.rows.map(({ id }) => id));
  tees.forEach(({ geometry, properties }, row) => {
    if (geometry.type !== "Point") throw new Error("not a point");
    const [x, y] = toPlane(geometry.coordinates);
    expect(Math.abs(x - Number(plan.rows?.rows[row]?.start[0]))).toBeLessThan(roundTrip_m);
    expect(Math.abs(y - 6)).toBeLessThan(roundTrip_m);
    expect(Math.abs(Number(properties?.station_m) - (x + 8))).toBeLessThan(roundTrip_m);
    expect(properties).toMatchObject({ branch: "main", waterEnd: "start", depth_m: 0.5 });
  });
  expect(ofRole("low-point")[0]?.properties).toMatchObject({ drainValve: true, by_m: 1.1 });
  expect(ofRole("high-point")[0]?.properties).toMatchObject({ airValve: null, by_m: 1.2 });
  expect(ofRole("crossing")[0]?.properties).toMatchObject({ crosses: "lane", thing: "Farm lane", length_m: 4 });
  expect(ofRole("branch-tee")[0]?.properties).toMatchObject({ branch: "main", toBranch: "a" });
});

test.each([
  ["main line", mainLine],
  ["stations", ["stations"] as const],
] as const)("the %s is valid GeoJSON with ids of its own and units on its numbers", (_, of) => {
  const collection = collectionOf(plan, of);
  expect(isFeatureCollection(collection, true)).toEqual([]);
  const ids = collection.features.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  const measured = collection.features.flatMap(({ properties }) =>
    Object.entries(properties ?? {}).flatMap(([name, value]) =>
      typeof value === "number" && name !== "number" ? [name] : [],
    ),
  );
  expect(measured.length).toBeGreaterThan(10);
  expect(measured.filter((name) => !/_(m|l|deg)$/.test(name))).toEqual([]);
});

test("a station of the table is where the line is that far from its start, with the ground that is there", () => {
  const [head = [], ...cells] = cellsOf(plan, "stations");
  const column = (name: string) => head.indexOf(name);
  const main = cells.filter((cell) => cell[column("branch")] === "main");
  expect(main.length).toBeGreaterThan(30);
  for (const cell of main) {
    const station_m = Number(cell[column("station_m")]);
    const [x, y] = toPlane([Number(cell[column("longitude")]), Number(cell[column("latitude")])]);
    expect(Math.hypot(x - (station_m - 8), y - 6)).toBeLessThan(roundTrip_m);
    const [ground_m, bottom_m] = [Number(cell[column("ground_m")]), Number(cell[column("bottom_m")])];
    expect(Math.abs(ground_m - bottom_m - 0.5)).toBeLessThan(2 * millimetre_m);
    expect(Number(cell[column("depth_m")])).toBe(0.5);
    // The fixture's profile has a place every metre, between them it is straight.
    if (Number.isInteger(station_m)) expect(Math.abs(ground_m - wave(station_m))).toBeLessThan(millimetre_m);
  }
  const slopes = main.map((cell) => Number(cell[column("slopeStation_m")]));
  expect(slopes.at(-1)).toBeGreaterThan(Number(main.at(-1)?.[column("station_m")]));
  const tees = main.flatMap((cell) => (cell[column("row")] === "" ? [] : [cell[column("row")]]));
  expect(tees).toEqual(plan.rows?.rows.map(({ id }) => id));
  expect(main.map((cell) => cell[column("note")]).join("\n")).toContain("tee of row 3; branch a leaves");
});

test("where the ground is not known the table has no heights but the depth all the same", () => {
  const [head = [], ...cells] = cellsOf(plan, "stations");
  const branch = cells.filter((cell) => cell[head.indexOf("branch")] === "a");
  expect(branch.map((cell) => cell[head.indexOf("station_m")])).toEqual(["0", "5", "10", "15", "20"]);
  for (const cell of branch) {
    expect([cell[head.indexOf("ground_m")], cell[head.indexOf("bottom_m")]]).toEqual(["", ""]);
    expect(cell[head.indexOf("depth_m")]).toBe("0.5");
  }
});

test("the plan JSON tells the main line as positions and the trench as stations, with numbers that agree", () => {
  const { mainline, trench, rows } = planJson(plan);
  expect(mainline.source).toBe("well");
  expect(mainline.route.map(({ branch }) => branch)).toEqual(["main", "a"]);
  const sum_m = mainline.route.reduce((all_m, each) => all_m + each.length_m, 0);
  expect(sum_m).toBeCloseTo(mainline.length_m, 9);
  for (const { positions, length_m: own_m } of mainline.route)
    expect(Math.abs(length_m(positions.map((at) => [...at])) - own_m)).toBeLessThan(0.001 * positions.length);
  expect(mainline.tees.map(({ row }) => row)).toEqual(rows.map(({ id }) => id));
  expect(mainline.crossings).toEqual([{ feature: "lane", name: "Farm lane", branch: "main", from_m: 2, to_m: 6 }]);
  const [main] = trench.branches;
  for (const { ground_m, bottom_m, depth_m } of main?.stations ?? [])
    expect(Number(ground_m) - Number(bottom_m)).toBeCloseTo(depth_m, 9);
  expect(trench.lows).toMatchObject([{ branch: "main", by_m: 1.1, fitted: true }]);
  expect(JSON.parse(JSON.stringify({ mainline, trench }))).toEqual({ mainline, trench });
});

test("rows meet the water where the route does", () => {
  const route = plan.mainline?.route;
  expect(planJson(plan).rows.map(({ waterEnd }) => waterEnd)).toEqual(route?.waterEnd);
});

test("a row that no trench gets to is named", () => {
  const { mainline } = plan;
  if (!mainline?.route) throw new Error("the plan has no route");
  const lost: Plan = { ...plan, mainline: { ...mainline, route: { ...mainline.route, unreached: [4] } } };
  expect(mainlineJson(lost).unreached).toEqual([plan.rows?.rows[4]?.id]);
});

test("without a source there is no line, no station and no earth, and all members are there", () => {
  expect(collectionOf(dry, mainLine).features).toEqual([]);
  expect(cellsOf(dry, "stations")).toHaveLength(1);
  const empty = emptyPlanJson([]);
  expect([mainlineJson(dry), trenchJson(dry, "metric")]).toEqual([empty.mainline, empty.trench]);
  expect(planJson(dry).trench.earth).toBeNull();
});
