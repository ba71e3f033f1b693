import { isInside } from "../ground/inside.ts";
import { forEachEdge } from "../ground/outlines.ts";
import type { Route } from "../mainline/route.ts";
import type { BarrierFeature, Barriers } from "../mainline/route-job.ts";
import { crossingAlong } from "../plane/segment.ts";
import type { Sleeve } from "./trench.ts";

/** Sleeve past each edge of what is crossed. Common practice, no source. */
const past_m = 0.3;

type Place = readonly [x: number, y: number];

/**
 * A sleeve for every crossing: over the width of an area along the way and a little past both its edges; across a line as far as the trench
 * otherwise keeps from it, on both sides. Never longer than the leg that crosses. `pipesOn_mm`: outside diameters of the pipes on the leg up to a
 * point.
 */
export function sleevesOf(
  route: Pick<Route, "xy" | "upstream" | "crossing">,
  barriers: Barriers,
  pipesOn_mm: (leg: number) => readonly number[],
): readonly Sleeve[] {
  const sleeves: Sleeve[] = [];
  route.crossing.forEach((of, i) => {
    const feature = barriers.features[of];
    const from = Number(route.upstream[i]);
    if (feature === undefined || from < 0) return;
    const [p, q] = [from, i].map((point) => [Number(route.xy[2 * point]), Number(route.xy[2 * point + 1])] as const);
    if (p === undefined || q === undefined) return;
    const leg_m = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const wide_m = feature.areas.length > 0 ? insideOf_m(p, q, feature) : 0;
    const length_m = Math.min(leg_m, wide_m > 0 ? wide_m + 2 * past_m : 2 * keptFrom_m(of, barriers));
    sleeves.push({
      feature: feature.key,
      name: feature.name,
      xy: [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2],
      length_m: length_m > 0 ? length_m : leg_m,
      outside_mm: pipesOn_mm(i),
    });
  });
  return sleeves;
}

/** How much of a leg lies within the areas of a feature. */
function insideOf_m(p: Place, q: Place, { areas }: BarrierFeature): number {
  const length_m = Math.hypot(q[0] - p[0], q[1] - p[1]);
  return areas.reduce((sum_m, rings) => {
    const cuts = [0, 1];
    forEachEdge(rings, (_, ax, ay, bx, by) => {
      const along = crossingAlong(p, q, [ax, ay], [bx, by]);
      if (along !== null) cuts.push(along);
    });
    cuts.sort((a, b) => a - b);
    return cuts.slice(1).reduce((inside_m, to, i) => {
      const middle = (Number(cuts[i]) + to) / 2;
      const isIn = isInside(rings, p[0] + middle * (q[0] - p[0]), p[1] + middle * (q[1] - p[1]));
      return isIn ? inside_m + (to - Number(cuts[i])) * length_m : inside_m;
    }, sum_m);
  }, 0);
}

function keptFrom_m(of: number, { feature, distance_m }: Pick<Barriers, "feature" | "distance_m">): number {
  return distance_m.reduce((most_m, each_m, i) => (feature[i] === of ? Math.max(most_m, each_m) : most_m), 0);
}
