import { waterRows } from "../../core/drip/water-rows.ts";
import { createWateringStage } from "../../core/drip/watering-stage.ts";
import { createLeanPlanner } from "../../core/lean-planner.ts";
import { createMainWorks } from "../../core/main-works.ts";
import { layRoute } from "../../core/mainline/lay-route.ts";
import { cutCoils } from "../../core/materials/cutting/cut-coils.ts";
import { materials } from "../../core/materials/materials.ts";
import type { Outcome } from "../../core/outcome.ts";
import { success } from "../../core/outcome.ts";
import type { Plan } from "../../core/plan.ts";
import { withSettings } from "../../core/project/edits.ts";
import type { Json, Project } from "../../core/project/project.ts";

/** What this project is held against: a change of its settings, or another project. */
export type Other =
  | {
      readonly kind: "change";
      readonly id: string;
      readonly name: string;
      readonly edits: readonly (readonly [path: string, value: Json])[];
    }
  | { readonly kind: "file"; readonly name: string; readonly project: Project };

/** The project as the other would have it; findings when the change is refused. */
export function otherProject(project: Project, other: Other): Outcome<Project> {
  return other.kind === "change" ? withSettings(project, other.edits) : success(other.project);
}

/** Plans of the other, by a planner of its own: the page's keeps what it knows of the project that is open. */
export function createOtherPlanner(): (project: Project, other: Other) => Outcome<Plan> {
  const planner = createLeanPlanner({
    cutOf: cutCoils,
    mainWorks: createMainWorks(layRoute),
    wateringStage: createWateringStage(waterRows),
    materialsOf: materials,
  });
  return (project, other) => {
    const changed = otherProject(project, other);
    return changed.ok ? success(planner.plan(changed.value)) : changed;
  };
}
