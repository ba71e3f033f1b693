/** What was found to put into one coil: how many of each length, what they are worth and what they take. */
export interface Fill {
  readonly count: Int32Array;
  readonly value: number;
  readonly taken_m: number;
  /** No fill is worth more than this; equal to `value` when the search came to its end. */
  readonly most: number;
}

/** A ten-millionth of a metre, or of a value: no gain. */
const dust = 1e-7;

/** Lengths in the order of what they are worth for their length, dearest first; those worth nothing left out. */
export function byWorth(taken_m: Float64Array, value: Float64Array): Int32Array {
  const worth = value.map((each, i) => each / Number(taken_m[i]));
  const order: number[] = [];
  for (let i = 0; i < value.length; i++) if (Number(value[i]) > 0) order.push(i);
  return Int32Array.from(order.sort((a, b) => Number(worth[b]) - Number(worth[a]) || a - b));
}

/**
 * The most valuable choice of pieces that fits into so much of a coil: a bounded knapsack by branch and bound over lengths in the order of
 * `byWorth`. Stops after so many steps with the best it has. `must` is a length of which at least one is taken.
 */
export function bestFill(
  taken_m: Float64Array,
  value: Float64Array,
  order: Int32Array,
  left: Int32Array,
  room_m: number,
  steps: number,
  must: number | null = null,
): Fill {
  const mine: number[] = [];
  for (let k = 0; k < order.length; k++) {
    const i = Number(order[k]);
    if (Number(left[i]) > 0 && Number(taken_m[i]) <= room_m + dust) mine.push(i);
  }
  const n = mine.length;
  // Shortest of those still to come: less room than that is no room.
  const shortest_m = new Float64Array(n + 1).fill(Infinity);
  for (let k = n - 1; k >= 0; k--)
    shortest_m[k] = Math.min(Number(shortest_m[k + 1]), Number(taken_m[Number(mine[k])]));
  const takes = new Int32Array(n);
  let depth = 0;
  let best: readonly (readonly [i: number, take: number])[] = [];
  let bestValue = must === null ? 0 : Number(value[must]);
  let bestRoom_m = must === null ? room_m : room_m - Number(taken_m[must]);
  let isCut = false;
  let open = 0;

  const keep = (sum: number, room: number): void => {
    bestValue = sum;
    bestRoom_m = room;
    const path: (readonly [number, number])[] = [];
    for (let k = 0; k < depth; k++) if (Number(takes[k]) > 0) path.push([Number(mine[k]), Number(takes[k])]);
    best = path;
  };
  const search = (k: number, room: number, sum: number): void => {
    if (sum > bestValue + dust * Math.max(1, sum)) keep(sum, room);
    let next = k;
    while (next < n && Number(taken_m[Number(mine[next])]) > room + dust) takes[next++] = 0;
    if (next >= n || room + dust < Number(shortest_m[next])) return;
    const i = Number(mine[next]);
    const length_m = Number(taken_m[i]);
    const reach = sum + (Math.max(0, room) * Number(value[i])) / length_m;
    if (reach <= bestValue + dust * Math.max(1, bestValue)) return;
    if (steps <= 0) {
      isCut = true;
      open = Math.max(open, reach);
      return;
    }
    // Passing over pieces that are too long is work too.
    steps -= 1 + (next - k) / 32;
    const fits = Math.min(Number(left[i]) - (i === must ? 1 : 0), Math.floor((room + dust) / length_m));
    for (let take = fits; take >= 0; take--) {
      takes[next] = take;
      depth = next + 1;
      search(next + 1, room - take * length_m, sum + take * Number(value[i]));
    }
    depth = k;
  };
  search(0, bestRoom_m, bestValue);
  const count = new Int32Array(taken_m.length);
  if (must !== null) count[must] = 1;
  for (const [i, take] of best) count[i] = Number(count[i]) + take;
  return {
    count,
    value: bestValue,
    taken_m: room_m - bestRoom_m,
    most: isCut ? Math.max(open, bestValue) : bestValue,
  };
}
