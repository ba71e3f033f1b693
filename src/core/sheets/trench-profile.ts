import type { Plan } from "../plan.ts";
import { knownProfile } from "../trench/known-profile.ts";
import { type PipesBetween, pipesAlong } from "../trench/pipes-along.ts";
import { profileAt } from "../trench/profile-at.ts";
import type { Profile } from "../trench/trench.ts";
import { type TrenchMark, trenchMarks } from "../trench/trench-marks.ts";
import { type TrenchStation, trenchStations } from "../trench/trench-stations.ts";

/** Where the trench runs under a station as it is drawn. */
export interface DrawnPlace {
  readonly station_m: number;
  /** False where the ground is not known: it is drawn level there. */
  readonly isKnown: boolean;
  readonly ground_m: number;
  readonly pipe_m: number;
  readonly bottom_m: number;
}

/** Water that would stand in the open trench, from station to station. */
export interface Pond {
  readonly from_m: number;
  readonly to_m: number;
  readonly lowest_m: number;
  /** Height of the water. */
  readonly level_m: number;
}

/** A branch of the trench from its side, its upstream end on the left: stations are horizontal metres from there. */
export interface TrenchProfile {
  readonly branch: string;
  readonly length_m: number;
  /** Along the ground; null where that is not known all the way. */
  readonly slopeLength_m: number | null;
  readonly ground: "known" | "partly" | "unknown";
  readonly line: readonly DrawnPlace[];
  readonly stations: readonly TrenchStation[];
  readonly marks: readonly TrenchMark[];
  readonly ponds: readonly Pond[];
  /** Of all that is drawn. */
  readonly lowest_m: number;
  readonly highest_m: number;
  /** What lies in it, where the sizes of pipes are chosen. */
  readonly pipes: readonly PipesBetween[];
  /** To dig. */
  readonly least_m: number;
  readonly deepest_m: number;
  readonly pipe_m: number;
  /** Ground and trench as far as they are known. */
  readonly known: Profile;
}

/** The profile of a branch by its name, or of the first branch; null when the plan has no such branch. Gives no findings. */
export function trenchProfile(plan: Plan, branch: string | null): TrenchProfile | null {
  const { project, trench, mainline, rows, ground: land } = plan;
  if (trench === null || mainline === null || rows === null) return null;
  const b = branch === null ? 0 : trench.branches.findIndex(({ name }) => name === branch);
  const [whole, name] = [trench.profiles[b], trench.branches[b]?.name];
  if (whole === undefined || name === undefined) return null;
  const profile = knownProfile(whole, land?.elevation ?? null);
  const marks = trenchMarks(trench, mainline, rows.rows)[b] ?? [];
  const line = drawnLine(profile, project.trench.bedding_m + trench.thickest_mm / 2000);
  const known = line.filter(({ isKnown }) => isKnown).length;
  const depths = [...profile.depth_m];
  const ground = known === line.length ? "known" : known === 0 ? "unknown" : "partly";
  return {
    branch: name,
    length_m: profile.station_m.at(-1) ?? 0,
    slopeLength_m: ground === "known" ? (profile.slopeStation_m.at(-1) ?? 0) : null,
    ground,
    line,
    stations: trenchStations(profile, marks, project.trench.stationStep_m),
    marks,
    ponds: marks.flatMap((mark) =>
      mark.kind === "low" && mark.pond_m > 0 ? pondsAt(profile, mark.station_m, mark.pond_m) : [],
    ),
    lowest_m: line.reduce((least_m, { bottom_m }) => Math.min(least_m, bottom_m), Infinity),
    highest_m: line.reduce((most_m, { ground_m }) => Math.max(most_m, ground_m), -Infinity),
    pipes: trench.isSized ? pipesAlong(trench, b) : [],
    least_m: depths.reduce((least_m, each) => Math.min(least_m, each), Infinity),
    deepest_m: depths.reduce((most_m, each) => Math.max(most_m, each), 0),
    pipe_m: trench.thickest_mm / 1000,
    known: profile,
  };
}

/** The line with level ground where no height is known: as high as the nearest place before that is, else the first one after, else 0. */
function drawnLine(profile: Profile, usualLift_m: number): readonly DrawnPlace[] {
  const { station_m, ground_m, pipe_m, bottom_m, depth_m } = profile;
  const first = ground_m.find((each) => Number.isFinite(each)) ?? 0;
  let level_m = first;
  return [...station_m].map((at_m, i) => {
    const own_m = ground_m[i] ?? Number.NaN;
    const isKnown = Number.isFinite(own_m);
    if (isKnown) level_m = own_m;
    const low_m = level_m - (depth_m[i] ?? 0);
    return {
      station_m: at_m,
      isKnown,
      ground_m: level_m,
      pipe_m: isKnown ? (pipe_m[i] ?? low_m) : low_m + usualLift_m,
      bottom_m: isKnown ? (bottom_m[i] ?? low_m) : low_m,
    };
  });
}

/**
 * Water around a low point, up to the shoulder that holds it or to where it runs out over the ground; where the ground is not known it ends.
 */
function pondsAt(profile: Profile, low_m: number, by_m: number): readonly Pond[] {
  const lowest_m = profileAt(profile, low_m).bottom_m;
  if (!Number.isFinite(lowest_m)) return [];
  const level_m = Math.min(lowest_m + by_m, brim_m(profile, low_m, lowest_m + by_m));
  const [from_m, to_m] = [shore_m(profile, low_m, level_m, -1), shore_m(profile, low_m, level_m, 1)];
  return to_m > from_m ? [{ from_m, to_m, lowest_m, level_m }] : [];
}

/** Height of the lowest ground along the trench as far as water would stand to a level. */
function brim_m(profile: Profile, low_m: number, level_m: number): number {
  const [from_m, to_m] = [shore_m(profile, low_m, level_m, -1), shore_m(profile, low_m, level_m, 1)];
  const { station_m, ground_m } = profile;
  return ground_m.reduce((least_m, own_m, i) => {
    const at_m = station_m[i] ?? 0;
    return at_m >= from_m && at_m <= to_m && own_m < least_m ? own_m : least_m;
  }, profileAt(profile, low_m).ground_m);
}

/** Where the bottom comes out of the water, going up or down the branch. */
function shore_m(profile: Profile, low_m: number, level_m: number, way: -1 | 1): number {
  const { station_m, bottom_m } = profile;
  const places = [...station_m.keys()].filter((i) => ((station_m[i] ?? 0) - low_m) * way > 0);
  if (way === -1) places.reverse();
  let [lastStation_m, last_m] = [low_m, profileAt(profile, low_m).bottom_m];
  for (const i of places) {
    const [at_m, own_m] = [station_m[i] ?? 0, bottom_m[i] ?? Number.NaN];
    if (!Number.isFinite(own_m)) return lastStation_m;
    if (own_m >= level_m) {
      const share = own_m === last_m ? 1 : (level_m - last_m) / (own_m - last_m);
      return lastStation_m + share * (at_m - lastStation_m);
    }
    [lastStation_m, last_m] = [at_m, own_m];
  }
  return lastStation_m;
}
