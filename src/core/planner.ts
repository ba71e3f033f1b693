import type { Plan } from "./plan.ts";
import type { Project } from "./project/project.ts";
import type { Sweep } from "./rows/rows.ts";

export interface Planner {
  /** Everything that follows from the project. A project whose reading found an error gives a plan of findings only. */
  plan(project: Project): Plan;
  /** Every bearing of [0, 180) at a step in degrees, for one block; empty when the ground could not be laid out. */
  sweep(project: Project, block: string, step_deg: number): Sweep;
  /** The bearing the block is planned with, true degrees. */
  bearing(project: Project, block: string): number | null;
}

/** A planner that remembers each stage's last result and reuses it while its inputs are the same objects. */
export function createPlanner(): Planner {
  throw new Error("being built");
}
