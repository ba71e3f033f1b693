import type { SetUnit } from "./set-units.ts";
import { type PartBase, splitEvenly } from "./split-evenly.ts";

/** Laterals of each set. */
export type Sets = readonly (readonly number[])[];

/** No count of sets below this can do: what the flow takes, what borders make of it, and what the person pinned. */
export function leastSets(units: readonly SetUnit[], most_lps: number): number {
  const pinned = units.reduce((most, { pin }) => Math.max(most, pin), 0);
  const all_lps = units.reduce((sum_lps, { flow_lps }) => sum_lps + flow_lps, 0);
  // An even split of what fills sets to the brim misses by rounding.
  const byFlow = Math.ceil(all_lps / most_lps - 1e-9);
  const filled = pinned > 0 ? 0 : filledGreedily(units, most_lps);
  return Math.max(1, pinned, filled, Math.min(byFlow, units.length));
}

/** Fill one after the other: the fewest there can be, as no set may leave out a row between two of its own. */
function filledGreedily(units: readonly SetUnit[], most_lps: number): number {
  let [count, flow_lps] = [0, Infinity];
  units.forEach((unit, i) => {
    flow_lps += unit.flow_lps;
    if (flow_lps <= most_lps && units[i - 1]?.border === unit.border) return;
    count += 1;
    flow_lps = unit.flow_lps;
  });
  return count;
}

/**
 * So many sets of rows that follow each other, as even as can be; none over `most_lps` but a row that is so by itself; pinned rows in the set that
 * is asked for. null: that cannot be done with this count.
 */
export function evenSets(units: readonly SetUnit[], count: number, most_lps: number): Sets | null {
  const free = units.filter(({ pin }) => pin === 0);
  const order = setOrder(units, count);
  if (order === null) return null;
  const bases = order.map((set): PartBase => {
    const own = units.filter(({ pin }) => pin === set);
    const borders = new Set(own.map(({ border }) => border));
    const [border = null] = borders;
    return { flow: own.reduce((sum, { flow_lps }) => sum + flow_lps, 0), border: borders.size > 1 ? null : border };
  });
  if (bases.some(({ flow }) => flow > most_lps)) return null;
  const ends = splitEvenly(
    free.map(({ flow_lps, border }) => ({ flow: flow_lps, border })),
    bases,
    most_lps,
  );
  if (ends === null) return null;
  const sets: (readonly number[])[] = Array.from({ length: count }, () => []);
  order.forEach((set, i) => {
    const window = free.slice(ends[i - 1] ?? 0, ends[i]);
    const own = units.filter(({ pin }) => pin === set);
    sets[set - 1] = [...own, ...window].flatMap(({ laterals }) => laterals).sort((a, b) => a - b);
  });
  return sets;
}

/** Numbers of the sets in the order in which rows come to them: pinned ones about where their rows lie, the others around them. */
function setOrder(units: readonly SetUnit[], count: number): readonly number[] | null {
  const places = new Map<number, number[]>();
  units.forEach(({ pin }, i) => {
    if (pin > 0) places.set(pin, [...(places.get(pin) ?? []), (i + 0.5) / units.length]);
  });
  if ([...places.keys()].some((pin) => pin > count)) return null;
  const pinned = [...places]
    .map(([set, at]) => ({ set, at: at.reduce((sum, each) => sum + each, 0) / at.length }))
    .sort((a, b) => a.at - b.at || a.set - b.set);
  const slots = new Map<number, number>();
  let last = -1;
  pinned.forEach(({ set, at }, i) => {
    const slot = Math.min(Math.max(Math.floor(at * count), last + 1), count - (pinned.length - i));
    slots.set(slot, set);
    last = slot;
  });
  const others = Array.from({ length: count }, (_, i) => i + 1).filter((set) => !places.has(set));
  let next = 0;
  return Array.from({ length: count }, (_, slot) => slots.get(slot) ?? others[next++] ?? 0);
}
