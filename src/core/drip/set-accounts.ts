import { type Account, account, commonPractice, input, inputs, remark } from "../account.ts";
import { say } from "../finding.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import { mostFlowAccount } from "./supply-accounts.ts";
import type { Watering, WaterSet } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** How many sets there are, and why so many. */
export function setsAccount(job: WateringJob, { sets, isShort }: Watering): Account {
  const { count, follow } = job.sets;
  const why =
    count !== null
      ? "As many as are asked for"
      : isShort
        ? "The number of sets that leaves the rows least short"
        : "The fewest that the water feeds with its reserve";
  const borders = follow === "rows" ? "" : `, never across ${follow}`;
  const most_lph = mostFlowAccount(job)?.value ?? null;
  return account(
    {
      formula: say`${why}; rows side by side run together${borders}, so that every set takes about the same.`,
      inputs: [
        input("Sets", "count", sets.length),
        remark(
          "They take",
          inputs(
            "",
            "flow",
            sets.map(({ flow_lps }) => flow_lps * 3600),
          ).value,
        ),
        ...(most_lph === null ? [] : [remark("A set may take", input("", "flow", most_lph).value)]),
      ],
      source: commonPractice,
    },
    (sets_count = 0) => sets_count,
  );
}

/** How the flow of a set came about, L/h. */
export function setFlowAccount({ evenness }: WaterSet): Account {
  return account(
    {
      formula: say`Emitters of its rows times what each gives in the mean, each at its own pressure while the set runs.`,
      inputs: [input("Emitters", "count", evenness.emitters), input("In the mean", "flow", evenness.mean_lps * 3600)],
      source: "pipes solved as a tree from the source to every emitter",
    },
    (emitters = 0, mean_lph = 0) => emitters * mean_lph,
  );
}

/** How the pressure came about that a set has to spare, kPa: at the row tee that has least of it. `row` is that row's name. */
export function spareAccount({ water }: WateringJob, watering: Watering, set: WaterSet, row: string): Account {
  const needed_m = watering.laterals[set.sparest]?.inlet_m ?? 0;
  return account(
    {
      formula: say`What is left at the tee of row ${row} while the set runs, less what that row needs there for its emitters to give their flow; both as pressure over the source.`,
      inputs: [
        input("There is", "pressure", pressureOf_kpa(needed_m + set.spare_m)),
        input("The row needs", "pressure", pressureOf_kpa(needed_m)),
        remark("Reserve that is not counted on", input("", "ratio", water.margin_ratio).value),
      ],
      source: "pipes solved as a tree, filter due for cleaning",
    },
    (there_kpa = 0, needed_kpa = 0) => there_kpa - needed_kpa,
  );
}
