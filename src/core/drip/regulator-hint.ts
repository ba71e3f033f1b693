import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";
import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/**
 * What a regulator at every set's valve, or at every cock, has to let through for all rows to have what they need, kPa: the hardest case counts. null
 * without sets.
 */
export function leastRegulator_kpa(
  { sets: { pattern } }: Pick<WateringJob, "sets">,
  { sets, laterals, pipes }: Pick<Watering, "sets" | "laterals" | "pipes">,
): number | null {
  let most_m = -Infinity;
  for (const { nodes, spare_m } of sets) {
    let valve = 0;
    for (const [node, lateral] of nodes.lateral.entries()) {
      const isMain = pipes[Number(nodes.pipe[node])]?.line === 0;
      if (isMain && Number(nodes.station_m[node]) >= Number(nodes.station_m[valve])) valve = node;
      if (pattern !== "cock-a-row" || lateral < 0) continue;
      most_m = Math.max(most_m, Number(laterals[lateral]?.inlet_m) - Number(nodes.height_m[node]));
    }
    if (pattern === "cock-a-row") continue;
    most_m = Math.max(most_m, Number(nodes.head_m[valve]) - Number(nodes.height_m[valve]) - spare_m);
  }
  return most_m === -Infinity ? null : pressureOf_kpa(most_m);
}
