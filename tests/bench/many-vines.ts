import type { Plan } from "../../src/core/plan.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { createBlock, createParcel, createProject, rectangle } from "../support/create-project.ts";

/** A plan of a quarter of a million vines: invented ground of a square kilometre, 2.4 by 1.8 m. */
export function manyVinesPlan(): Plan {
  const [width_m, depth_m] = [970, 1142];
  return createPlanner().plan(
    createProject({
      name: "A quarter of a million vines, invented",
      parcels: [createParcel([rectangle(width_m, depth_m, [-width_m / 2, -depth_m / 2])])],
      blocks: [createBlock({ rowSpacing_m: 2.4, vineSpacing_m: 1.8 })],
    }),
  );
}
