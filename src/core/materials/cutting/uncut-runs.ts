import type { CutJob } from "./cut-job.ts";
import { dust_m, tightest } from "./packing.ts";

/**
 * Runs, by their places in the job, that cannot be had: longer than every size that can be bought, with no coil on hand left that is long
 * enough (each takes the tightest one), and not to be pieced together from bought coils either. Usable lengths in metres.
 */
export function uncutRuns(job: CutJob, sizes_m: readonly number[], onHand_m: readonly number[]): readonly number[] {
  const longest_m = Math.max(0, ...sizes_m);
  const rooms_m = [...onHand_m];
  const long = job.runs
    .map(({ length_m }, run) => ({ run, taken_m: length_m + job.slop_m }))
    .filter(({ taken_m }) => taken_m > longest_m + dust_m)
    .sort((a, b) => b.taken_m - a.taken_m);
  return long
    .filter(({ run, taken_m }) => {
      const coil = tightest(rooms_m, taken_m);
      if (coil !== -1) {
        rooms_m[coil] = Number(rooms_m[coil]) - taken_m;
        return false;
      }
      const { length_m = 0, joinsAt_m = [] } = job.runs[run] ?? {};
      return !isJoinable(length_m, joinsAt_m, longest_m - job.slop_m - job.joinLength_m);
    })
    .map(({ run }) => run)
    .sort((a, b) => a - b);
}

/** True when no stretch between two places to join is longer than a coil can give. */
function isJoinable(length_m: number, joinsAt_m: readonly number[], most_m: number): boolean {
  const ends = [0, ...joinsAt_m, length_m];
  return joinsAt_m.length > 0 && ends.every((at, i) => i === 0 || at - Number(ends[i - 1]) <= most_m);
}
