import { type Account, account, geometry, input, inputs } from "../account.ts";
import { say } from "../finding.ts";
import { legLengths_m, type Route } from "../mainline/route.ts";
import type { Profile } from "./trench.ts";

/** How long a branch is on the level: its legs added up. */
export function branchLengthAccount(route: Route, points: readonly number[]): Account {
  const legs_m = legLengths_m(route);
  return account(
    {
      formula: say`The straight pieces of the branch added up, on the level.`,
      inputs: [
        inputs(
          "Pieces",
          "length",
          points.slice(1).map((point) => legs_m[point] ?? 0),
        ),
      ],
      source: geometry,
    },
    (sum_m) => Number(sum_m),
  );
}

/** How much longer a branch is along the ground. */
export function branchSlopeAccount({ station_m, slopeStation_m }: Profile): Account {
  const level_m = station_m.at(-1) ?? 0;
  return account(
    {
      formula: say`Level length and what the rises and falls of the ground add, from heights about a post spacing apart.`,
      inputs: [
        input("On the level", "length", level_m),
        input("Added by the slope", "length", (slopeStation_m.at(-1) ?? 0) - level_m),
      ],
      source: geometry,
    },
    (level, more) => Number(level) + Number(more),
  );
}
