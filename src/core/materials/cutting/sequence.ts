import { bestFill, byWorth } from "./best-fill.ts";
import { dust_m, type PackedCoil, type Packing, type PackingJob, takenOf, trimmed } from "./packing.ts";

/** Longest pieces first, each into the first coil that has room: coils on hand before bought ones, which are of one size. */
export function firstFit(job: PackingJob, size: number): Packing {
  const { taken_m, count, onHand_m, sizes } = job;
  const coils: { stock: number; isOnHand: boolean; count: Int32Array; room_m: number }[] = onHand_m.map(
    (usable_m, stock) => ({
      stock,
      isOnHand: true,
      count: new Int32Array(taken_m.length),
      room_m: usable_m,
    }),
  );
  const usable_m = sizes[size]?.usable_m ?? 0;
  for (let i = 0; i < taken_m.length; i++) {
    const length_m = Number(taken_m[i]);
    let from = 0;
    for (let n = 0; n < Number(count[i]); n++) {
      // Coils before the one the last piece of this length went to have no room for it.
      while (from < coils.length && Number(coils[from]?.room_m) + dust_m < length_m) from++;
      let coil = coils[from];
      if (coil === undefined) {
        coil = { stock: size, isOnHand: false, count: new Int32Array(taken_m.length), room_m: usable_m };
        coils.push(coil);
      }
      coil.count[i] = Number(coil.count[i]) + 1;
      coil.room_m -= length_m;
    }
  }
  return trimmed(job, coils);
}

/**
 * One coil after another, each filled with what is worth most: coils on hand first, then of the sizes to buy the one that gives most worth
 * for its cost. With `longestFirst` every coil takes the longest piece that is left. Source: sequential heuristics of the cutting-stock
 * problem.
 */
export function inSequence(
  job: PackingJob,
  value: Float64Array,
  longestFirst: boolean,
  stepsEach: number,
): Packing & { readonly steps: number } {
  const { taken_m, onHand_m, sizes } = job;
  const left = job.count.slice();
  const order = byWorth(taken_m, value);
  const coils: PackedCoil[] = [];
  let steps = 0;
  const take = (count: Int32Array) => {
    for (let i = 0; i < count.length; i++) left[i] = Number(left[i]) - Number(count[i]);
  };
  const byRoom = onHand_m.map((_, stock) => stock).sort((a, b) => Number(onHand_m[a]) - Number(onHand_m[b]));
  for (const stock of byRoom) {
    const fill = bestFill(taken_m, value, order, left, Number(onHand_m[stock]), stepsEach);
    steps += stepsEach;
    if (fill.taken_m === 0) continue;
    take(fill.count);
    coils.push({ stock, isOnHand: true, count: fill.count });
  }
  for (;;) {
    const longest = left.findIndex((count) => count > 0);
    if (longest === -1) break;
    let best: { readonly stock: number; readonly count: Int32Array; readonly gain: number } | null = null;
    for (const [stock, { usable_m, cost }] of sizes.entries()) {
      if (usable_m + dust_m < Number(taken_m[longest]) && longestFirst) continue;
      const fill = bestFill(taken_m, value, order, left, usable_m, stepsEach, longestFirst ? longest : null);
      steps += stepsEach;
      if (fill.taken_m === 0) continue;
      const gain = fill.value / cost;
      if (best === null || gain > best.gain) best = { stock, count: fill.count, gain };
    }
    if (best === null) throw new Error("every piece fits into some coil");
    take(best.count);
    coils.push({ stock: best.stock, isOnHand: false, count: best.count });
  }
  return { ...trimmed(job, coils), steps };
}

/**
 * Values for the next sequence: pieces that came to lie in wasteful coils are worth more than their length, so that they are placed sooner.
 * Source: sequential value correction (Mukhacheva, Belov and Scheithauer), from memory.
 */
export function correctedValues(job: PackingJob, packing: Packing, value: Float64Array): Float64Array {
  const { taken_m, count, onHand_m, sizes } = job;
  const next = value.slice();
  for (const coil of packing.coils) {
    const usable_m = coil.isOnHand ? Number(onHand_m[coil.stock]) : Number(sizes[coil.stock]?.usable_m);
    const used_m = takenOf(taken_m, coil.count);
    for (let i = 0; i < taken_m.length; i++) {
      const own = Number(coil.count[i]);
      if (own === 0) continue;
      const length_m = Number(taken_m[i]);
      const wished = length_m ** 1.02 * (usable_m / used_m);
      const weight = Number(count[i]) / own;
      next[i] = (weight * Number(next[i]) + wished) / (weight + 1);
    }
  }
  return next;
}
