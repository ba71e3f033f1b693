import type { MainLineSettings } from "../project/project.ts";
import type { Route } from "./route.ts";

/** What a main line costs, as far as it is priced; in the project's currency. */
export interface RouteCost {
  /** Of what is priced; null when nothing is. */
  readonly price: number | null;
  readonly trench: number | null;
  readonly crossings: number | null;
  /** The pipe to be bought. */
  readonly pipe: number | null;
}

/** The cost of a route: metres of trench and crossings at their prices, and the pipe at that of the shopping list (null: not priced). */
export function routeCost(
  { length_m, crossings }: Pick<Route, "length_m" | "crossings">,
  { trenchPrice_pm, crossingPrice }: Pick<MainLineSettings, "trenchPrice_pm" | "crossingPrice">,
  pipe: number | null,
): RouteCost {
  const trench = trenchPrice_pm === null ? null : length_m * trenchPrice_pm;
  const crossed = crossingPrice === null ? null : crossings * crossingPrice;
  const priced = [trench, crossed, pipe].flatMap((each) => (each === null ? [] : [each]));
  return {
    price: priced.length === 0 ? null : priced.reduce((sum, each) => sum + each, 0),
    trench,
    crossings: crossed,
    pipe,
  };
}
