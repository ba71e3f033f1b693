import { branchInWords, markInWords } from "../trench/mark-in-words.ts";
import { profileAt } from "../trench/profile-at.ts";
import { formatQuantity, text, type UnitSystem } from "../units.ts";
import type { TrenchProfile } from "./trench-profile.ts";

/**
 * A place of the trench in a sentence: station, ground and depth, and what is met within so many metres of it, the nearest first.
 * "The main line, 35 m along: ground at 100.3 m, 0.51 m to dig; tee of row 7."
 */
export function placeInWords(profile: TrenchProfile, station_m: number, near_m: number, units: UnitSystem): string {
  const { branch, known, marks } = profile;
  const place = profileAt(known, station_m);
  const rounded = (value_m: number) => formatQuantity("length", value_m, units, units === "us" ? 1 : 2);
  const name = branchInWords(branch);
  const ground = Number.isFinite(place.ground_m)
    ? `ground at ${rounded(place.ground_m)}`
    : "height of the ground not known";
  const met = marks
    .filter((mark) => Math.abs(mark.station_m - place.station_m) <= near_m)
    .sort((a, b) => Math.abs(a.station_m - station_m) - Math.abs(b.station_m - station_m))
    .map((mark) => text(markInWords(mark), units));
  const whole = [
    `${name.charAt(0).toUpperCase()}${name.slice(1)}, ${rounded(place.station_m)} along: ${ground}, ${formatQuantity("length", place.depth_m, units)} to dig`,
    ...met,
  ];
  return `${whole.join("; ")}.`;
}
