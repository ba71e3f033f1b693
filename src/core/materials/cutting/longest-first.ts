import { dust_m, type PackedCoil, type Packing, type PackingJob, trimmed } from "./packing.ts";

/**
 * One coil after another: the longest piece that is left, then as much more as a short search finds, so many steps a coil. Coils on hand
 * first, the shortest first; bought ones are of one size. Quick where lengths are many: a step costs a look for the next length that fits,
 * whatever their number.
 */
export function longestFirst(job: PackingJob, size: number, stepsEach: number): Packing {
  const { taken_m, onHand_m, sizes } = job;
  const remaining = remainingOf(job);
  const coils: PackedCoil[] = [];
  const fill = (stock: number, isOnHand: boolean, room_m: number): boolean => {
    const chosen = fullest(taken_m, remaining, room_m, stepsEach);
    if (chosen.length === 0) return false;
    const count = new Int32Array(taken_m.length);
    for (const i of chosen) {
      count[i] = Number(count[i]) + 1;
      remaining.take(i);
    }
    coils.push({ stock, isOnHand, count });
    return true;
  };
  const byRoom = onHand_m.map((_, stock) => stock).sort((a, b) => Number(onHand_m[a]) - Number(onHand_m[b]));
  for (const stock of byRoom) fill(stock, true, Number(onHand_m[stock]));
  while (fill(size, false, Number(sizes[size]?.usable_m))) {
    // Until nothing is left.
  }
  return trimmed(job, coils);
}

/** Lengths of which pieces are left, longest first. */
interface Remaining {
  /** The first length from here on of which a piece is left; as many as there are lengths when there is none. */
  readonly from: (i: number) => number;
  readonly left: Int32Array;
  readonly take: (i: number) => void;
}

function remainingOf({ count }: PackingJob): Remaining {
  const left = count.slice();
  const next = Int32Array.from({ length: left.length + 1 }, (_, i) => i);
  const from = (start: number): number => {
    let end = start;
    while (Number(next[end]) !== end) end = Number(next[end]);
    // What was passed is passed in one step the next time.
    for (let i = start; Number(next[i]) !== end && i !== end; ) {
      const after = Number(next[i]);
      next[i] = end;
      i = after;
    }
    return end;
  };
  for (let i = 0; i < left.length; i++) if (Number(left[i]) === 0) next[i] = i + 1;
  const take = (i: number): void => {
    left[i] = Number(left[i]) - 1;
    if (Number(left[i]) === 0) next[i] = i + 1;
  };
  return { from, left, take };
}

/** The pieces, longest first, that fill so much the fullest: the longest that fits is among them. */
function fullest(taken_m: Float64Array, { from, left }: Remaining, room_m: number, steps: number): readonly number[] {
  const n = taken_m.length;
  /** The longest length from a place on that fits and of which a piece is left. */
  const fitting = (start: number, room: number): number => {
    let low = start;
    let high = n;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (Number(taken_m[middle]) <= room + dust_m) high = middle;
      else low = middle + 1;
    }
    return from(low);
  };
  const chosen: number[] = [];
  let best: readonly number[] = [];
  let bestRoom_m = Infinity;
  const search = (start: number, room: number, used: number): void => {
    if (room < bestRoom_m) {
      bestRoom_m = room;
      best = [...chosen];
    }
    let i = start < n && used < Number(left[start]) ? fitting(start, room) : fitting(Math.min(n, start + 1), room);
    while (i < n && bestRoom_m > dust_m) {
      const length_m = Number(taken_m[i]);
      if (steps-- <= 0) return;
      chosen.push(i);
      search(i, room - length_m, i === start ? used + 1 : 1);
      chosen.pop();
      if (chosen.length === 0) return;
      i = from(i + 1);
    }
  };
  const longest = fitting(0, room_m);
  if (longest === n) return [];
  chosen.push(longest);
  search(longest, room_m - Number(taken_m[longest]), 1);
  return best;
}
