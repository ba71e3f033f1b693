import { combinations, leastByLength, reachable } from "./combinations.ts";
import { dust_m, type StockSize } from "./packing.ts";

/** A run that may be joined at certain places. */
export interface JoinableRun {
  readonly length_m: number;
  readonly joinsAt_m: readonly number[];
}

export interface JoinedJob {
  readonly runs: readonly JoinableRun[];
  readonly onHand_m: readonly number[];
  readonly sizes: readonly StockSize[];
  readonly slop_m: number;
  /** What one piece adds for each joined end. */
  readonly halfJoin_m: number;
}

/** A part of a run. */
export interface Part {
  readonly run: number;
  readonly from_m: number;
  readonly to_m: number;
}

export interface JoinedPacking {
  readonly coils: readonly { readonly stock: number; readonly isOnHand: boolean; readonly parts: readonly Part[] }[];
  readonly cost: number;
  readonly least: number;
}

/** Ways to buy that are tried, cheapest first. */
const tries = 300;

/**
 * Packs runs into coils at the least cost that was found when runs may be joined: as many as will go are cut whole, longest first, and the
 * rest is pieced together from what is left over, joined at allowed places. Only ways to buy under `most` are tried. null when none works.
 */
export function packJoined(job: JoinedJob, most: number): JoinedPacking | null {
  const { runs, onHand_m, sizes, slop_m } = job;
  const needed_m = runs.reduce((sum_m, { length_m }) => sum_m + length_m + slop_m, 0);
  const toBuy_m = needed_m - onHand_m.reduce((sum_m, each) => sum_m + each, 0);
  const least = reachable(sizes, leastByLength(sizes, toBuy_m - dust_m));
  const order = runs.map((_, i) => i).sort((a, b) => Number(runs[b]?.length_m) - Number(runs[a]?.length_m) || a - b);
  const ways = waysToBuy(sizes, toBuy_m - dust_m, least, most);
  const packedBy = (way: number) => {
    const bought = (ways[way]?.counts ?? []).flatMap((n, stock) => Array.from({ length: n }, () => stock));
    const coils = pieced(job, order, [...onHand_m, ...bought.map((stock) => Number(sizes[stock]?.usable_m))]);
    return coils === null ? null : { bought, coils };
  };
  const way = firstThatWorks(ways.length, (each) => packedBy(each) !== null);
  const packed = way === null ? null : packedBy(way);
  if (way === null || packed === null) return null;
  const coils = packed.coils.map((parts, i) =>
    i < onHand_m.length
      ? { stock: i, isOnHand: true, parts }
      : { stock: packed.bought[i - onHand_m.length] ?? 0, isOnHand: false, parts },
  );
  return { coils: coils.filter(({ parts }) => parts.length > 0), cost: ways[way]?.cost ?? 0, least };
}

/**
 * The first of so many ways that works, when dearer ways work too once one does: tried with growing strides, then between the last that did
 * not and the first that did.
 */
function firstThatWorks(ways: number, works: (way: number) => boolean): number | null {
  let failed = -1;
  for (let stride = 1; failed < ways - 1; stride *= 2) {
    const tried = Math.min(failed + stride, ways - 1);
    if (!works(tried)) {
      failed = tried;
      continue;
    }
    let worked = tried;
    while (worked - failed > 1) {
      const middle = Math.floor((worked + failed) / 2);
      if (works(middle)) worked = middle;
      else failed = middle;
    }
    return worked;
  }
  return null;
}

function waysToBuy(sizes: readonly StockSize[], needed_m: number, least: number, most: number) {
  const [only, ...more] = sizes;
  if (only === undefined) return needed_m <= 0 ? [{ counts: [], cost: 0 }] : [];
  if (more.length === 0) {
    const first = Math.max(0, Math.ceil(needed_m / only.usable_m - 1e-9));
    return Array.from({ length: tries }, (_, n) => ({ counts: [first + n], cost: (first + n) * only.cost })).filter(
      ({ cost }) => cost < most - 1e-9,
    );
  }
  // What is dearer than this by a quarter and a coil is worth no look.
  const dearest = sizes.reduce((high, { cost }) => Math.max(high, cost), 0);
  const under = Math.min(most - 1e-9, 1.25 * least + 2 * dearest);
  return (combinations(sizes, needed_m, least - 1e-9, under, 20 * tries) ?? []).slice(0, tries);
}

/** What lies in which coil, or null when something is left over. */
function pieced(
  { runs, slop_m, halfJoin_m }: JoinedJob,
  order: readonly number[],
  coils_m: readonly number[],
): readonly (readonly Part[])[] | null {
  const room_m = Float64Array.from(coils_m);
  const coils: Part[][] = coils_m.map(() => []);
  /** Coils by room, the tightest first. */
  const byRoom = coils_m.map((_, coil) => coil).sort((a, b) => Number(room_m[a]) - Number(room_m[b]) || b - a);
  /** How many coils have less room than this. */
  const below = (room: number): number => {
    let low = 0;
    let high = byRoom.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (Number(room_m[Number(byRoom[middle])]) < room) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  const tightest = (taken_m: number): number => below(taken_m - dust_m);
  const put = (place: number, part: Part, taken_m: number) => {
    const coil = Number(byRoom[place]);
    coils[coil]?.push(part);
    byRoom.splice(place, 1);
    const room = Number(room_m[coil]) - taken_m;
    byRoom.splice(below(room), 0, coil);
    room_m[coil] = room;
  };
  const rest = order.filter((run) => {
    const length_m = Number(runs[run]?.length_m);
    const place = tightest(length_m + slop_m);
    if (place === byRoom.length) return true;
    put(place, { run, from_m: 0, to_m: length_m }, length_m + slop_m);
    return false;
  });
  for (const run of rest) {
    const own = runs[run];
    if (own === undefined) return null;
    let from_m = 0;
    for (;;) {
      const before_m = slop_m + (from_m > 0 ? halfJoin_m : 0);
      const last = tightest(own.length_m - from_m + before_m);
      if (last < byRoom.length) {
        put(last, { run, from_m, to_m: own.length_m }, own.length_m - from_m + before_m);
        break;
      }
      // The roomiest coil gives the longest piece; where it gives none, no coil does.
      const roomiest = byRoom.length - 1;
      const reach_m = from_m + Number(room_m[byRoom[roomiest] ?? -1] ?? 0) - before_m - halfJoin_m + dust_m;
      const join_m = own.joinsAt_m.filter((at) => at > from_m + dust_m && at <= reach_m).at(-1);
      if (join_m === undefined) return null;
      put(roomiest, { run, from_m, to_m: join_m }, join_m - from_m + before_m + halfJoin_m);
      from_m = join_m;
    }
  }
  return coils;
}
