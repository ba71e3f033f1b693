import { type ProfilePlace, profileAt } from "./profile-at.ts";
import type { Profile } from "./trench.ts";
import type { TrenchMark } from "./trench-marks.ts";

/** A place to peg and to measure the trench at. */
export interface TrenchStation extends ProfilePlace {
  /** One of the even distances from the upstream end; else only something is met there. */
  readonly isStep: boolean;
  /** What is met there. */
  readonly marks: readonly TrenchMark[];
}

/** Places closer than this are one, m. */
const same_m = 1e-6;

/**
 * The stations of a branch: every `step_m` from its upstream end, its end, and wherever something is met. Ascending. Heights are straight
 * between the places of the profile, NaN where the ground is not known.
 */
export function trenchStations(
  profile: Profile,
  marks: readonly TrenchMark[],
  step_m: number,
): readonly TrenchStation[] {
  const length_m = profile.station_m.at(-1) ?? 0;
  const steps = Array.from({ length: Math.floor(length_m / step_m + same_m) + 1 }, (_, i) => i * step_m);
  const places = [
    ...steps.map((station_m) => ({ station_m: Math.min(station_m, length_m), isStep: true, marks: [] })),
    ...marks.map((mark) => ({ station_m: mark.station_m, isStep: false, marks: [mark] })),
    { station_m: length_m, isStep: true, marks: [] },
  ].sort((a, b) => a.station_m - b.station_m);
  const met: { station_m: number; isStep: boolean; marks: readonly TrenchMark[] }[] = [];
  for (const place of places) {
    const last = met.at(-1);
    if (last !== undefined && place.station_m - last.station_m < same_m) {
      last.isStep ||= place.isStep;
      last.marks = [...last.marks, ...place.marks];
    } else met.push({ ...place });
  }
  return met.map((place) => ({ ...profileAt(profile, place.station_m), ...place }));
}
