/**
 * The shortest line over stations `at` (ascending) that stays within `low` and `high` at each of them: a string pulled taut through
 * gates. Where it begins and ends the two are the same. Gives its height at every station.
 */
export function tautBetween(at: readonly number[], low: readonly number[], high: readonly number[]): readonly number[] {
  const last = at.length - 1;
  const taut = [...low];
  const number = (list: readonly number[], i: number): number => list[i] ?? 0;
  for (let from = 0; from < last; ) {
    const slopeTo = (i: number, height: number): number =>
      (height - number(taut, from)) / (number(at, i) - number(at, from));
    let least = { slope: -Infinity, i: last, height: number(low, last) };
    let most = { slope: Infinity, i: last, height: number(high, last) };
    let bend = { i: last, height: number(low, last) };
    for (let i = from + 1; i <= last; i++) {
      const lowest = slopeTo(i, number(low, i));
      const highest = slopeTo(i, number(high, i));
      if (lowest > most.slope || highest < least.slope) {
        bend = lowest > most.slope ? most : least;
        break;
      }
      if (lowest >= least.slope) least = { slope: lowest, i, height: number(low, i) };
      if (highest <= most.slope) most = { slope: highest, i, height: number(high, i) };
    }
    const slope = slopeTo(bend.i, bend.height);
    for (let i = from + 1; i <= bend.i; i++) taut[i] = number(taut, from) + slope * (number(at, i) - number(at, from));
    from = bend.i;
  }
  return taut;
}
