import type { CutJob } from "../../src/core/materials/cutting/cut-job.ts";
import { createCutJob } from "./create-cut-job.ts";
import { between, createRandom, type Random, wholeBetween } from "./random.ts";

/** Lengths to the centimetre: they are stored beside the answers. */
function length_m(random: Random, low_m: number, high_m: number): number {
  return Math.round(100 * between(random, low_m, high_m)) / 100;
}

const coil_m = (length: number, price: number | null) => ({ length_m: length, price, mass_kg: null });
const coils_m = [304.8, 609.6, 1524] as const;

/** How many jobs there are of each kind that is held against the exact optimum. */
export const smallJobs = { "one size": 90, "all different": 30, "part coils": 40, "priced sizes": 40 } as const;
export type SmallJobKind = keyof typeof smallJobs;

/** A job of up to 30 pieces. */
export function smallCutJob(kind: SmallJobKind, random: Random): CutJob {
  const longest_m = between(random, 90, 290);
  const lengths_m = (rows: number) => Array.from({ length: rows }, () => length_m(random, 25, longest_m));
  const partCoils_m = () => Array.from({ length: wholeBetween(random, 1, 3) }, () => length_m(random, 60, 300));
  switch (kind) {
    case "one size":
      return createCutJob({ lengths_m: lengths_m(wholeBetween(random, 2, 10)), wires: 3 });
    case "all different":
      return createCutJob({ lengths_m: lengths_m(wholeBetween(random, 8, 30)) });
    case "part coils":
      return createCutJob({
        lengths_m: lengths_m(wholeBetween(random, 3, 15)),
        wires: 2,
        onHand_m: partCoils_m(),
      });
    case "priced sizes": {
      const sizes = coils_m
        .slice(0, wholeBetween(random, 2, 3))
        .map((length) => coil_m(length, Math.round(length * between(random, 0.18, 0.28))));
      return createCutJob({
        lengths_m: lengths_m(wholeBetween(random, 2, 10)),
        wires: 3,
        sizes,
        onHand_m: random() < 0.5 ? partCoils_m() : [],
      });
    }
    default:
      return kind satisfies never;
  }
}

/** So many jobs of 20 to 60 rows of 30 to 150 m with three wires each, tie-offs of 0.85 m at both ends, from coils of 1000 ft. */
export function fieldCutJobs(count: number, seed: number): readonly CutJob[] {
  const random = createRandom(seed);
  return Array.from({ length: count }, () =>
    createCutJob({
      lengths_m: Array.from({ length: wholeBetween(random, 20, 60) }, () => between(random, 30, 150) + 1.7),
      wires: 3,
    }),
  );
}

/** The same where posts lean, so that every wire of a row has a length of its own. */
export function leaningCutJobs(count: number, seed: number): readonly CutJob[] {
  const random = createRandom(seed);
  return Array.from({ length: count }, () =>
    createCutJob({
      lengths_m: Array.from({ length: wholeBetween(random, 20, 60) }, () => between(random, 30, 150)).flatMap((row_m) =>
        [1.9, 2.5, 3.1].map((more_m) => row_m + more_m),
      ),
    }),
  );
}

/** A job of 400 rows of 60 to 260 m with five wires, all of a length or each of its own. */
export function largeCutJob(isLeaning: boolean, coil: number, isJoinable: boolean): CutJob {
  const random = createRandom(400);
  const more_m = isLeaning ? [1.2, 1.6, 2.0, 2.4, 2.8] : [1.7, 1.7, 1.7, 1.7, 1.7];
  const rows_m = Array.from({ length: 400 }, () => between(random, 60, 260));
  return createCutJob({
    lengths_m: rows_m.flatMap((row_m) => more_m.map((each_m) => row_m + each_m)),
    sizes: [coil_m(coil, null)],
    isJoinable,
  });
}
