import type { Drip } from "../drip/drip.ts";
import type { Ground } from "../ground/ground.ts";
import type { Mainline } from "../mainline/water-end.ts";
import { type Outcome, success } from "../outcome.ts";
import type { Project } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { Trellis } from "../trellis/trellis.ts";
import { branchesOf } from "./branches.ts";
import type { Trench } from "./trench.ts";

/** The trench of a main line; null without a route. */
export function trench(
  { route }: Mainline,
  _rows: Rows,
  _ground: Ground,
  _trellis: Trellis,
  _drip: Drip,
  _project: Pick<Project, "blocks" | "trench" | "mainLine">,
): Outcome<Trench> | null {
  if (route === null) return null;
  return success({
    branches: branchesOf(route),
    profiles: [],
    lows: [],
    highs: [],
    conflicts: [],
    bends: [],
    pipes: [],
    sleeves: [],
    thrusts: [],
    parts: [],
    earth: {
      width_m: 0,
      topWidth_m: 0,
      dug_m: 0,
      cut_m3: 0,
      pipe_m3: 0,
      bedding_m3: 0,
      backfill_m3: 0,
      surplus_m3: 0,
      swell_ratio: 0,
      loose_m3: 0,
      heapHeight_m: 0,
      heapBase_m: 0,
      digging_h: [0, 0],
      laying_h: [0, 0],
      filling_h: [0, 0],
      hours_h: [0, 0],
      daily_m: [0, 0],
      days: [0, 0],
      deepest_m: 0,
      deepestAt: [0, 0],
    },
    cover_m: 0,
    leads_m: [],
    length_m: route.length_m,
    groundLength_m: null,
  });
}
