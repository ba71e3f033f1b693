import type { Laid } from "./lay-pipes.ts";
import { type Fitting, firstRuns, type openEnds } from "./line-fittings.ts";
import type { LineTree } from "./line-tree.ts";
import { lineHighs, lineLows, nodesByPoint, ponds, profilePoints } from "./low-points.ts";
import type { Profile, ProfilePoint } from "./trench.ts";
import { valveFittings } from "./valve-places.ts";

export interface PipePlaces {
  readonly lows: readonly ProfilePoint[];
  readonly highs: readonly ProfilePoint[];
  readonly fittings: readonly Fitting[];
}

/** Low and high points of every line, together by place, and the fittings that their valves and the ends of runs (`ends`) take. */
export function pipePlaces(
  profiles: readonly Profile[],
  tree: LineTree,
  { lines, runs }: Laid,
  ends: ReturnType<typeof openEnds>,
  leastLow_m: number,
): PipePlaces {
  const nodeAt = nodesByPoint(profiles, tree);
  const fars = firstRuns(runs).flatMap(({ line, points }) => {
    return ends.find((end) => end.line === line && end.point === points.at(-1)) ?? [];
  });
  const lows = lineLows(profiles, tree, lines, leastLow_m);
  const highs = lineHighs(profiles, tree, lines, leastLow_m, fars);
  const nodes = ends.map((end) => ({ ...end, node: nodeAt.get(end.point) ?? -1 }));
  return {
    lows: profilePoints(profiles, tree, lows, ponds(profiles, tree, leastLow_m)),
    highs: profilePoints(profiles, tree, highs, []),
    fittings: valveFittings(nodes, lows, highs, tree, lines),
  };
}
