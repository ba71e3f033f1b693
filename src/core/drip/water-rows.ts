import { evennessOf } from "./evenness.ts";
import { firstRun } from "./first-run.ts";
import { headWorkParts } from "./head-work-parts.ts";
import { highestPressures } from "./highest-pressure.ts";
import { lateralNeeds } from "./lateral-needs.ts";
import { patternCosts } from "./pattern-costs.ts";
import { seasonOf } from "./season/season-of.ts";
import { setParts } from "./set-parts.ts";
import { supplyOf } from "./supply.ts";
import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";
import { wateringOfSets } from "./watering-of-sets.ts";

/**
 * What the drip system does with the water there is: supply, sets, pipe sizes, pressures, season. While the water is not known, or no route is laid,
 * only what the rows need.
 */
export function waterRows(job: WateringJob): Watering | null {
  const supply = supplyOf(job);
  const laterals = lateralNeeds(job);
  const fed = supply === null || job.line === null ? null : wateringOfSets(job, job.line, supply, laterals);
  const sets = fed?.sets ?? [];
  const pipes = fed?.pipes ?? [];
  const emitters = fed?.emitters ?? null;
  const blocks = job.blocks.map((_, block) => {
    const own = sets.flatMap((set) => set.laterals.filter((lateral) => job.laterals.block[lateral] === block));
    return fed === null || own.length === 0 ? null : evennessOf(job, own, fed.emitters.flow_lps);
  });
  return {
    supply,
    laterals,
    sets,
    emitters,
    pipes,
    blocks,
    highest: highestPressures(job, { supply, sets, emitters, pipes }),
    patterns: fed === null ? [] : patternCosts(fed.of, fed.delivery),
    season: seasonOf(job, { sets, blocks }),
    firstRun: emitters === null ? [] : firstRun(job, sets, emitters),
    parts: [...headWorkParts(job, supply), ...(fed === null ? [] : setParts(job, fed.of.line, fed.delivery))],
    isShort: fed?.isShort ?? false,
  };
}
