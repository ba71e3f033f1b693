import { leastByLength, reachable } from "./combinations.ts";
import type { CoilSize, CutJob } from "./cut-job.ts";
import type { Cut, CutAnswer, CutCoil, CutPlan } from "./cut-plan.ts";
import { type Lengths, lengthsOf } from "./lengths.ts";
import { nearerRows } from "./nearer-rows.ts";
import { middle, ordered } from "./order-of-work.ts";
import { type Part, packJoined } from "./pack-joined.ts";
import { packWhole } from "./pack-whole.ts";
import { dust_m, type PackedCoil, type PackingJob, tightest } from "./packing.ts";
import { uncutRuns } from "./uncut-runs.ts";
import { usable_m } from "./usable.ts";

/** A size with what it holds after its reserve, and what it counts for. */
interface Stock {
  readonly size: CoilSize;
  readonly usable_m: number;
  readonly cost: number;
}

/**
 * How coils are cut up: without joins, and with joins where that saves. What is minimised is the price of what is bought where every size
 * has one, else the metres bought, which for one size is the number of coils. Coils on hand cost nothing. A coil of length c holds
 * c (1 - reserve share) - reserve; a piece takes its length, half a join's wire at each joined end, and the slop of a cut. Deterministic.
 */
export function cutCoils(job: CutJob): CutPlan {
  const isPriced = job.sizes.every(({ price }) => price !== null);
  const stocks: readonly Stock[] = cheapestOfEach(job.sizes)
    .map((size) => ({
      size,
      usable_m: usable_m(size.length_m, job),
      cost: Math.max(1e-6, isPriced ? Number(size.price) : size.length_m),
    }))
    .filter((stock) => stock.usable_m > 0);
  const onHand = job.onHand_m
    .map((length_m) => ({ length_m, usable_m: usable_m(length_m, job) }))
    .filter((coil) => coil.usable_m > 0);
  const uncut = uncutRuns(
    job,
    stocks.map((stock) => stock.usable_m),
    onHand.map((coil) => coil.usable_m),
  );
  const isUncut = new Set(uncut);
  const kept = job.runs.flatMap((_, run) => (isUncut.has(run) ? [] : [run]));
  const context: Context = { job, stocks, onHand, kept, isPriced };
  const noJoins = uncut.length > 0 ? null : whole(context);
  const fewestCoils = joined(context, noJoins);
  return { noJoins, fewestCoils, chosen: chosenOf(context, noJoins, fewestCoils), uncut };
}

interface Context {
  readonly job: CutJob;
  readonly stocks: readonly Stock[];
  readonly onHand: readonly { readonly length_m: number; readonly usable_m: number }[];
  /** Runs that can be cut. */
  readonly kept: readonly number[];
  readonly isPriced: boolean;
}

/** A length that is offered more than once is bought where it costs least; one without a price only where none has one. */
function cheapestOfEach(sizes: readonly CoilSize[]): readonly CoilSize[] {
  const byLength = new Map<number, CoilSize>();
  for (const size of sizes) {
    const other = byLength.get(size.length_m);
    if (other === undefined || (size.price ?? Infinity) < (other.price ?? Infinity)) byLength.set(size.length_m, size);
  }
  return [...byLength.values()];
}

function whole(context: Context): CutAnswer | null {
  const { job, stocks, onHand, kept } = context;
  const taken_m = kept.map((run) => Number(job.runs[run]?.length_m) + job.slop_m);
  const all = lengthsOf(taken_m);
  const placed = placedOnHand(context, all);
  if (placed === null) return null;
  const packing: PackingJob = {
    taken_m: all.taken_m,
    count: placed.left,
    onHand_m: placed.rooms_m,
    sizes: stocks.map(({ usable_m, cost }) => ({ usable_m, cost })),
  };
  const isNothingLeft = placed.left.every((count) => count === 0);
  const packed = isNothingLeft
    ? { packing: { coils: [], cost: 0 }, least: 0, by: "length" as const }
    : packWhole(packing);
  // Where long pieces were put by rule, only the bound of everything together is proven.
  const proven = placed.coils.size === 0 ? packed : { least: leastByAll(context, taken_m), by: "length" as const };
  const coils = merged(packed.packing.coils, placed.coils);
  const inOrder = ordered(coils, all);
  const nearer = nearerRows(
    inOrder.map(({ coil, runs }) => ({
      runs,
      room_m: usableOf(context, coil) - runs.reduce((sum_m, i) => sum_m + Number(taken_m[i]), 0),
    })),
    taken_m,
  );
  const work = inOrder.map(({ coil }, n) => ({ coil, runs: nearer[n] ?? [] }));
  work.sort((one, other) => middle(one.runs) - middle(other.runs));
  const cutCoils = work.map(({ coil, runs }) => {
    const parts = runs.map((i) => {
      const run = kept[i] ?? 0;
      return { run, from_m: 0, to_m: Number(job.runs[run]?.length_m) };
    });
    return coilOf(context, coil.isOnHand, lengthOf(context, coil), parts);
  });
  return answer(context, cutCoils, onHand, proven.least, proven.by, packed.packing.cost);
}

function leastByAll({ stocks, onHand }: Context, taken_m: readonly number[]): number {
  const needed_m = taken_m.reduce((sum_m, each_m) => sum_m + each_m, 0);
  const toBuy_m = needed_m - onHand.reduce((sum_m, { usable_m }) => sum_m + usable_m, 0);
  return stocks.length === 0 ? 0 : reachable(stocks, leastByLength(stocks, toBuy_m - dust_m));
}

/** Pieces longer than every size can only come from coils on hand: each from the tightest that holds it. null when one finds none. */
function placedOnHand({ stocks, onHand }: Context, { taken_m, count }: Lengths) {
  const longest_m = Math.max(0, ...stocks.map((stock) => stock.usable_m));
  const left = count.slice();
  const rooms_m = onHand.map(({ usable_m }) => usable_m);
  const coils = new Map<number, Int32Array>();
  for (let i = 0; i < taken_m.length && Number(taken_m[i]) > longest_m + dust_m; i++) {
    for (; Number(left[i]) > 0; left[i] = Number(left[i]) - 1) {
      const length_m = Number(taken_m[i]);
      const coil = tightest(rooms_m, length_m);
      if (coil === -1) return null;
      rooms_m[coil] = Number(rooms_m[coil]) - length_m;
      const own = coils.get(coil) ?? new Int32Array(taken_m.length);
      own[i] = Number(own[i]) + 1;
      coils.set(coil, own);
    }
  }
  return { left, rooms_m, coils };
}

function merged(packed: readonly PackedCoil[], placed: ReadonlyMap<number, Int32Array>): readonly PackedCoil[] {
  const rest = new Map(placed);
  const coils = packed.map((coil) => {
    const own = coil.isOnHand ? rest.get(coil.stock) : undefined;
    if (own === undefined) return coil;
    rest.delete(coil.stock);
    return { ...coil, count: coil.count.map((count, i) => count + Number(own[i])) };
  });
  return [...coils, ...[...rest].map(([stock, count]) => ({ stock, isOnHand: true, count }))];
}

function joined(context: Context, noJoins: CutAnswer | null): CutAnswer | null {
  const { job, stocks, onHand, kept } = context;
  if (kept.every((run) => job.runs[run]?.joinsAt_m.length === 0)) return null;
  const most = noJoins === null ? Infinity : costOf(context, noJoins);
  if (noJoins?.isOptimal && noJoins.bound.by === "length") return null;
  const packing = packJoined(
    {
      runs: kept.map((run) => ({ length_m: job.runs[run]?.length_m ?? 0, joinsAt_m: job.runs[run]?.joinsAt_m ?? [] })),
      onHand_m: onHand.map(({ usable_m }) => usable_m),
      sizes: stocks.map(({ usable_m, cost }) => ({ usable_m, cost })),
      slop_m: job.slop_m,
      halfJoin_m: job.joinLength_m / 2,
    },
    most,
  );
  if (packing === null) return null;
  const coils = packing.coils.map((coil) => {
    const parts = coil.parts.map((part) => ({ ...part, run: kept[part.run] ?? 0 }));
    parts.sort((a, b) => a.run - b.run || a.from_m - b.from_m);
    return { coil, parts, at: middle(parts.map(({ run }) => run)) };
  });
  coils.sort((a, b) => a.at - b.at);
  const cut = coils.map(({ coil, parts }) => coilOf(context, coil.isOnHand, lengthOf(context, coil), parts));
  return answer(context, cut, onHand, packing.least, "length", packing.cost);
}

function lengthOf({ stocks, onHand }: Context, coil: { readonly isOnHand: boolean; readonly stock: number }): number {
  return (coil.isOnHand ? onHand[coil.stock]?.length_m : stocks[coil.stock]?.size.length_m) ?? 0;
}

function usableOf({ stocks, onHand }: Context, coil: PackedCoil): number {
  return (coil.isOnHand ? onHand[coil.stock]?.usable_m : stocks[coil.stock]?.usable_m) ?? 0;
}

function coilOf({ job }: Context, isOnHand: boolean, length_m: number, parts: readonly Part[]): CutCoil {
  let left_m = length_m;
  const cuts = parts.map(({ run, from_m, to_m }): Cut => {
    const ends = (from_m > 0 ? 1 : 0) + (to_m < Number(job.runs[run]?.length_m) ? 1 : 0);
    const taken_m = to_m - from_m + (ends * job.joinLength_m) / 2 + job.slop_m;
    left_m -= taken_m;
    return { run, from_m, to_m, taken_m, left_m };
  });
  return { isOnHand, length_m, cuts, left_m };
}

function answer(
  { job, stocks, isPriced }: Context,
  coils: readonly CutCoil[],
  onHand: Context["onHand"],
  least: number,
  by: CutAnswer["bound"]["by"],
  cost: number,
): CutAnswer {
  const bought = stocks
    .map(({ size }) => ({
      size,
      count: coils.filter((coil) => !coil.isOnHand && coil.length_m === size.length_m).length,
    }))
    .filter(({ count }) => count > 0);
  const joins = coils.reduce((sum, { cuts }) => sum + cuts.filter(({ from_m }) => from_m > 0).length, 0);
  const price = bought.reduce<number | null>(
    (sum, { size, count }) => (sum === null || size.price === null ? null : sum + count * size.price),
    0,
  );
  const joinsPrice = joins === 0 ? 0 : job.joinPrice === null ? null : joins * job.joinPrice;
  const needed_m = job.runs.reduce((sum_m, { length_m }) => sum_m + length_m + job.slop_m, 0);
  const toBuy_m = needed_m - onHand.reduce((sum_m, { usable_m }) => sum_m + usable_m, 0);
  const largest_m = Math.max(0, ...stocks.map((stock) => stock.usable_m));
  const byLength = largest_m === 0 ? 0 : Math.max(0, Math.ceil((toBuy_m - dust_m) / largest_m - 1e-9));
  const [only, ...more] = stocks;
  const byCost = only !== undefined && more.length === 0 ? Math.ceil(least / only.cost - 1e-9) : 0;
  return {
    coils,
    bought: bought.map(({ size: { length_m }, count }) => ({ length_m, count })),
    boughtCount: bought.reduce((sum, { count }) => sum + count, 0),
    bought_m: bought.reduce((sum_m, { size, count }) => sum_m + count * size.length_m, 0),
    joins,
    price: price === null || joinsPrice === null || !isPriced ? null : price + joinsPrice,
    bound: { by, coils: Math.max(byLength, byCost), least },
    isOptimal: cost <= least * (1 + 1e-9) + 1e-9,
  };
}

/** In the measure that was minimised. */
function costOf({ stocks, isPriced }: Context, { bought }: CutAnswer): number {
  return bought.reduce((sum, { length_m, count }) => {
    const stock = stocks.find(({ size }) => size.length_m === length_m);
    return sum + count * (isPriced ? Number(stock?.cost) : length_m);
  }, 0);
}

/** Least price where both have one, else least in the measure that was minimised; without joins when nothing is saved. */
function chosenOf(context: Context, noJoins: CutAnswer | null, fewestCoils: CutAnswer | null): CutPlan["chosen"] {
  if (noJoins === null) return fewestCoils === null ? null : "fewestCoils";
  if (fewestCoils === null) return "noJoins";
  const [whole, joint] =
    noJoins.price !== null && fewestCoils.price !== null
      ? [noJoins.price, fewestCoils.price]
      : [costOf(context, noJoins), costOf(context, fewestCoils)];
  return joint < whole - 1e-9 ? "fewestCoils" : "noJoins";
}
