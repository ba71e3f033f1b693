import type { Drip } from "./drip/drip.ts";
import type { Watered } from "./drip/watering-stage.ts";
import type { Finding } from "./finding.ts";
import type { Ground } from "./ground/ground.ts";
import type { Mainline } from "./mainline/water-end.ts";
import type { Materials } from "./materials/materials.ts";
import type { Project } from "./project/project.ts";
import type { Rows } from "./rows/rows.ts";
import type { Trellis } from "./trellis/trellis.ts";
import type { Trench } from "./trench/trench.ts";

/**
 * Everything that follows from a project: one field a stage, and the findings of all of them.
 * A stage that could not be computed is null; the findings say why. Lists by row are in the order of `rows.rows`.
 */
export interface Plan {
  readonly project: Project;
  readonly ground: Ground | null;
  readonly rows: Rows | null;
  readonly mainline: Mainline | null;
  readonly trellis: Trellis | null;
  readonly drip: Drip | null;
  /** What the water there is does for the drip; null while it is not worked out. */
  readonly watering: Watered | null;
  /** null without a route of the main line. */
  readonly trench: Trench | null;
  readonly materials: Materials | null;
  readonly findings: readonly Finding[];
}
