import type { Elevation } from "../ground/elevation.ts";
import type { Profile } from "./trench.ts";

/** A profile as it may be told: where no heights are given its ground is level by assumption, so it has none to tell (NaN). */
export function knownProfile(profile: Profile, elevation: Elevation | null): Profile {
  if (elevation !== null && elevation.kind !== "flat") return profile;
  const nothing = new Float64Array(profile.station_m.length).fill(Number.NaN);
  return { ...profile, ground_m: nothing, pipe_m: nothing, bottom_m: nothing };
}
