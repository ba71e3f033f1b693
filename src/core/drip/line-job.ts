import type { HeightAt } from "../ground/elevation.ts";
import { legLengths_m, type Route } from "../mainline/route.ts";
import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import { groundLength_m } from "../rows/ground-length.ts";
import type { LineJob } from "./watering-job.ts";

/** The legs of a route along the ground, m, and the middle of its pipe `under_m` below it. */
export function lineJob(
  route: Pick<Route, "xy" | "upstream">,
  heightAt: HeightAt,
  { step_m, under_m, unknown_m }: { readonly step_m: number; readonly under_m: number; readonly unknown_m: number },
): { readonly line: LineJob; readonly isKnown: boolean } {
  let isKnown = true;
  const level_m = legLengths_m(route);
  const placeOf = (point: number): PlanePoint =>
    planePoint(Number(route.xy[2 * point]), Number(route.xy[2 * point + 1]));
  const length_m = level_m.map((leg_m, point) => {
    const from = Number(route.upstream[point]);
    if (from < 0 || leg_m === 0) return leg_m;
    const ground_m = groundLength_m(heightAt, placeOf(from), placeOf(point), leg_m, step_m);
    if (ground_m === null) isKnown = false;
    return ground_m ?? leg_m;
  });
  const height_m = level_m.map((_, point) => {
    const [x, y] = placeOf(point);
    const read_m = heightAt(x, y);
    if (read_m === null) isKnown = false;
    return (read_m ?? unknown_m) - under_m;
  });
  return { line: { upstream: route.upstream, length_m, height_m }, isKnown };
}
