import { createLeanPlanner } from "../../src/core/lean-planner.ts";
import type { BarrierFeature, RouteJob } from "../../src/core/mainline/route-job.ts";
import { routeJob } from "../../src/core/mainline/route-job.ts";
import { planePoint } from "../../src/core/plane/coordinate.ts";
import type { Project } from "../../src/core/project/project.ts";
import { type Point, toRingSet } from "./parcels.ts";

interface RowSketch {
  readonly start: Point;
  readonly end: Point;
  readonly block?: number;
  readonly line?: number;
  readonly pin?: 0 | 1 | 2;
}

interface ThingSketch {
  readonly points?: readonly Point[];
  readonly lines?: readonly (readonly Point[])[];
  readonly areas?: readonly (readonly Point[])[];
  readonly distance_m?: number;
  readonly isCrossable?: boolean;
}

interface JobSketch {
  readonly rows: readonly RowSketch[];
  readonly sources: readonly Point[];
  readonly outline?: readonly Point[];
  readonly boundaryDistance_m?: number;
  readonly things?: readonly ThingSketch[];
  readonly drawn?: readonly (readonly Point[])[];
  readonly lane_m?: number;
  readonly reach_m?: number;
  readonly spacing_m?: number;
  readonly postDistance_m?: number;
  readonly crossingAs_m?: number;
}

/** Ground without end. */
const wideOpen: readonly Point[] = [
  [-2000, -2000],
  [2000, -2000],
  [2000, 2000],
  [-2000, 2000],
];

/**
 * A job in plane metres. Usual: wide open ground, one block, lines numbered as the rows come, 2.5 m apart, the trench 2 m past the end posts and 1 m past
 * anchors that stand 1 m out, 1 m from the outline, 2 m from things, which are never crossed.
 */
export function createRouteJob(sketch: JobSketch): RouteJob {
  const { rows, things = [], outline = wideOpen, drawn = [] } = sketch;
  const many = (value: number) => new Float64Array(rows.length).fill(value);
  const pieces: (readonly [from: Point, to: Point, distance_m: number, feature: number])[] = [];
  for (const [from, to] of edges(outline)) pieces.push([from, to, sketch.boundaryDistance_m ?? 1, -1]);
  things.forEach(({ points = [], lines = [], areas = [], distance_m = 2 }, feature) => {
    for (const point of points) pieces.push([point, point, distance_m, feature]);
    for (const line of lines) {
      for (const [from, to] of edges(line).slice(0, -1)) pieces.push([from, to, distance_m, feature]);
    }
    for (const area of areas) for (const [from, to] of edges(area)) pieces.push([from, to, distance_m, feature]);
  });
  return {
    rows: {
      posts: Float64Array.from(rows.flatMap(({ start, end }) => [...start, ...end])),
      block: Int32Array.from(rows, ({ block = 0 }) => block),
      line: Int32Array.from(rows, ({ line }, i) => line ?? i + 1),
      spacing_m: many(sketch.spacing_m ?? 2.5),
      lane_m: many(sketch.lane_m ?? 2),
      reach_m: many(sketch.reach_m ?? 1),
      pin: Uint8Array.from(rows, ({ pin = 0 }) => pin),
    },
    barriers: {
      xy: Float64Array.from(pieces.flatMap(([from, to]) => [...from, ...to])),
      distance_m: Float64Array.from(pieces, ([, , distance_m]) => distance_m),
      feature: Int32Array.from(pieces, ([, , , feature]) => feature),
      outline: Int32Array.from(pieces, ([, , , feature]) => (feature === -1 ? 0 : -1)),
      features: things.map(
        ({ isCrossable = false, areas = [] }, i): BarrierFeature => ({
          key: `thing-${i}`,
          name: null,
          isCrossable,
          areas: areas.map((ring) => toRingSet([ring])),
        }),
      ),
    },
    sources: sketch.sources.map(([x, y], i) => ({ feature: `source-${i}`, name: null, xy: planePoint(x, y) })),
    drawn: drawn.map((line) => Float64Array.from(line.flat())),
    postDistance_m: sketch.postDistance_m ?? 1,
    crossingAs_m: sketch.crossingAs_m ?? 15,
  };
}

/** So many rows due north from y = 0, 2.5 m apart, the first on x = 0. */
export function northRows(count: number, length_m: number, spacing_m = 2.5): readonly RowSketch[] {
  return Array.from({ length: count }, (_, i) => ({ start: [i * spacing_m, 0], end: [i * spacing_m, length_m] }));
}

/** The job that a project's plan asks for; fails the test when there is none. */
export function routeJobOf(project: Project): RouteJob {
  const { rows, ground } = createLeanPlanner().plan(project);
  const job = rows === null || ground === null ? null : routeJob(rows, ground, project);
  if (job === null) throw new Error("the project has no rows or no source");
  return job;
}

/** Each point with the one after it, the last with the first. */
function edges(points: readonly Point[]): readonly (readonly [Point, Point])[] {
  return points.map((from, i) => [from, points[(i + 1) % points.length] ?? from]);
}
