import type { Finding } from "../finding.ts";
import type { Ground } from "../ground/ground.ts";
import type { Mainline } from "../mainline/water-end.ts";
import type { Rows } from "../rows/rows.ts";
import { lateralFindings } from "./lateral-findings.ts";
import { placeOnRoute } from "./place-on-route.ts";
import { pressureFindings } from "./pressure-findings.ts";
import { runTimeFindings } from "./run-time-findings.ts";
import { seasonFindings } from "./season-findings.ts";
import { setFindings } from "./set-findings.ts";
import { supplyFindings } from "./supply-findings.ts";
import type { Watering } from "./watering.ts";
import type { WateringJob } from "./watering-job.ts";

/** What the water is to say: see the functions of each part. */
export function wateringFindings(
  job: WateringJob,
  watering: Watering | null,
  rows: Rows,
  main: Mainline,
  ground: Ground,
): readonly Finding[] {
  const where = {
    placeOf: (point: number) => placeOnRoute(main, ground, point),
    rowOf: (lateral: number) => rows.rows[Number(job.laterals.row[lateral])]?.id ?? "",
  };
  return [
    ...supplyFindings(job),
    ...seasonFindings(job),
    ...lateralFindings(job, watering, rows, main, ground),
    ...(watering === null
      ? []
      : [
          ...setFindings(job, watering, where),
          ...pressureFindings(job, watering, where),
          ...runTimeFindings(job, watering),
        ]),
  ];
}
