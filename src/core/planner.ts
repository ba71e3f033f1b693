import { createLeanPlanner, type Planner } from "./lean-planner.ts";
import { plantingArea } from "./plane/overlay.ts";

/** A planner that works out everything, the planting area too. */
export function createPlanner(): Planner {
  return createLeanPlanner(plantingArea);
}
