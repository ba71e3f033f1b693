import { nearestOnSegment } from "../plane/segment.ts";
import { legLengths_m, type Route } from "./route.ts";

type Place = readonly [x_m: number, y_m: number];

/** A corner nearer than this to the line between its neighbours is no bend. */
const straight_m = 0.02;

/** The longest way through the route from the source, as the few corners where it bends: what a person would draw of it. */
export function trunkOf(route: Route): readonly Place[] {
  const count = route.upstream.length;
  const legs_m = legLengths_m(route);
  const way_m = new Float64Array(count);
  for (let i = 1; i < count; i++) way_m[i] = (way_m[route.upstream[i] ?? 0] ?? 0) + (legs_m[i] ?? 0);
  let at = way_m.reduce((far, each, i) => (each > (way_m[far] ?? 0) ? i : far), 0);
  const places: Place[] = [];
  for (; at >= 0; at = route.upstream[at] ?? -1) places.unshift([route.xy[2 * at] ?? 0, route.xy[2 * at + 1] ?? 0]);
  return bendsOf(places);
}

function bendsOf(places: readonly Place[]): readonly Place[] {
  const kept: Place[] = [];
  places.forEach((place, i) => {
    const [before, after] = [kept.at(-1), places[i + 1]];
    if (before === undefined || after === undefined) kept.push(place);
    else if (nearestOnSegment(...place, ...before, ...after).distance_m > straight_m) kept.push(place);
  });
  return kept;
}
