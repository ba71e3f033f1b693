import { createLeanPlanner, type Planner } from "./lean-planner.ts";
import { cutCoils } from "./materials/cutting/cut-coils.ts";
import { plantingArea } from "./plane/overlay.ts";

/** A planner that works out everything, the planting area and the cutting plans too. */
export function createPlanner(): Planner {
  return createLeanPlanner(plantingArea, cutCoils);
}
