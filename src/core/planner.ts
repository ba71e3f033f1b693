import { waterRows } from "./drip/water-rows.ts";
import { createWateringStage } from "./drip/watering-stage.ts";
import { createLeanPlanner, type Planner } from "./lean-planner.ts";
import { createMainWorks } from "./main-works.ts";
import { layRoute } from "./mainline/lay-route.ts";
import { cutCoils } from "./materials/cutting/cut-coils.ts";
import { materials } from "./materials/materials.ts";
import { plantingArea } from "./plane/overlay.ts";

/** A planner that works out everything: the planting area, the main line and its trench, and the cutting plans too. */
export function createPlanner(): Planner {
  return createLeanPlanner({
    plantingAreaOf: plantingArea,
    materialsOf: materials,
    wateringStage: createWateringStage(waterRows),
    cutOf: cutCoils,
    mainWorks: createMainWorks(layRoute),
  });
}
