import type { Plan } from "../plan.ts";
import { planePoint } from "../plane/coordinate.ts";
import { type CalendarDay, magneticField } from "../plane/declination.ts";

/** What a compass reads along a block's rows: to find one's way, not to stake. */
export interface CompassReading {
  readonly block: string;
  /** YYYY-MM-DD, the day it holds for. */
  readonly date: string;
  /** East is positive. */
  readonly declination_deg: number;
  /** Along the rows, in [0, 180); the other way it reads 180 more. */
  readonly reading_deg: number;
}

export type CompassAnswer =
  | { readonly ok: true; readonly readings: readonly CompassReading[] }
  | { readonly ok: false; readonly reason: "not a day" | "before the model" | "after the model" };

/**
 * The compass reading of every block's rows on a day (YYYY-MM-DD), by the World Magnetic Model at the block's centre: true bearing less
 * declination. It is a module of its own, not in the index, because the model is only loaded by who asks for it.
 */
export function compassReadings(plan: Plan, date: string): CompassAnswer {
  const readings: CompassReading[] = [];
  const day = calendarDay(date);
  if (day === null) return { ok: false, reason: "not a day" };
  for (const { block, bearing_deg } of plan.rows?.blocks ?? []) {
    const ground = plan.ground?.blocks.find((candidate) => candidate.block === block);
    if (ground === undefined || plan.ground === null) continue;
    const centre = plan.ground.frame.toLonLat(planePoint(...ground.centre));
    const answer = magneticField(centre, day);
    if (!answer.ok) return answer;
    const { declination_deg } = answer.field;
    readings.push({ block, date, declination_deg, reading_deg: (((bearing_deg - declination_deg) % 180) + 180) % 180 });
  }
  return { ok: true, readings };
}

function calendarDay(date: string): CalendarDay | null {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date) ?? [];
  return day === undefined ? null : { year: Number(year), month: Number(month), day: Number(day) };
}
