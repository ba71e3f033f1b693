import type { WateringJob } from "../../core/drip/watering-job.ts";
import { listed } from "../../core/finding.ts";
import type { Plan } from "../../core/plan.ts";

/** "1 to 12, 14a and 20 to 22": the rows of some laterals, in the order of the plan. */
export function rowRuns(plan: Plan, job: WateringJob, laterals: readonly number[]): string {
  const rows = laterals.map((lateral) => job.laterals.row[lateral] ?? -1).sort((one, other) => one - other);
  const runs: (readonly [from: number, to: number])[] = [];
  for (const row of rows) {
    const last = runs.at(-1);
    if (last && row === last[1] + 1) runs[runs.length - 1] = [last[0], row];
    else runs.push([row, row]);
  }
  const id = (row: number) => plan.rows?.rows[row]?.id ?? String(row + 1);
  return listed(
    runs.flatMap(([from, to]) => {
      if (to - from < 2) return Array.from({ length: to - from + 1 }, (_, i) => id(from + i));
      return [`${id(from)} to ${id(to)}`];
    }),
  );
}

/** The name of the row of a lateral. */
export function rowOf(plan: Plan, job: WateringJob, lateral: number): string {
  return plan.rows?.rows[job.laterals.row[lateral] ?? -1]?.id ?? "";
}
