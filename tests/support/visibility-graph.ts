import type { Graph } from "./exact-tree.ts";
import type { Point } from "./parcels.ts";
import { isClear, isFree, type Keep, type RouteWorld } from "./route-world.ts";

/** Corners a full circle is drawn around with: ways round it come out at most 0.03 % longer than the arc. */
const corners = 96;
/** Posts and anchors take one corner in so many: an arc around one is centimetres of a way of tens of metres. */
const fewer = 6;

/** Every place where a shortest way may bend, and the straight ways between those that see each other. */
export interface VisibilityGraph {
  readonly graph: Graph;
  /** First the places asked for, then the rows' meeting places, then corners. */
  readonly places: readonly Point[];
  /** Number of the node where row r meets the water, at its start (end 0) or its end (1). */
  tee(row: number, end: 0 | 1): number;
}

/**
 * The graph in which shortest ways are exact but for arcs, which have corners. By brute force, everything against everything; only what can
 * be got to from the places asked for has ways.
 */
export function visibilityGraph(world: RouteWorld, from: readonly Point[]): VisibilityGraph {
  const bends = world.keeps.flatMap((keep) => around(keep)).filter((at) => isFree(world, at));
  const places = [...from, ...world.tees, ...bends];
  const graph: { to: number; cost: number }[][] = places.map(() => []);
  const isReached = places.map((_, i) => i < from.length);
  const reached = from.map((_, i) => i);
  const isLooked = places.map(() => false);
  for (const i of reached) {
    isLooked[i] = true;
    const one = places[i];
    for (const [j, other] of places.entries()) {
      if (one === undefined || isLooked[j] === true || !isClear(world, [one, other])) continue;
      const cost = Math.hypot(one[0] - other[0], one[1] - other[1]);
      graph[i]?.push({ to: j, cost });
      graph[j]?.push({ to: i, cost });
      if (isReached[j] !== true) reached.push(j);
      isReached[j] = true;
    }
  }
  return { graph, places, tee: (row, end) => from.length + 2 * row + end };
}

/** Corners of an outline drawn around everything within the distance of a piece. */
function around({ piece: [[x1, y1], [x2, y2]], distance_m, feature }: Keep): readonly Point[] {
  const many = feature === -2 ? corners / fewer : corners;
  const radius_m = distance_m / Math.cos(Math.PI / many);
  const along = Math.atan2(y2 - y1, x2 - x1);
  const isPoint = x1 === x2 && y1 === y2;
  return Array.from({ length: many }, (_, k): readonly Point[] => {
    const turn = ((k + 0.5) * 2 * Math.PI) / many;
    const [x, y] = turn < Math.PI ? [x1, y1] : [x2, y2];
    const angle = along + Math.PI / 2 + turn;
    return isPoint && distance_m < 1e-3 ? [] : [[x + radius_m * Math.cos(angle), y + radius_m * Math.sin(angle)]];
  }).flat();
}
