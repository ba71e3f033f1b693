import type { Plan } from "../plan.ts";
import { type LonLat, planePoint } from "../plane/coordinate.ts";
import { branchesOf } from "../trench/branches.ts";
import { knownProfile } from "../trench/known-profile.ts";
import { type PipesBetween, pipesAlong } from "../trench/pipes-along.ts";
import type { Branch } from "../trench/trench.ts";
import { type TrenchMark, trenchMarks } from "../trench/trench-marks.ts";
import { type TrenchStation, trenchStations } from "../trench/trench-stations.ts";
import { placed } from "./positions.ts";

/** A branch of the main line with what is met along it and, where its trench is known, its stations. */
export interface BranchPlaces {
  readonly name: string;
  /** Every point of the line, from its upstream end. */
  readonly line: readonly LonLat[];
  readonly length_m: number;
  /** Along the ground; null where heights are missing. */
  readonly groundLength_m: number | null;
  readonly marks: readonly TrenchMark[];
  readonly stations: readonly TrenchStation[];
  /** What lies in it, with where that is; none while the sizes of pipes are not chosen. */
  readonly pipes: readonly (PipesBetween & { readonly line: readonly LonLat[] })[];
}

/** The branches of a plan's main line, the first one first; none without a route. */
export function branchPlaces(plan: Plan): readonly BranchPlaces[] {
  const { mainline, trench, rows, project } = plan;
  const route = mainline?.route ?? null;
  if (mainline === null || route === null || rows === null) return [];
  const branches = trench?.branches ?? branchesOf(route);
  const elevation = plan.ground?.elevation ?? null;
  const marks = trench === null ? [] : trenchMarks(trench, mainline, rows.rows);
  return branches.map((branch, b) => {
    const whole = trench?.profiles[b];
    const profile = whole === undefined ? undefined : knownProfile(whole, elevation);
    const own = marks[b] ?? [];
    const isKnown = whole?.ground_m.every(Number.isFinite) ?? false;
    return {
      name: branch.name,
      line: placesOf(plan, branch, route.xy),
      length_m: branchLength_m(branch, route.xy),
      groundLength_m: isKnown ? (whole?.slopeStation_m.at(-1) ?? null) : null,
      marks: own,
      stations: profile === undefined ? [] : trenchStations(profile, own, project.trench.stationStep_m),
      pipes:
        trench?.isSized === true
          ? pipesAlong(trench, b).map((each) => ({ ...each, line: lineBetween(plan, branch, route.xy, each) }))
          : [],
    };
  });
}

/** The way of a branch between two of its points, by their stations. */
function lineBetween(
  plan: Plan,
  { points }: Branch,
  xy: Float64Array,
  { from_m, to_m }: Pick<PipesBetween, "from_m" | "to_m">,
): readonly LonLat[] {
  const stations_m = points.map((_, i) => branchLength_m({ points: points.slice(0, i + 1) }, xy));
  const within = points.filter((_, i) => {
    const at_m = stations_m[i] ?? 0;
    return at_m > from_m - same_m && at_m < to_m + same_m;
  });
  return placesOf(plan, { points: within }, xy);
}

/** Pipes begin and end at points of the route. */
const same_m = 1e-3;

function placesOf(plan: Plan, { points }: Pick<Branch, "points">, xy: Float64Array): readonly LonLat[] {
  return points.map((i) => placed(plan, planePoint(xy[2 * i] ?? 0, xy[2 * i + 1] ?? 0)));
}

function branchLength_m({ points }: Pick<Branch, "points">, xy: Float64Array): number {
  return points.slice(1).reduce((sum_m, i, n) => {
    const from = points[n] ?? i;
    return sum_m + Math.hypot((xy[2 * i] ?? 0) - (xy[2 * from] ?? 0), (xy[2 * i + 1] ?? 0) - (xy[2 * from + 1] ?? 0));
  }, 0);
}

/** Where a station is. */
export function stationAt(plan: Plan, { xy }: Pick<TrenchStation, "xy">): LonLat {
  return placed(plan, planePoint(xy[0], xy[1]));
}

/** The row that has its tee at a station, or null. */
export function teeOf(marks: readonly TrenchMark[]): string | null {
  return marks.flatMap((mark) => (mark.kind === "tee" ? [mark.row] : []))[0] ?? null;
}
