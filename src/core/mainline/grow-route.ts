import type { Exempt } from "./clearance.ts";
import type { RowEnd } from "./heads.ts";
import { linedUpTees, type RoutePoint } from "./line-up-tees.ts";
import { pulledStraight } from "./pull-straight.ts";
import type { Route } from "./route.ts";
import type { RouteGraph } from "./route-graph.ts";

/** Bends that turn less than this are none. */
const straight_m = 1e-6;

interface Step {
  readonly node: number;
  readonly link: number;
}

/**
 * The tree as points from the source outward, its ways pulled straight between the source, tees, junctions, crossings and drawn places.
 * `tees` gives the row end of each node that has one.
 */
export function grownRoute(
  graph: RouteGraph,
  source: number,
  links: readonly number[],
  tees: ReadonlyMap<number, RowEnd>,
): Pick<Route, "xy" | "upstream" | "row" | "crossing" | "isDrawn" | "length_m" | "crossings"> {
  const { draft, clearance } = graph;
  const steps = new Map<number, Step[]>();
  for (const link of links) {
    const one = draft.links[link];
    if (one === undefined) continue;
    steps.set(one.a, [...(steps.get(one.a) ?? []), { node: one.b, link }]);
    steps.set(one.b, [...(steps.get(one.b) ?? []), { node: one.a, link }]);
  }
  const root = Number(graph.sources[source]);
  const isSpecial = (link: number): boolean => {
    const one = draft.links[link];
    return one !== undefined && (one.isDrawn || one.crossing >= 0);
  };
  const isFixed = (node: number): boolean => {
    const around = steps.get(node) ?? [];
    return around.length !== 2 || tees.has(node) || around.some(({ link }) => isSpecial(link));
  };
  const rootAt = draft.placeOf(root);
  const points: RoutePoint[] = [
    { at: rootAt, upstream: -1, tee: tees.get(root) ?? null, crossing: -1, isDrawn: false },
  ];
  const waiting: { readonly node: number; readonly point: number; readonly from: number }[] = [
    { node: root, point: 0, from: -1 },
  ];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { node, point, from } = next;
    for (const first of steps.get(node) ?? []) {
      if (first.node === from) continue;
      const way = wayOn(node, first, steps, isFixed);
      const last = way.at(-1) ?? first.node;
      const exempt: Exempt | undefined = node === root ? clearance.exemptAt(rootAt[0], rootAt[1]) : undefined;
      const one = draft.links[first.link];
      const places = way.map(draft.placeOf);
      const pulled = isSpecial(first.link) ? places : pulledStraight(places, clearance, exempt);
      let upstream = point;
      pulled.slice(1).forEach((at, i) => {
        const isLast = i === pulled.length - 2;
        upstream =
          points.push({
            at,
            upstream,
            tee: isLast ? (tees.get(last) ?? null) : null,
            crossing: one?.crossing ?? -1,
            isDrawn: one?.isDrawn ?? false,
          }) - 1;
      });
      waiting.push({ node: last, point: upstream, from: way.at(-2) ?? node });
    }
  }
  return packed(withoutStraightBends(linedUpTees(withoutStraightBends(points), clearance)));
}

/** From a node by a link on to the next fixed one. */
function wayOn(
  node: number,
  first: Step,
  steps: ReadonlyMap<number, readonly Step[]>,
  isFixed: (node: number) => boolean,
): readonly number[] {
  const nodes = [node, first.node];
  for (let at = first.node, from = node; !isFixed(at); ) {
    const onward = steps.get(at)?.find((step) => step.node !== from);
    if (onward === undefined) break;
    [from, at] = [at, onward.node];
    nodes.push(at);
  }
  return nodes;
}

/** Points without tee or junction that the way runs straight through are left out. */
function withoutStraightBends(points: readonly RoutePoint[]): readonly RoutePoint[] {
  const onward = new Map<number, number[]>();
  points.forEach(({ upstream }, i) => {
    onward.set(upstream, [...(onward.get(upstream) ?? []), i]);
  });
  const isNeeded = points.map(({ at, upstream, tee, crossing, isDrawn }, i) => {
    const [next, ...others] = onward.get(i) ?? [];
    const [before, after] = [points[upstream], points[next ?? -1]];
    if (tee !== null || before === undefined || after === undefined || others.length > 0) return true;
    if (after.crossing !== crossing || after.isDrawn !== isDrawn) return true;
    const [ax, ay] = [at[0] - before.at[0], at[1] - before.at[1]];
    const [bx, by] = [after.at[0] - before.at[0], after.at[1] - before.at[1]];
    const off_m = Math.abs(ax * by - ay * bx) / Math.max(straight_m, Math.hypot(bx, by));
    return off_m > straight_m;
  });
  const numbers = new Map<number, number>();
  let kept = 0;
  isNeeded.forEach((needed, i) => {
    if (needed) numbers.set(i, kept++);
  });
  return points.flatMap((point, i) => {
    if (!isNeeded[i]) return [];
    let { upstream } = point;
    while (upstream >= 0 && !isNeeded[upstream]) upstream = points[upstream]?.upstream ?? -1;
    return [{ ...point, upstream: upstream < 0 ? -1 : (numbers.get(upstream) ?? -1) }];
  });
}

function packed(points: readonly RoutePoint[]) {
  const length_m = points.reduce((sum_m, { at, upstream }) => {
    const before = points[upstream];
    return before === undefined ? sum_m : sum_m + Math.hypot(at[0] - before.at[0], at[1] - before.at[1]);
  }, 0);
  return {
    xy: Float64Array.from(points.flatMap(({ at }) => [at[0], at[1]])),
    upstream: Int32Array.from(points, ({ upstream }) => upstream),
    row: Int32Array.from(points, ({ tee }) => tee?.row ?? -1),
    crossing: Int32Array.from(points, ({ crossing }) => crossing),
    isDrawn: Uint8Array.from(points, ({ isDrawn }) => (isDrawn ? 1 : 0)),
    length_m,
    crossings: points.filter(({ crossing }) => crossing >= 0).length,
  };
}
