import { graphOf } from "../../../src/core/graph/graph.ts";
import { createPathSearch } from "../../../src/core/graph/shortest-paths.ts";
import { grownRoute } from "../../../src/core/mainline/grow-route.ts";
import { layRoute } from "../../../src/core/mainline/lay-route.ts";
import { routeGraph } from "../../../src/core/mainline/route-graph.ts";
import type { RouteJob } from "../../../src/core/mainline/route-job.ts";
import { exactTreeCost, leastCosts } from "../../support/exact-tree.ts";
import type { Point } from "../../support/parcels.ts";
import { besideRow_m, fromPiece_m, pastPost, routeWorld } from "../../support/route-world.ts";
import { visibilityGraph } from "../../support/visibility-graph.ts";

/** Lengths of ways to the same places. */
export interface Compared {
  readonly ours_m: number;
  readonly least_m: number;
}

/** Ways from the first source to so many row ends, each by itself; ends that neither way gets to are left out. */
export function pathsCompared(job: RouteJob, every: number, keepsRows: boolean): readonly Compared[] {
  const graph = routeGraph(job);
  const { draft, heads } = graph;
  const source = Number(graph.sources[0]);
  const search = createPathSearch(graphOf(draft.xy.length / 2, draft.links));
  search.begin(source);
  search.next(() => false);
  const places = [...heads].filter((head, i) => head >= 0 && i % every === 0);
  const at = (node: number): Point => draft.placeOf(node);
  const seen = visibilityGraph(routeWorld(job, { keepsRows }), [source, ...places].map(at), { isTaut: true });
  const least = leastCosts(seen.graph, 0);
  return places.map((head, i) => {
    const isReached = Number.isFinite(Number(search.cost[head]));
    const { length_m } = grownRoute(graph, 0, search.linksTo(head), new Map());
    return { ours_m: isReached ? length_m : Infinity, least_m: least[i + 1] ?? Infinity };
  });
}

/** The route's tree to all rows against the cheapest: to one end of every row, whichever is best, and to the ends that the route takes. */
export interface TreeCompared extends Compared {
  readonly atOurEnds_m: number;
}

/**
 * Few rows only. An end whose tee lies within half the distance of another row, as between two anchors that nearly touch, is none: there
 * the product digs no trench.
 */
export function treeCompared(job: RouteJob, keepsRows: boolean): TreeCompared {
  const source = job.sources[0]?.xy ?? [Number.NaN, Number.NaN];
  const { graph, tee } = visibilityGraph(routeWorld(job, { keepsRows }), [[source[0], source[1]]]);
  const rows = [...job.rows.block.keys()];
  const isRoom = (row: number, end: 0 | 1): boolean => {
    const at = pastPost(job, row, end, job.rows.lane_m[row] ?? 0);
    return rows.every((other) => {
      const reach_m = job.rows.reach_m[other] ?? 0;
      const wall = [pastPost(job, other, 0, reach_m), pastPost(job, other, 1, reach_m)] as const;
      return other === row || fromPiece_m(at, wall) >= besideRow_m(job, other) / 2;
    });
  };
  const route = layRoute(job);
  const ends = (row: number) => (route?.waterEnd[row] === "end" ? 1 : 0);
  return {
    ours_m: route === null || route.unreached.length > 0 ? Infinity : route.length_m,
    least_m: exactTreeCost(
      graph,
      0,
      rows.map((row) => ([0, 1] as const).filter((end) => isRoom(row, end)).map((end) => tee(row, end))),
    ),
    atOurEnds_m: exactTreeCost(
      graph,
      0,
      rows.map((row) => [tee(row, ends(row))]),
    ),
  };
}
