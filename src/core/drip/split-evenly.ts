/** What goes into one part before anything is split: what the person put there. */
export interface PartBase {
  readonly flow: number;
  /** Of the units in it; null: nothing is in it, or units on both sides of a border. */
  readonly border: number | null;
}

/**
 * Where a line of units is cut into parts that follow each other: the ends of the parts (units before the end), with the least sum of
 * (flow - mean)². No part goes over `most`, unless it is a single unit that does by itself; none crosses a border; a part may take no unit only
 * where its base holds something. null: it cannot be done.
 */
export function splitEvenly(
  units: readonly { readonly flow: number; readonly border: number }[],
  bases: readonly PartBase[],
  most: number,
): readonly number[] | null {
  const n = units.length;
  const before = new Float64Array(n + 1);
  const runFrom = new Int32Array(n + 1);
  units.forEach(({ flow, border }, i) => {
    before[i + 1] = Number(before[i]) + flow;
    runFrom[i + 1] = units[i - 1]?.border === border ? Number(runFrom[i]) : i;
  });
  const mean = bases.reduce((sum, { flow }) => sum + flow, Number(before[n])) / bases.length;
  let least = new Float64Array(n + 1).fill(Infinity);
  least[0] = 0;
  const cuts = bases.map((base) => {
    const next = new Float64Array(n + 1).fill(Infinity);
    const cut = new Int32Array(n + 1);
    for (let to = 0; to <= n; to++) {
      if (base.flow > 0) next[to] = Number(least[to]) + (base.flow - mean) ** 2;
      cut[to] = to;
      if (base.flow > 0 && base.border !== (units[to - 1]?.border ?? base.border)) continue;
      for (let from = to - 1; from >= Number(runFrom[to]); from--) {
        const flow = base.flow + Number(before[to]) - Number(before[from]);
        if (flow > most && (to - from > 1 || base.flow > 0)) break;
        const sum = Number(least[from]) + (flow - mean) ** 2;
        if (sum < Number(next[to])) {
          next[to] = sum;
          cut[to] = from;
        }
      }
    }
    least = next;
    return cut;
  });
  if (least[n] === Infinity) return null;
  let end = n;
  return cuts
    .map((_, i) => {
      const here = end;
      end = Number(cuts[cuts.length - 1 - i]?.[end]);
      return here;
    })
    .reverse();
}
