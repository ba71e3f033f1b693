import type { MaterialSettings } from "../project/project.ts";

/** What the patterns of valves are compared by. */
const compared = /^(row-cock|set-valve|set-regulator|valve-box|controller|valve-wire|main-pipe-)/;

/** What the price list asks for a piece (a metre of wire) of valves, what goes with them, and sticks of pipe: the cheapest package of each article. */
export function articlePrices({ prices }: Pick<MaterialSettings, "prices">): Readonly<Record<string, number>> {
  const cheapest: Record<string, number> = {};
  for (const { article, size, price } of prices) {
    if (price === null || !compared.test(article)) continue;
    cheapest[article] = Math.min(cheapest[article] ?? Infinity, price / size);
  }
  return cheapest;
}
