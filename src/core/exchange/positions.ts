import type { Plan } from "../plan.ts";
import type { LonLat, PlanePoint } from "../plane/coordinate.ts";
import type { Row } from "../rows/rows.ts";

/** A place of the plan's plane in degrees; the plan has a ground wherever it has rows. */
export function placed(plan: Plan, at: PlanePoint): LonLat {
  if (plan.ground === null) throw new Error("a plan with rows has a ground");
  return plan.ground.frame.toLonLat(at);
}

/** The row's number as it stands in a project file, without its block: "14a". */
export function rowLabel(row: Row): string {
  const prefix = `${row.block}-`;
  return row.id.startsWith(prefix) ? row.id.slice(prefix.length) : row.id;
}
