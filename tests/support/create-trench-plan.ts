import type { PipeLine } from "../../src/core/drip/watering.ts";
import { createLeanPlanner } from "../../src/core/lean-planner.ts";
import { createMainWorks } from "../../src/core/main-works.ts";
import type { Route } from "../../src/core/mainline/route.ts";
import { routeJob } from "../../src/core/mainline/route-job.ts";
import { cutCoils } from "../../src/core/materials/cutting/cut-coils.ts";
import { materials } from "../../src/core/materials/materials.ts";
import type { Plan } from "../../src/core/plan.ts";
import { plantingArea } from "../../src/core/plane/overlay.ts";
import { createPlanner } from "../../src/core/planner.ts";
import type { Project } from "../../src/core/project/project.ts";
import type { Profile, ProfilePoint } from "../../src/core/trench/trench.ts";
import { at, createKeepOut, createProject } from "./create-project.ts";

/** Height of the ground at a station of the first branch; NaN where it is not known. */
export type GroundOf = (station_m: number) => number;

/** Over the bottom, and down to it, m. */
const lift_m = 0.03;
const depth_m = 0.5;

/**
 * A plan whose main line is made by hand: from a source at (-8, 6) east along y = 6 past the foot of every row, with a tee at each of them, over
 * a lane between -6 and -2 that it crosses, and a branch "a" of 20 m to the south that leaves where row 3 has its tee. Its trench is the
 * planner's but for the profiles, which are 0.5 m deep under the ground that is given; the branch lies under ground that is not known.
 * Points of the route: 0 the source, 1 and 2 the lane, 3 and on the rows' tees, the last the end of the branch. `pipes`: laid in it.
 */
export function createTrenchPlan(
  groundOf: GroundOf,
  change: Partial<Project> = {},
  pipes: readonly PipeLine[] = [],
): Plan {
  const lane = createKeepOut(
    {
      areas: [
        [
          [
            [-6, -40],
            [-2, -40],
            [-2, 160],
            [-6, 160],
          ],
        ],
      ],
    },
    { key: "lane", name: "Farm lane", role: "no-plant", crossing: "square" },
  );
  const project = createProject({
    sources: [{ key: "well", name: "Well", at: at([-8, 6]) }],
    keepOuts: [lane],
    spotHeights: [
      { key: "height", name: null, at: at([-500, -500]), height_m: 100 },
      { key: "height", name: null, at: at([500, -500]), height_m: 100 },
      { key: "height", name: null, at: at([0, 900]), height_m: 100 },
    ],
    ...change,
  });
  const plan = createPlanner().plan(project);
  const { rows, ground, mainline } = plan;
  if (rows === null || ground === null || mainline === null) throw new Error("the plan has no rows");
  const job = routeJob(rows, ground, project);
  if (job === null) throw new Error("the plan has no route to lay");
  const feet = rows.rows.map(({ start, end }) => (start[1] < end[1] ? start[0] : end[0]));
  const order = feet.map((x, row) => ({ x, row })).sort((a, b) => a.x - b.x);
  const third = order[2];
  if (third === undefined) throw new Error("the plan has no third row");
  const points = [
    { x: -8, y: 6, upstream: -1, row: -1, crossing: -1 },
    { x: -6, y: 6, upstream: 0, row: -1, crossing: -1 },
    { x: -2, y: 6, upstream: 1, row: -1, crossing: 0 },
    ...order.map(({ x, row }, i) => ({ x, y: 6, upstream: i + 2, row, crossing: -1 })),
    { x: third.x, y: -14, upstream: 5, row: -1, crossing: -1 },
  ];
  const route: Route = {
    source: 0,
    xy: Float64Array.from(points.flatMap(({ x, y }) => [x, y])),
    upstream: Int32Array.from(points, ({ upstream }) => upstream),
    row: Int32Array.from(points, ({ row }) => row),
    crossing: Int32Array.from(points, ({ crossing }) => crossing),
    isDrawn: new Uint8Array(points.length),
    waterEnd: rows.rows.map(({ start, end }) => (start[1] < end[1] ? "start" : "end")),
    unreached: [],
    length_m: (order.at(-1)?.x ?? 0) + 8 + 20,
    crossings: 1,
  };
  const main = points.slice(0, -1);
  const works = createMainWorks(() => route);
  const planned = createLeanPlanner({
    plantingAreaOf: plantingArea,
    cutOf: cutCoils,
    materialsOf: materials,
    mainWorks: {
      ...works,
      trench: (mainLine, laid, under, trellis, _, input) => works.trench(mainLine, laid, under, trellis, pipes, input),
    },
  }).plan(project);
  if (planned.trench === null) throw new Error("the plan has no trench");
  return {
    ...planned,
    trench: {
      ...planned.trench,
      branches: [
        { name: "main", points: main.map((_, i) => i) },
        { name: "a", points: [5, points.length - 1] },
      ],
      profiles: [
        createProfile(
          main.map(({ x, row }) => ({ station_m: x + 8, x, y: 6, row })),
          groundOf,
        ),
        createProfile(
          [
            { station_m: 0, x: third.x, y: 6, row: -1 },
            { station_m: 20, x: third.x, y: -14, row: -1 },
          ],
          () => Number.NaN,
        ),
      ],
      lows: [],
      highs: [],
    },
  };
}

/** A profile of constant depth with a place every metre and at the places given. */
export function createProfile(
  places: readonly {
    readonly station_m: number;
    readonly x: number;
    readonly y: number;
    readonly row: number;
  }[],
  groundOf: GroundOf,
): Profile {
  const length_m = places.at(-1)?.station_m ?? 0;
  const even = Array.from({ length: Math.ceil(length_m) }, (_, i) => i);
  const stations = [...new Set([...even, ...places.map(({ station_m }) => station_m)])].sort((a, b) => a - b);
  const between = (station_m: number, axis: "x" | "y"): number => {
    const after = places.findIndex((place) => place.station_m >= station_m);
    const [from, to] = [places[Math.max(0, after - 1)], places[after]];
    if (from === undefined || to === undefined) return 0;
    const span_m = to.station_m - from.station_m;
    return from[axis] + (span_m === 0 ? 0 : (station_m - from.station_m) / span_m) * (to[axis] - from[axis]);
  };
  const ground = stations.map(groundOf);
  let slope_m = 0;
  return {
    station_m: Float64Array.from(stations),
    slopeStation_m: Float64Array.from(stations, (station_m, i) => {
      const before = i === 0 ? station_m : (stations[i - 1] ?? 0);
      const rise_m = i === 0 ? 0 : (ground[i] ?? 0) - (ground[i - 1] ?? 0);
      slope_m += Math.hypot(station_m - before, Number.isFinite(rise_m) ? rise_m : 0);
      return slope_m;
    }),
    xy: Float64Array.from(stations.flatMap((station_m) => [between(station_m, "x"), between(station_m, "y")])),
    ground_m: Float64Array.from(ground),
    pipe_m: Float64Array.from(ground, (each) => each - depth_m + lift_m),
    bottom_m: Float64Array.from(ground, (each) => each - depth_m),
    depth_m: Float64Array.from(stations, () => depth_m),
    row: Int32Array.from(stations, (station_m) => places.find((place) => place.station_m === station_m)?.row ?? -1),
    point: Int32Array.from(stations, (station_m) => places.findIndex((place) => place.station_m === station_m)),
  };
}

/** The same plan with low or high points on its first branch. */
export function withPoints(
  plan: Plan,
  points: Partial<Record<"lows" | "highs", readonly Pick<ProfilePoint, "station_m" | "by_m" | "isFitted">[]>>,
): Plan {
  if (plan.trench === null) throw new Error("the plan has no trench");
  const full = (each: Pick<ProfilePoint, "station_m" | "by_m" | "isFitted">): ProfilePoint => ({
    ...each,
    branch: 0,
    xy: [each.station_m - 8, 6],
    height_m: 0,
    trapped_l: 4,
    full: [],
    fitted: each.isFitted ? 1 : 0,
    pond_m: each.by_m,
  });
  return {
    ...plan,
    trench: {
      ...plan.trench,
      lows: (points.lows ?? []).map(full),
      highs: (points.highs ?? []).map(full),
    },
  };
}
