import type { RouteJob } from "../../src/core/mainline/route-job.ts";
import type { KeepOut } from "../../src/core/project/project.ts";
import { at, createBlock, createKeepOut, createParcel, createProject } from "./create-project.ts";
import { routeJobOf } from "./create-route-job.ts";
import type { Point } from "./parcels.ts";
import { between, createRandom, type Random, wholeBetween } from "./random.ts";
import { isFree, isInside, routeWorld } from "./route-world.ts";

/** What a random job is like. */
export interface JobWish {
  readonly rowSpacing_m: readonly [least: number, most: number];
  /** Corners are so far from the middle. */
  readonly radius_m: readonly [least: number, most: number];
  readonly things: readonly [fewest: number, most: number];
  readonly sources?: number;
}

/** Rows as they are planted, on 0.5 to 3 ha. */
export const vineyardJobs: JobWish = { rowSpacing_m: [2, 4], radius_m: [50, 120], things: [0, 4] };
/** Rows as they are planted, on a quarter of a hectare or so: quick to work out exactly. */
export const gardenJobs: JobWish = { rowSpacing_m: [2, 4], radius_m: [28, 55], things: [0, 3] };
/** So few rows that an exact tree can be worked out. */
export const sparseJobs: JobWish = { rowSpacing_m: [18, 30], radius_m: [45, 110], things: [0, 3] };

/**
 * An irregular parcel that never crosses itself, with rows, trees, fences and ponds that the trench must keep from, and a source near
 * its outline. Seeded; null where the seed gives no row or no room for a source.
 */
export function randomRouteJob(seed: number, wish: JobWish): RouteJob | null {
  const random = createRandom(seed);
  const within = ([least, most]: readonly [number, number]) => between(random, least, most);
  const outline = Array.from({ length: wholeBetween(random, 5, 12) }, () => within(wish.radius_m)).map(
    (radius_m, i, all): Point => {
      const angle = (2 * Math.PI * i) / all.length;
      return [radius_m * Math.cos(angle), radius_m * Math.sin(angle)];
    },
  );
  const keepOuts = Array.from({ length: wholeBetween(random, ...wish.things) }, (_, i) =>
    randomThing(random, `thing-${i}`, wish.radius_m[0]),
  );
  const project = createProject({
    parcels: [createParcel([outline], { setback_m: between(random, 2.5, 5) })],
    keepOuts,
    blocks: [
      createBlock({
        bearing: { kind: "given", bearing_deg: between(random, 0, 180) },
        rowSpacing_m: within(wish.rowSpacing_m),
        headland_m: between(random, 5, 11),
      }),
    ],
    sources: [{ key: "anywhere", name: null, at: at([0, 0]) }],
  });
  const world = jobWorld(project);
  if (world === null) return null;
  const sources: Point[] = [];
  for (let tries = 0; tries < 200 && sources.length < (wish.sources ?? 1); tries++) {
    const place = nearEdge(random, outline);
    if (isInside(outline, place) && isFree(world, place)) sources.push(place);
  }
  if (sources.length < (wish.sources ?? 1)) return null;
  return routeJobOf({
    ...project,
    sources: sources.map((place, i) => ({ key: `source-${i}`, name: null, at: at(place) })),
  });
}

/** So many jobs with so many rows, in the order of their seeds. */
export function randomRouteJobs(
  count: number,
  wish: JobWish,
  [fewest, most]: readonly [number, number],
): readonly { readonly seed: number; readonly job: RouteJob }[] {
  const jobs: { seed: number; job: RouteJob }[] = [];
  for (let seed = 1; jobs.length < count; seed++) {
    const job = randomRouteJob(seed, wish);
    if (job !== null && job.rows.block.length >= fewest && job.rows.block.length <= most) jobs.push({ seed, job });
  }
  return jobs;
}

function jobWorld(project: Parameters<typeof routeJobOf>[0]) {
  try {
    return routeWorld(routeJobOf(project));
  } catch {
    return null;
  }
}

function randomThing(random: Random, key: string, reach_m: number): KeepOut {
  const place = (): Point => [between(random, -reach_m, reach_m), between(random, -reach_m, reach_m)];
  const [x, y] = place();
  const distance_m = between(random, 3, 6);
  const change: Partial<KeepOut> = { key, distance_m, trenchDistance_m: between(random, 0.5, 2) };
  const kind = random();
  if (kind < 0.5) return createKeepOut({ points: [[x, y]] }, change);
  if (kind < 0.8) {
    const length_m = between(random, 10, 40);
    const angle = between(random, 0, 2 * Math.PI);
    const to: Point = [x + length_m * Math.cos(angle), y + length_m * Math.sin(angle)];
    return createKeepOut({ lines: [[[x, y], to]] }, change);
  }
  const [wide, deep] = [between(random, 3, 15), between(random, 3, 15)];
  return createKeepOut(
    {
      areas: [
        [
          [
            [x, y],
            [x + wide, y],
            [x + wide, y + deep],
            [x, y + deep],
          ],
        ],
      ],
    },
    change,
  );
}

/** A place 1 to 8 m inside an edge of the outline. */
function nearEdge(random: Random, outline: readonly Point[]): Point {
  const edge = wholeBetween(random, 0, outline.length - 1);
  const [[x1, y1], [x2, y2]] = [outline[edge] ?? [0, 0], outline[(edge + 1) % outline.length] ?? [0, 0]];
  const [share, in_m] = [random(), between(random, 1, 8)];
  const length_m = Math.hypot(x2 - x1, y2 - y1);
  return [
    x1 + share * (x2 - x1) - (in_m * (y2 - y1)) / length_m,
    y1 + share * (y2 - y1) + (in_m * (x2 - x1)) / length_m,
  ];
}
