import { dust_m } from "./packing.ts";

/**
 * Fewest coils of one size that pieces can come from, by how they go together: two longer than half a coil never share one, nor does one
 * with a piece that is longer than what it leaves. For every length as the shortest that is looked at: long pieces need a coil each, and
 * what the middling ones need more than the long ones leave needs coils of its own. Lengths are descending. Source: Martello and Toth,
 * lower bound L2 of bin packing, from memory.
 */
export function pairsBound(taken_m: Float64Array, count: Int32Array, usable_m: number): number {
  const n = taken_m.length;
  const room_m = usable_m + dust_m;
  const pieces = new Float64Array(n + 1);
  const sum_m = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    pieces[i + 1] = Number(pieces[i]) + Number(count[i]);
    sum_m[i + 1] = Number(sum_m[i]) + Number(count[i]) * Number(taken_m[i]);
  }
  /** How many lengths are longer than this. */
  const longer = (length_m: number): number => {
    let low = 0;
    let high = n;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (Number(taken_m[middle]) > length_m) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  const half = longer(room_m / 2);
  let most = Number(pieces[half]);
  for (let last = half; last < n; last++) {
    const alone = Math.min(half, longer(room_m - Number(taken_m[last])));
    const shared = Number(pieces[half]) - Number(pieces[alone]);
    const left_m = shared * room_m - (Number(sum_m[half]) - Number(sum_m[alone]));
    const more_m = Number(sum_m[last + 1]) - Number(sum_m[half]) - left_m;
    most = Math.max(most, Number(pieces[half]) + Math.max(0, Math.ceil(more_m / room_m - 1e-9)));
  }
  return most;
}
