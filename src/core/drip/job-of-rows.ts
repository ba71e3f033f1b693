import type { Ground } from "../ground/ground.ts";
import type { Mainline } from "../mainline/water-end.ts";
import type { Project } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { Trellis } from "../trellis/trellis.ts";
import type { WateringJob } from "./watering-job.ts";

/** What the stage needs of a project. */
export type WateringInput = Pick<
  Project,
  "blocks" | "sources" | "mainLine" | "trench" | "water" | "sets" | "season" | "materials"
>;

/** The job of a plan. */
export function wateringJob(
  _rows: Rows,
  _main: Mainline,
  _ground: Ground,
  _trellis: Trellis,
  project: WateringInput,
): WateringJob {
  const none = new Float64Array();
  return {
    water: project.water,
    sets: project.sets,
    season: project.season,
    source: { height_m: 0, isLevel: true, latitude_deg: 0 },
    line: null,
    blocks: [],
    laterals: {
      row: new Int32Array(),
      point: new Int32Array(),
      block: new Int32Array(),
      line: new Int32Array(),
      variety: new Int32Array(),
      vines: new Int32Array(),
      riser_m: none,
      hose_m: none,
      tailHeight_m: none,
      offsets: new Uint32Array(1),
      at_m: none,
      height_m: none,
    },
    pipe: project.trench.pipe,
    sizes: [],
  };
}
