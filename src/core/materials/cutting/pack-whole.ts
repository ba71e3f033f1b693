import { combinations, leastByLength, reachable } from "./combinations.ts";
import { linearBound } from "./linear-bound.ts";
import { longestFirst } from "./longest-first.ts";
import { packInto } from "./pack-into.ts";
import { dust_m, type Packing, type PackingJob } from "./packing.ts";
import { pairsBound } from "./pairs-bound.ts";
import { correctedValues, firstFit, inSequence } from "./sequence.ts";

/** Limits of the search, in steps, so that the same job always gives the same answer. */
const limits = {
  /** Steps of all sequences together, and of one coil; where lengths are many, a try is dear and gains little. */
  sequences: 500_000,
  perFill: 600,
  manyLengths: 200,
  rounds: 60,
  /** Steps a coil of the quick way through, first and again. */
  quickFill: 60,
  quickFillAgain: 600,
  /** Lengths up to which the linear program is solved; its rounds and steps a fill. */
  linearLengths: 130,
  linearRounds: 900,
  linearFill: 4000,
  /** Ways to buy that are gone through, and steps for each. */
  searchLengths: 100,
  combinations: 400,
  packing: 100_000,
  packings: 400_000,
} as const;

/** A packing without joins and the best bound that was proven for it. */
export interface PackedWhole {
  readonly packing: Packing;
  readonly least: number;
  readonly by: "length" | "pairs" | "linear-program" | "search";
}

/**
 * Packs every piece whole at least cost, as near as the limits of the search allow, with a proven bound. The pieces must fit: each into a
 * coil on hand or a size to buy. First quick ways, then sequences, then the linear program (its values make another sequence), then, cheapest first, every way
 * to buy that the bound leaves open.
 */
export function packWhole(job: PackingJob): PackedWhole {
  const { taken_m, count, onHand_m, sizes } = job;
  let needed_m = 0;
  for (let i = 0; i < taken_m.length; i++) needed_m += Number(count[i]) * Number(taken_m[i]);
  const toBuy_m = needed_m - onHand_m.reduce((sum_m, each) => sum_m + each, 0);
  let least = reachable(sizes, leastByLength(sizes, toBuy_m - dust_m));
  let by: PackedWhole["by"] = "length";
  const isLeast = (cost: number) => cost <= least * (1 + 1e-9) + 1e-9;

  const pairs = pairsLeast(job);
  if (pairs > least + 1e-9) [least, by] = [pairs, "pairs"];

  let best: Packing | null = null;
  let value: Float64Array = Float64Array.from(taken_m);
  let steps: number = limits.sequences;
  const keep = (packing: Packing) => {
    if (best === null || packing.cost < best.cost - 1e-9) best = packing;
  };
  const done = () => best !== null && isLeast(best.cost);
  const inEverySize = (pack: (size: number) => Packing) => {
    sizes.forEach((size, s) => {
      if (!done() && size.usable_m + dust_m >= Number(taken_m[0])) keep(pack(s));
    });
  };
  const isMany = taken_m.length > limits.manyLengths;
  if (!isMany) inEverySize((size) => firstFit(job, size));
  inEverySize((size) => longestFirst(job, size, limits.quickFill));
  inEverySize((size) => longestFirst(job, size, limits.quickFillAgain));
  const sequences = (rounds: number) => {
    for (let round = 0; round < rounds && steps > 0 && !done(); round++) {
      const packing = inSequence(job, value, round === 0, limits.perFill);
      steps -= packing.steps;
      keep(packing);
      value = correctedValues(job, packing, value);
    }
  };
  if (!isMany) sequences(8);
  if (!done() && taken_m.length <= limits.linearLengths) {
    const bestCost = () => (best === null ? Infinity : best.cost);
    const linear = linearBound(
      job,
      (bound) => reachable(sizes, bound - 1e-7 * bound) >= bestCost() - 1e-9,
      limits.linearRounds,
      limits.linearFill,
    );
    const bound = reachable(sizes, linear.least * (1 - 1e-7));
    if (bound > least + 1e-9) [least, by] = [bound, "linear-program"];
    if (linear.value.some((each) => each > 0)) {
      value = linear.value.map((each, i) => each + 1e-6 * Number(taken_m[i]));
      keep(inSequence(job, value, false, limits.perFill));
      keep(inSequence(job, value, true, limits.perFill));
    }
  }
  if (!isMany) sequences(limits.rounds);
  if (best === null) throw new Error("every piece fits into some coil");
  let packing: Packing = best;
  if (!isLeast(packing.cost) && taken_m.length <= limits.searchLengths) {
    const found = cheapestThatPacks(job, toBuy_m, least, packing);
    packing = found.packing;
    if (found.least > least + 1e-9) [least, by] = [found.least, "search"];
  }
  return { packing, least: Math.min(least, packing.cost), by };
}

/** Least cost by how pieces go together, where there is one size and no longer coil on hand; else 0. */
function pairsLeast({ taken_m, count, onHand_m, sizes }: PackingJob): number {
  const [only, ...more] = sizes;
  if (only === undefined || more.length > 0 || onHand_m.some((room_m) => room_m > only.usable_m)) return 0;
  return Math.max(0, pairsBound(taken_m, count, only.usable_m) - onHand_m.length) * only.cost;
}

/** Goes through the ways to buy, cheapest first, until one packs; what is refuted on the way raises the bound. */
function cheapestThatPacks(job: PackingJob, toBuy_m: number, bound: number, known: Packing) {
  const { taken_m, count, onHand_m, sizes } = job;
  const ways = combinations(sizes, toBuy_m - dust_m, bound - 1e-9, known.cost - 1e-9, limits.combinations);
  if (ways === null) return { packing: known, least: bound };
  let least = bound;
  let isRefuted = true;
  let steps: number = limits.packings;
  for (const { counts, cost } of ways) {
    if (isRefuted) least = Math.max(least, cost);
    if (steps <= 0) return { packing: known, least };
    const bought = counts.flatMap((n, stock) => Array.from({ length: n }, () => stock));
    const coils_m = [...onHand_m, ...bought.map((stock) => Number(sizes[stock]?.usable_m))];
    steps -= limits.packing;
    const packed = packInto(taken_m, count, coils_m, limits.packing);
    if (packed.kind === "packed") {
      const coils = packed.coils.map((own, i) =>
        i < onHand_m.length
          ? { stock: i, isOnHand: true, count: own }
          : { stock: bought[i - onHand_m.length] ?? 0, isOnHand: false, count: own },
      );
      return { packing: { coils: coils.filter((coil) => coil.count.some((n) => n > 0)), cost }, least };
    }
    if (packed.kind === "given-up") isRefuted = false;
  }
  return { packing: known, least: isRefuted ? known.cost : least };
}
