import type { CompassAnswer } from "../core/exchange/compass-reading.ts";
import { formatQuantity, type Plan, type UnitSystem } from "../core/index.ts";
import { UsageError } from "./terminal.ts";

/** The compass readings of a plan on a day; the magnetic model is loaded only here. */
export async function compassOf(plan: Plan, date: string): Promise<CompassAnswer> {
  const { compassReadings } = await import("../core/exchange/compass-reading.ts");
  const answer = compassReadings(plan, date);
  if (!answer.ok && answer.reason === "not a day") {
    throw new UsageError(`--date is a day like 2027-03-15, not "${date}".`);
  }
  return answer;
}

/** A line for every block: what a compass reads along its rows. */
export function compassLines(answer: CompassAnswer, date: string, units: UnitSystem): readonly string[] {
  if (!answer.ok) return [`No compass reading for ${date}: that day is ${answer.reason}'s years.`];
  const degrees = (value_deg: number) => formatQuantity("angle", value_deg, units, 0);
  return answer.readings.map(({ block, reading_deg, declination_deg }) => {
    const which = answer.readings.length > 1 ? `Block ${block}: a` : "A";
    return (
      `${which} compass reads about ${degrees(reading_deg)} along the rows on ${date} ` +
      `(declination ${degrees(declination_deg)}): to find your way, not to stake.`
    );
  });
}
