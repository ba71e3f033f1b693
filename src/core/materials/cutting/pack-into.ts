import { dust_m } from "./packing.ts";

/** What trying to fill certain coils came to: how much of each length lies in which, that it cannot be done, or that the search was given up. */
export type PackedInto =
  | { readonly kind: "packed"; readonly coils: readonly Int32Array[] }
  | { readonly kind: "impossible" }
  | { readonly kind: "given-up" };

/**
 * Packs all pieces into coils of these usable lengths, or proves that it cannot be done. The longest piece left goes into some coil; that
 * coil is then filled in every way that leaves no room for another piece, fullest first. A branch ends when more would be wasted than there is to waste. Source: bin completion
 * (Martello and Toth; Korf), from memory. Gives up after so many steps.
 */
export function packInto(
  taken_m: Float64Array,
  count: Int32Array,
  coils_m: readonly number[],
  steps: number,
): PackedInto {
  const m = taken_m.length;
  const left = count.slice();
  const filled: { coil: number; count: Int32Array }[] = [];
  const isUsed = coils_m.map(() => false);
  const failed = new Set<string>();
  let isGivenUp = false;
  let needed_m = 0;
  for (let i = 0; i < m; i++) needed_m += Number(count[i]) * Number(taken_m[i]);
  const slack_m = coils_m.reduce((sum_m, each) => sum_m + each, 0) - needed_m;

  const search = (waste_m: number): boolean => {
    let longest = 0;
    while (longest < m && Number(left[longest]) === 0) longest++;
    if (longest === m) return true;
    if (steps <= 0) {
      isGivenUp = true;
      return false;
    }
    const key = `${left.join()}|${isUsed.map(Number).join("")}`;
    if (failed.has(key)) return false;
    const tried = new Set<number>();
    for (const [coil, room_m] of coils_m.entries()) {
      if (isUsed[coil] || tried.has(room_m) || room_m + dust_m < Number(taken_m[longest])) continue;
      tried.add(room_m);
      isUsed[coil] = true;
      for (const fill of fills(longest, room_m, waste_m)) {
        for (let i = 0; i < m; i++) left[i] = Number(left[i]) - Number(fill.count[i]);
        filled.push({ coil, count: fill.count });
        if (search(waste_m - fill.waste_m)) return true;
        filled.pop();
        for (let i = 0; i < m; i++) left[i] = Number(left[i]) + Number(fill.count[i]);
        if (isGivenUp) break;
      }
      isUsed[coil] = false;
      if (isGivenUp) return false;
    }
    failed.add(key);
    return false;
  };

  /** Every choice with the longest piece that cannot take another piece and wastes no more than may be wasted, least waste first. */
  const fills = (longest: number, room_m: number, waste_m: number) => {
    const found: { readonly count: Int32Array; readonly waste_m: number }[] = [];
    const chosen = new Int32Array(m);
    chosen[longest] = 1;
    const least = (k: number): number => {
      for (let i = m - 1; i >= k; i--) if (Number(left[i]) > Number(chosen[i])) return Number(taken_m[i]);
      return Infinity;
    };
    const choose = (k: number, room: number, skipped_m: number): void => {
      if (steps-- <= 0) {
        isGivenUp = true;
        return;
      }
      let next = k;
      while (next < m && (Number(left[next]) - Number(chosen[next]) <= 0 || Number(taken_m[next]) > room + dust_m))
        next++;
      if (next === m || room + dust_m < least(next)) {
        // Room for a piece that was passed over: another choice has it.
        if (room + dust_m < skipped_m && room <= waste_m + dust_m) found.push({ count: chosen.slice(), waste_m: room });
        return;
      }
      const length_m = Number(taken_m[next]);
      const before = Number(chosen[next]);
      const free = Number(left[next]) - before;
      const most = Math.min(free, Math.floor((room + dust_m) / length_m));
      for (let take = most; take >= 0; take--) {
        chosen[next] = before + take;
        choose(next + 1, room - take * length_m, take < free ? Math.min(skipped_m, length_m) : skipped_m);
        if (isGivenUp) break;
      }
      chosen[next] = before;
    };
    choose(longest, room_m - Number(taken_m[longest]), Infinity);
    return found.sort((a, b) => a.waste_m - b.waste_m);
  };

  if (slack_m < -dust_m * Math.max(1, coils_m.length)) return { kind: "impossible" };
  if (!search(slack_m)) return { kind: isGivenUp ? "given-up" : "impossible" };
  const result: Int32Array[] = coils_m.map(() => new Int32Array(m));
  for (const { coil, count: own } of filled) result[coil] = own;
  return { kind: "packed", coils: result };
}
