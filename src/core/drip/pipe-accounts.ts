import { type Account, account, accountInWords, commonPractice, geometry, input, inputs, remark } from "../account.ts";
import { say } from "../finding.ts";
import type { PatternCost, PipeLine, Watering } from "./watering.ts";

/** How the length of some pipes of one size came about, m. */
export function pipeLengthAccount(pipes: readonly Pick<PipeLine, "length_m">[]): Account {
  return account(
    {
      formula: say`The legs of the route that pipe of this size lies along, by the ground, added up.`,
      inputs: [
        inputs(
          "Runs of it",
          "length",
          pipes.map(({ length_m }) => length_m),
        ),
      ],
      source: geometry,
    },
    (sum_m = 0) => sum_m,
  );
}

/** How many valves a pattern takes. */
export function valvesAccount({ pattern, valves }: PatternCost): Account {
  const isEachRow = pattern === "cock-a-row";
  return account(
    {
      formula: isEachRow ? say`One on the riser of every row that is fed.` : say`One for each set.`,
      inputs: [input(isEachRow ? "Rows that are fed" : "Sets", "count", valves)],
      source: commonPractice,
    },
    (count = 0) => count,
  );
}

/** How the length of a pattern's pipe came about, m. */
export function patternPipeAccount({ pattern, pipe_m }: PatternCost): Account {
  const lies = {
    "cock-a-row": say`One line along the whole route.`,
    "valve-a-set": say`The main line to every set's valve, and from there a line of its own to the tees of each set; along some legs both lie.`,
    "valves-at-source": say`A line of its own for each set, from the source to its tees; along many legs several lie.`,
  };
  return account(
    { formula: lies[pattern], inputs: [input("Pipe by the ground", "length", pipe_m)], source: geometry },
    (sum_m = 0) => sum_m,
  );
}

/** How a pattern's price came about, or why there is none. */
export function patternPriceAccount({ price }: PatternCost): Account {
  return accountInWords({
    formula:
      price === null
        ? say`Not priced: the price list has not every pipe, valve, box, cap and wire of it.`
        : say`Pipe by the metre, valves, boxes, caps, regulators and wire, each at the cheapest price of the price list, added up; fittings and digging are not in it.`,
    inputs: [remark("Packages", "counted by the piece or the metre, not in whole packages")],
    source: "the price list",
  });
}

/** How much water a cup catches came about, L. */
export function cupAccount({ emitters }: Pick<Watering, "emitters">, emitter: number): Account {
  return account(
    {
      formula: say`The flow of the emitter while its set runs, filter due for cleaning, for three minutes.`,
      inputs: [
        input("Flow", "flow", Number(emitters?.flow_lps[emitter] ?? 0) * 3600),
        input("Time", "time", cupTime_h),
      ],
      source: "pipes solved as a tree from the source to every emitter",
    },
    (flow_lph = 0, time_h = 0) => flow_lph * time_h,
  );
}

/** Three minutes. */
const cupTime_h = 0.05;
