/** Coils that can be filled. `cost` is what is minimised: a price, or metres. */
export interface StockSize {
  readonly usable_m: number;
  readonly cost: number;
}

/** What is packed: lengths, coils on hand (usable metres, free), and sizes to buy, each with a cost above 0. */
export interface PackingJob {
  readonly taken_m: Float64Array;
  readonly count: Int32Array;
  readonly onHand_m: readonly number[];
  readonly sizes: readonly StockSize[];
}

/** A coil with what is cut from it. */
export interface PackedCoil {
  /** Place in `onHand_m`, or in `sizes`. */
  readonly stock: number;
  readonly isOnHand: boolean;
  readonly count: Int32Array;
}

export interface Packing {
  readonly coils: readonly PackedCoil[];
  readonly cost: number;
}

/** Rounding dust of lengths, metres. */
export const dust_m = 1e-7;

/** Which of some rooms is the tightest that holds so much; -1 when none does. */
export function tightest(rooms_m: readonly number[], taken_m: number): number {
  return rooms_m.reduce(
    (best, room, k) => (room + dust_m >= taken_m && (best === -1 || room < Number(rooms_m[best])) ? k : best),
    -1,
  );
}

/** Length that is cut from a coil. */
export function takenOf(taken_m: Float64Array, count: Int32Array): number {
  let sum_m = 0;
  for (let i = 0; i < count.length; i++) sum_m += Number(count[i]) * Number(taken_m[i]);
  return sum_m;
}

/** The same coils, each bought one in the cheapest size that holds what is cut from it; coils with nothing cut are left out. */
export function trimmed({ taken_m, sizes }: PackingJob, coils: readonly PackedCoil[]): Packing {
  const kept: PackedCoil[] = [];
  let cost = 0;
  for (const coil of coils) {
    const sum_m = takenOf(taken_m, coil.count);
    if (sum_m === 0) continue;
    if (coil.isOnHand) {
      kept.push(coil);
      continue;
    }
    let stock = coil.stock;
    sizes.forEach((size, s) => {
      if (size.usable_m + dust_m >= sum_m && size.cost < Number(sizes[stock]?.cost)) stock = s;
    });
    cost += Number(sizes[stock]?.cost);
    kept.push({ ...coil, stock });
  }
  return { coils: kept, cost };
}
