import { type Account, account, geometry, input, remark } from "../account.ts";
import { say } from "../finding.ts";

/** Lowest and highest height, m, of how many; null when there are none. Heights that are not known (NaN) do not count. */
export function heightRange(
  height_m: ArrayLike<number>,
): { readonly lowest_m: number; readonly highest_m: number; readonly known: number } | null {
  let [lowest_m, highest_m, known] = [Infinity, -Infinity, 0];
  for (let i = 0; i < height_m.length; i++) {
    const each_m = Number(height_m[i]);
    if (Number.isNaN(each_m)) continue;
    lowest_m = Math.min(lowest_m, each_m);
    highest_m = Math.max(highest_m, each_m);
    known++;
  }
  return known === 0 ? null : { lowest_m, highest_m, known };
}

/** How the difference of heights came about, m. */
export function heightDifferenceAccount(lowest_m: number, highest_m: number, of: string): Account {
  return account(
    {
      formula: say`The highest height less the lowest, of all that the project has.`,
      inputs: [input("Highest", "length", highest_m), input("Lowest", "length", lowest_m), remark("Heights", of)],
      source: geometry,
    },
    (most_m, least_m) => Number(most_m) - Number(least_m),
  );
}
