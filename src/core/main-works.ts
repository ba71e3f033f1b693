import type { WateringInput } from "./drip/job-of-rows.ts";
import type { PipeLine, WateringOf } from "./drip/watering.ts";
import { type Watered, watering } from "./drip/watering-stage.ts";
import type { Ground } from "./ground/ground.ts";
import { mainline } from "./mainline/mainline.ts";
import type { RouteOf } from "./mainline/route.ts";
import type { Mainline } from "./mainline/water-end.ts";
import type { Outcome } from "./outcome.ts";
import type { Project } from "./project/project.ts";
import type { Rows } from "./rows/rows.ts";
import type { Trellis } from "./trellis/trellis.ts";
import { trench } from "./trench/dig-trench.ts";
import type { Trench } from "./trench/trench.ts";

/** The stages about the main line and its water, apart from the others so that a page may load them later. */
export interface MainWorks {
  mainline(rows: Rows, ground: Ground, project: Project): Outcome<Mainline>;
  watering(rows: Rows, main: Mainline, ground: Ground, trellis: Trellis, project: WateringInput): Outcome<Watered>;
  /** null without a route. `pipes`: as the watering chose them; none: the pipe that is set. */
  trench(
    main: Mainline,
    rows: Rows,
    ground: Ground,
    trellis: Trellis,
    pipes: readonly PipeLine[],
    project: Project,
  ): Outcome<Trench> | null;
}

/** The stages with ways to work the route and the watering out. */
export function createMainWorks(routeOf: RouteOf, wateringOf: WateringOf): MainWorks {
  return {
    mainline: (rows, ground, project) => mainline(rows, ground, project, routeOf),
    watering: (rows, main, ground, trellis, project) => watering(rows, main, ground, trellis, project, wateringOf),
    trench,
  };
}
