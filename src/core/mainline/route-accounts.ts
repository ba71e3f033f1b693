import { type Account, account, commonPractice, geometry, input, inputs, remark } from "../account.ts";
import { say } from "../finding.ts";
import type { MainLineSettings } from "../project/project.ts";
import { legLengths_m, type Route } from "./route.ts";
import type { RouteCost } from "./route-cost.ts";

/** How the length of the route came about, m. */
export function routeLengthAccount(route: Route): Account {
  return account(
    {
      formula: say`The straight legs of the route, measured level and added up; where rows share a trench it counts once. Laid where trench and crossings together cost least.`,
      inputs: [inputs("Legs", "length", [...legLengths_m(route)].slice(1)), ...drawnInputs(route)],
      source: geometry,
    },
    (legs_m) => Number(legs_m),
  );
}

function drawnInputs(route: Route) {
  const legs_m = legLengths_m(route);
  const drawn = legs_m.reduce((sum, each, i) => (route.isDrawn[i] === 1 ? sum + each : sum), 0);
  return drawn === 0 ? [] : [remark("Of it along the line that was drawn", input("", "length", drawn).value)];
}

/** How the length of the route along the ground came about, m. */
export function routeGroundLengthAccount(route: Route, groundLength_m: number): Account {
  return account(
    {
      formula: say`The length on the level and what slopes add to it: the ground's height is taken about every post spacing along the route.`,
      inputs: [
        input("On the level", "length", route.length_m),
        input("Slopes add", "length", groundLength_m - route.length_m),
      ],
      source: geometry,
    },
    (level_m, more_m) => Number(level_m) + Number(more_m),
  );
}

/** How the number of row tees came about. */
export function teesAccount(route: Route): Account {
  return account(
    {
      formula: say`One for every row that the trench gets to.`,
      inputs: [
        input("Rows", "count", route.waterEnd.length),
        input("Rows not reached", "count", route.unreached.length),
      ],
      source: commonPractice,
    },
    (rows, unreached) => Number(rows) - Number(unreached),
  );
}

/** How the number of crossings came about. */
export function crossingsAccount(route: Route): Account {
  return account(
    {
      formula: say`Times that the trench crosses a road, stream or fence that may be crossed; counted.`,
      inputs: [input("Crossings", "count", route.crossings)],
      source: geometry,
    },
    (crossings) => Number(crossings),
  );
}

/** How the cost of the main line came about, in the project's currency. */
export function routeCostAccount(route: Route, settings: MainLineSettings, cost: RouteCost): Account {
  const missing = [
    ...(cost.trench === null ? ["trench"] : []),
    ...(cost.crossings === null && route.crossings > 0 ? ["crossings"] : []),
    ...(cost.pipe === null ? ["pipe"] : []),
  ];
  return account(
    {
      formula: say`Metres of trench and crossings at their prices, and the pipe as the shopping list has it; added up, as far as it is priced.`,
      inputs: [
        ...(settings.trenchPrice_pm === null
          ? []
          : [
              remark("Length of trench", input("", "length", route.length_m).value),
              input("Trench, dug and filled", "count", cost.trench ?? 0),
            ]),
        ...(settings.crossingPrice === null
          ? []
          : [remark("Number of crossings", String(route.crossings)), input("Crossings", "count", cost.crossings ?? 0)]),
        ...(cost.pipe === null ? [] : [input("Pipe to be bought", "count", cost.pipe)]),
        ...(missing.length === 0 ? [] : [remark("Not priced, not in it", missing.join(", "))]),
      ],
      source: "the project’s prices",
    },
    (...prices) => prices.reduce((sum, each) => sum + each, 0),
  );
}
