import type { Graph } from "./exact-tree.ts";
import type { Point } from "./parcels.ts";
import { isClear, isFree, isWithin, type Keep, type RouteWorld } from "./route-world.ts";

/** Corners a full circle is drawn around with: ways round it come out at most 0.1 % longer than the arc. */
const corners = 64;
/** Ends of rows take one corner in so many: an arc around one is centimetres of a way of tens
 * of metres. A multiple of four: a side touches where the trench meets the row. */
const fewer = 4;

/** Every place where a shortest way may bend, and the straight ways between those that see each other. */
export interface VisibilityGraph {
  readonly graph: Graph;
  /** First the places asked for, then the rows' meeting places, then corners. */
  readonly places: readonly Point[];
  /** Number of the node where row r meets the water, at its start (end 0) or its end (1). */
  tee(row: number, end: 0 | 1): number;
}

export interface GraphWish {
  /**
   * Only ways that touch what they bend round, as shortest ways do: quicker by much. A tree may branch at a corner in any direction, so an
   * exact one takes all ways.
   */
  readonly isTaut?: boolean;
}

/**
 * The graph in which shortest ways are exact but for arcs, which have corners. By brute force, everything against everything; only what can
 * be got to from the places asked for has ways.
 */
export function visibilityGraph(
  world: RouteWorld,
  from: readonly Point[],
  { isTaut = false }: GraphWish = {},
): VisibilityGraph {
  const sides = new Set(from.map((at) => isWithin(world, at)));
  const bends = world.keeps
    .flatMap((keep) => around(keep))
    .filter(({ at }) => sides.has(isWithin(world, at)) && isFree(world, at));
  const nodes = [...[...from, ...world.tees].map((at): Node => ({ at, normal: null, slack: 0 })), ...bends];
  const graph: { to: number; cost: number }[][] = nodes.map(() => []);
  const isReached = nodes.map((_, i) => i < from.length);
  const reached = from.map((_, i) => i);
  const isLoose = nodes.map(({ at }, i) => i < from.length && !isFree(world, at));
  const isLooked = nodes.map(() => false);
  for (const i of reached) {
    isLooked[i] = true;
    const one = nodes[i];
    for (const [j, other] of nodes.entries()) {
      if (one === undefined || isLooked[j] === true) continue;
      // Whoever leaves a place that is too near to something does not touch it.
      if (isTaut && !isLoose[i] && !(touches(one, other.at) && touches(other, one.at))) continue;
      if (!isClear(world, [one.at, other.at])) continue;
      const cost = Math.hypot(one.at[0] - other.at[0], one.at[1] - other.at[1]);
      graph[i]?.push({ to: j, cost });
      graph[j]?.push({ to: i, cost });
      if (isReached[j] !== true) reached.push(j);
      isReached[j] = true;
    }
  }
  return { graph, places: nodes.map(({ at }) => at), tee: (row, end) => from.length + 2 * row + end };
}

/** A place; at a corner with the direction away from what it bends round, and how far a way may turn from the touching line. */
interface Node {
  readonly at: Point;
  readonly normal: Point | null;
  readonly slack: number;
}

/** Does a straight way to the place touch the corners that this one belongs to, without cutting them off? */
function touches({ at: [x, y], normal, slack }: Node, [toX, toY]: Point): boolean {
  if (normal === null) return true;
  return Math.abs((toX - x) * normal[0] + (toY - y) * normal[1]) <= slack * Math.hypot(toX - x, toY - y) + 1e-9;
}

/** Corners of an outline drawn around everything within the distance of a piece. */
function around({ piece: [[x1, y1], [x2, y2]], distance_m, feature }: Keep): readonly Node[] {
  const many = feature === -2 ? corners / fewer : corners;
  const radius_m = distance_m / Math.cos(Math.PI / many);
  const along = Math.atan2(y2 - y1, x2 - x1);
  return Array.from({ length: many }, (_, k): Node => {
    const turn = ((k + 0.5) * 2 * Math.PI) / many;
    const [x, y] = turn < Math.PI ? [x1, y1] : [x2, y2];
    const normal: Point = [Math.cos(along + Math.PI / 2 + turn), Math.sin(along + Math.PI / 2 + turn)];
    const at: Point = [x + radius_m * normal[0], y + radius_m * normal[1]];
    return { at, normal, slack: Math.sin(Math.PI / many) * 1.001 };
  });
}
