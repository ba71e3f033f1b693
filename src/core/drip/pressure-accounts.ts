import { type Account, account, geometry, input, remark } from "../account.ts";
import { quantity, say } from "../finding.ts";
import { ratingAt, ratingOf } from "../hydraulics/pipe-rating.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { HighestPressure, Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

const weight = "weight of water: 9.80665 kPa a metre (calculation handbook, section 0.1)";

const whenWords: Readonly<Record<HighestPressure["when"], string>> = {
  closed:
    "With every valve closed nothing flows and nothing is lost; a row that runs alone loses next to nothing before its tee",
  running: "While its set runs, with the filter clean",
  surge: "With every valve closed, after one that has just stopped the water",
};

/** How the most that pipe, hose or emitters have to stand came about, kPa. */
export function highestAccount({ when, head_m, height_m, surge }: HighestPressure): Account {
  const column = [
    input("Height that the water could rise to", "length", head_m),
    input("Height of the place", "length", height_m),
  ];
  if (surge === null) {
    return account(
      {
        formula: say`${whenWords[when]}. How far the water could rise above the place, times the weight of water.`,
        inputs: column,
        source: weight,
      },
      (high_m = 0, place_m = 0) => pressureOf_kpa(high_m - place_m),
    );
  }
  return account(
    {
      formula: say`${whenWords[when]}. How far the water could rise above the place, times the weight of water, and the lower of two rises: all at once, wave speed times velocity; slowly, twice length times velocity over closing time.`,
      inputs: [
        ...column,
        input("Rise, all at once", "pressure", surge.fast_kpa),
        input("Rise, slowly", "pressure", surge.slow_kpa),
      ],
      source: "Joukowsky; wave speed by the PVC pipe handbook, from memory (calculation handbook, section 4.8)",
    },
    (high_m = 0, place_m = 0, fast_kpa = 0, slow_kpa = 0) =>
      pressureOf_kpa(high_m - place_m) + Math.min(fast_kpa, slow_kpa),
  );
}

/** How what a pipe stands came about, kPa; null for a size of one's own. */
export function ratingAccount(
  { water }: Pick<WateringJob, "water">,
  { pipes }: Pick<Watering, "pipes">,
  pipe: number,
): Account | null {
  const size = pipes[pipe]?.pipe.size ?? "";
  const cold_kpa = ratingOf(size);
  const warm_kpa = ratingAt(size, water.temperature_c);
  if (cold_kpa === null || warm_kpa === null) return null;
  return account(
    {
      formula: say`What the pipe is sold for, times the share of it that is left with water of ${quantity("temperature", water.temperature_c)}.`,
      inputs: [
        input("Sold for", "pressure", cold_kpa),
        input("Share left", "ratio", warm_kpa / cold_kpa),
        remark("Pipe", size),
      ],
      source: "ASTM D1785 and D2241, DIN 8062 and class names (calculation handbook, sections 5.1 to 5.3)",
    },
    (sold_kpa = 0, share = 0) => sold_kpa * share,
  );
}

/** How fast the water runs in the pipe to a node of a set, m/s; null where no pipe is. */
export function velocityAccount(
  { sets, pipes }: Pick<Watering, "sets" | "pipes">,
  set: number,
  node: number,
): Account | null {
  const nodes = sets[set]?.nodes;
  const pipe = pipes[Number(nodes?.pipe[node])]?.pipe;
  if (nodes === undefined || pipe === undefined) return null;
  return account(
    {
      formula: say`Flow over the inside of the pipe across.`,
      inputs: [
        input("Flow", "flow", Number(nodes.flow_lps[node]) * 3600),
        input("Inside diameter", "diameter", pipe.inside_mm),
      ],
      source: geometry,
    },
    (flow_lph = 0, inside_mm = 0) => flow_lph / 3.6 / ((Math.PI / 4) * inside_mm ** 2),
  );
}
