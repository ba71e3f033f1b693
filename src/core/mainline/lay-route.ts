import { graphOf } from "../graph/graph.ts";
import { addBridges } from "./bridges.ts";
import { type ChosenEnds, chooseEnds } from "./choose-ends.ts";
import { grownRoute } from "./grow-route.ts";
import type { RowEnd } from "./heads.ts";
import type { Route } from "./route.ts";
import { type RouteGraph, routeGraph } from "./route-graph.ts";
import type { RouteJob, RouteRows } from "./route-job.ts";
import { type RowGroup, rowGroups, singleRows } from "./row-groups.ts";
import type { WaterEnd } from "./water-end.ts";

/** What a row without water counts, metres: more than any trench. */
const unreached_m = 1e6;

/** So few rows may each take an end of their own. */
const mostSingle = 12;
/** Trees that cost so much more than the least are not finished: pulling straight does not make up for it. */
const worthFinishing = 1.15;

/**
 * The route of a job: a ladder of row heads and alleys with the corners of what is in the way, the end of each group of rows and the tree
 * to them chosen together, and pulled straight. Every source is tried, and one end for all rows besides the ends chosen group by
 * group: the route that is shortest when it is finished is taken, crossings counted as trench. null when there is no source to begin at.
 * Nothing is random: the same job gives the same route.
 */
export function layRoute(job: RouteJob): Route | null {
  if (job.sources.length === 0 || job.rows.line.length === 0) return null;
  const graph = routeGraph(job);
  const within = leastRoute(job, graph);
  if (within.unreached.length === 0) return within;
  const missed = rowGroups(job.rows.pin, graph).filter(({ rows }) =>
    rows.some((row) => within.unreached.includes(row)),
  );
  return addBridges(graph, job, missed) ? leastRoute(job, graph) : within;
}

function leastRoute(job: RouteJob, graph: RouteGraph): Route {
  const packed = graphOf(graph.draft.xy.length / 2, graph.draft.links);
  const { pin } = job.rows;
  const runs = [pin, ...([1, 2] as const).map((end) => oneEnd(pin, graph, end))].map((pins) => rowGroups(pins, graph));
  const wishes = pin.length <= mostSingle ? [...runs, singleRows(runs[0] ?? [])] : runs;
  const options = graph.sources.flatMap((node, source) =>
    wishes.map((groups) => ({ source, groups, chosen: chooseEnds(graph, packed, groups, node) })),
  );
  const least = Math.min(...options.map(({ chosen }) => chosen.cost));
  const routes = options
    .filter(({ chosen }) => chosen.cost <= worthFinishing * least)
    .map(({ source, groups, chosen }) => finishedRoute(job, graph, groups, chosen, source));
  const costs = ({ length_m, crossings, unreached }: Route): number =>
    length_m + crossings * job.crossingAs_m + unreached.length * unreached_m;
  return routes.reduce((best, route) => (costs(route) < costs(best) - 1e-9 ? route : best));
}

/** The pins with every row that is not pinned pinned to one end, if a trench can be there. */
function oneEnd(pin: RouteRows["pin"], { heads }: RouteGraph, end: 1 | 2): RouteRows["pin"] {
  return pin.map((pinned, row) => (pinned === 0 && Number(heads[2 * row + end - 1]) >= 0 ? end : pinned));
}

function finishedRoute(
  job: RouteJob,
  graph: RouteGraph,
  groups: readonly RowGroup[],
  chosen: ChosenEnds,
  source: number,
): Route {
  const tees = new Map<number, RowEnd>();
  const ends = new Map<number, WaterEnd>();
  groups.forEach(({ rows }, g) => {
    const side = chosen.ends[g];
    if (side === null || side === undefined) return;
    for (const row of rows) {
      const end = graph.ends[2 * row + side];
      if (end !== undefined) tees.set(Number(graph.heads[2 * row + side]), end);
      ends.set(row, side === 0 ? "start" : "end");
    }
  });
  const rows = Array.from(job.rows.line.keys());
  return {
    source,
    ...grownRoute(graph, source, chosen.links(), tees),
    waterEnd: rows.map((row) => ends.get(row) ?? nearerEnd(job, row, source)),
    unreached: rows.filter((row) => !ends.has(row)),
  };
}

function nearerEnd({ rows, sources }: RouteJob, row: number, source: number): WaterEnd {
  const [x = 0, y = 0] = sources[source]?.xy ?? [];
  const [sx = 0, sy = 0, ex = 0, ey = 0] = rows.posts.subarray(4 * row, 4 * row + 4);
  return Math.hypot(ex - x, ey - y) < Math.hypot(sx - x, sy - y) ? "end" : "start";
}
