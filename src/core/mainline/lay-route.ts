import { addBridges } from "./bridges.ts";
import { chooseEnds } from "./choose-ends.ts";
import { grownRoute } from "./grow-route.ts";
import type { RowEnd } from "./heads.ts";
import type { Route } from "./route.ts";
import { routeGraph } from "./route-graph.ts";
import type { RouteJob } from "./route-job.ts";
import { rowGroups } from "./row-groups.ts";
import type { WaterEnd } from "./water-end.ts";

/**
 * The route of a job: a ladder of row heads and alleys with the corners of what is in the way, the end of each group of rows and the tree
 * to them chosen together at the least cost found, and pulled straight. null when there is no source to begin at. Nothing is random:
 * the same job gives the same route.
 */
export function layRoute(job: RouteJob): Route | null {
  if (job.sources.length === 0 || job.rows.line.length === 0) return null;
  const graph = routeGraph(job);
  const groups = rowGroups(job.rows, graph);
  const within = chooseEnds(graph, groups);
  const missed = groups.filter((_, g) => within.ends[g] === null);
  const chosen = missed.length > 0 && addBridges(graph, job, missed) ? chooseEnds(graph, groups) : within;
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
    source: chosen.source,
    ...grownRoute(graph, chosen.source, chosen.links, tees),
    waterEnd: rows.map((row) => ends.get(row) ?? nearerEnd(job, row, chosen.source)),
    unreached: rows.filter((row) => !ends.has(row)),
  };
}

function nearerEnd({ rows, sources }: RouteJob, row: number, source: number): WaterEnd {
  const [x = 0, y = 0] = sources[source]?.xy ?? [];
  const [sx = 0, sy = 0, ex = 0, ey = 0] = rows.posts.subarray(4 * row, 4 * row + 4);
  return Math.hypot(ex - x, ey - y) < Math.hypot(sx - x, sy - y) ? "end" : "start";
}
