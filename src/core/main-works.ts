import type { PipeLine } from "./drip/watering.ts";
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

/** The two stages about the main line, apart from the others so that a page may load them later. */
export interface MainWorks {
  mainline(rows: Rows, ground: Ground, project: Project): Outcome<Mainline>;
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

/** The stages with a way to work the route out. */
export function createMainWorks(routeOf: RouteOf): MainWorks {
  return {
    mainline: (rows, ground, project) => mainline(rows, ground, project, routeOf),
    trench,
  };
}
