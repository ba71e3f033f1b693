import type { ValvePattern } from "../project/water-settings.ts";
import type { Sets } from "./sets.ts";
import type { LineJob, WateringJob } from "./watering-job.ts";

/** Legs of the route as lines of pipe carry them, as parallel arrays; one leg may carry several lines. Each comes after the one it goes on from. */
export interface LineLegs {
  /** 0: the main line; 1 and on: the line of that set. */
  readonly line: readonly number[];
  /** Point of the route at the downstream end. */
  readonly point: readonly number[];
  /** Leg it goes on from; -1 from the source. */
  readonly upstream: readonly number[];
}

/** The way of the water to the rows of one set, as parallel arrays; node 0 is where the main line begins. */
export interface SetTree {
  readonly upstream: readonly number[];
  readonly point: readonly number[];
  /** Leg to the node; -1 for node 0 and behind a regulator, where no pipe is. */
  readonly leg: readonly number[];
  readonly lateral: readonly number[];
  /** 1: a regulator stands before the node. */
  readonly isRegulated: readonly (0 | 1)[];
  /** Point of the route with the set's valve; -1 where every row has a cock. */
  readonly valve: number;
}

export interface SetLines {
  readonly legs: LineLegs;
  readonly trees: readonly SetTree[];
}

/**
 * Which pipes feed which set. A cock on each row: one line for all. A valve for each set: the main line to where the ways to its rows part, and its
 * own line from there. Valves at the source: its own line all the way.
 */
export function setLines(
  { laterals }: Pick<WateringJob, "laterals">,
  line: LineJob,
  sets: Sets,
  pattern: ValvePattern,
  isRegulated: boolean,
): SetLines {
  const legs = { line: [] as number[], point: [] as number[], upstream: [] as number[] };
  const known = new Map<string, number>();
  const legTo = (of: number, point: number, upstream: number): number => {
    const key = `${of} ${point}`;
    const there = known.get(key);
    if (there !== undefined) return there;
    legs.line.push(of);
    legs.point.push(point);
    legs.upstream.push(upstream);
    known.set(key, legs.line.length - 1);
    return legs.line.length - 1;
  };
  const trees = sets.map((own, set): SetTree => {
    const tees = new Map<number, number[]>();
    for (const lateral of own) {
      const point = Number(laterals.point[lateral]);
      tees.set(point, [...(tees.get(point) ?? []), lateral]);
    }
    const needed = pointsTo(line, [...tees.keys()]);
    const valve = valvePoint(line, needed, tees, pattern);
    const onMain =
      pattern === "cock-a-row" ? needed : new Set(pattern === "valve-a-set" ? pointsTo(line, [valve]) : []);
    const tree = {
      upstream: [] as number[],
      point: [] as number[],
      leg: [] as number[],
      lateral: [] as number[],
      isRegulated: [] as (0 | 1)[],
    };
    const add = (upstream: number, point: number, leg: number, regulated: boolean): number => {
      tree.upstream.push(upstream);
      tree.point.push(point);
      tree.leg.push(leg);
      tree.lateral.push(-1);
      tree.isRegulated.push(regulated ? 1 : 0);
      return tree.point.length - 1;
    };
    const nodes = new Map<number, number>();
    const legAt = new Map<number, number>();
    for (const point of needed) {
      const from = Number(line.upstream[point]);
      const leg = point === 0 ? -1 : legTo(onMain.has(point) ? 0 : set + 1, point, legAt.get(from) ?? -1);
      let node = add(point === 0 ? -1 : (nodes.get(from) ?? 0), point, leg, false);
      legAt.set(point, leg);
      if (isRegulated && point === valve) node = add(node, point, -1, true);
      nodes.set(point, node);
      for (const lateral of tees.get(point) ?? []) {
        const isApart = (isRegulated && pattern === "cock-a-row") || tree.lateral[node] !== -1;
        const tee = isApart ? add(node, point, -1, isRegulated && pattern === "cock-a-row") : node;
        tree.lateral[tee] = lateral;
      }
    }
    return { ...tree, valve };
  });
  return { legs, trees };
}

/** The points that water passes on its way to some, from the source on. */
function pointsTo({ upstream }: LineJob, points: readonly number[]): Set<number> {
  const passed = new Set<number>([0]);
  for (const point of points) {
    for (let at = point; at > 0 && !passed.has(at); at = Number(upstream[at])) passed.add(at);
  }
  return new Set([...passed].sort((a, b) => a - b));
}

/** Where the ways to the tees part: a tee on the way is a parting too. */
function valvePoint(
  { upstream }: LineJob,
  needed: ReadonlySet<number>,
  tees: ReadonlyMap<number, unknown>,
  pattern: ValvePattern,
): number {
  if (pattern === "cock-a-row") return -1;
  if (pattern === "valves-at-source") return 0;
  const next = new Map<number, number[]>();
  for (const point of needed) {
    if (point > 0) next.set(Number(upstream[point]), [...(next.get(Number(upstream[point])) ?? []), point]);
  }
  let at = 0;
  while (!tees.has(at)) {
    const [only, ...others] = next.get(at) ?? [];
    if (only === undefined || others.length > 0) break;
    at = only;
  }
  return at;
}
