import type { Finding } from "../finding.ts";
import type { Ground } from "../ground/ground.ts";
import type { Mainline } from "../mainline/water-end.ts";
import type { Rows } from "../rows/rows.ts";
import { seasonFindings } from "./season-findings.ts";
import { supplyFindings } from "./supply-findings.ts";
import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** What the water is to say: see the functions of each part. */
export function wateringFindings(
  job: WateringJob,
  _watering: Watering | null,
  _rows: Rows,
  _main: Mainline,
  _ground: Ground,
): readonly Finding[] {
  return [...supplyFindings(job), ...seasonFindings(job)];
}
