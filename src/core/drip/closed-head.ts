import { headOf_m } from "../hydraulics/pressure-head.ts";
import type { Supply } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** Total head in the main line, m, with every valve closed: nothing flows, nothing is lost, and regulators of the head works let through what they are set to. */
export function closedHead_m({ water, source }: Pick<WateringJob, "water" | "source">, { static_m }: Supply): number {
  return water.headWorks.reduce(
    (head_m, { outlet_kpa }) =>
      outlet_kpa === null ? head_m : Math.min(head_m, source.height_m + headOf_m(outlet_kpa)),
    static_m,
  );
}
