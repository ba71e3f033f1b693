import { cutCoils } from "../core/materials/cutting/cut-coils.ts";
import type { CutOf } from "../core/materials/materials.ts";

/** So many runs are cut within a frame. */
const quickRuns = 300;

/** How coils are cut while something is held: few runs at once, many when it is let go. */
export const cutWhileHeld: CutOf = (job) => (job.runs.length > quickRuns ? null : cutCoils(job));
