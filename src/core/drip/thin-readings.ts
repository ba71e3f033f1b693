import { type Finding, quantity, say, unplaced } from "../finding.ts";
import type { WaterSettings } from "../project/water-settings.ts";

/**
 * Readings that are enough to reckon with, but thin. Findings: `drip/static-unknown`, `drip/one-pump-point`, `drip/no-pressure-read`,
 * `drip/no-flowing-pressure`.
 */
export function thinReadings({ kind, tests, pump, staticPressure_kpa }: WaterSettings): readonly Finding[] {
  const found: Finding[] = [];
  if ((kind === "measured" || kind === "town") && staticPressure_kpa === null) {
    found.push(
      unplaced(
        "drip/static-unknown",
        "note",
        say`The pressure with nothing flowing is not given.`,
        say`Nothing above the highest reading is counted on, and what closed valves have to stand is estimated.`,
        say`Close everything, wait, and read the gauge.`,
      ),
    );
  }
  if (kind === "pump" && pump.length === 1) {
    found.push(
      unplaced(
        "drip/one-pump-point",
        "note",
        say`The pump's curve is one point.`,
        say`It is reckoned to give that pressure up to that flow; at closed valves it gives more, which is not known.`,
        say`Add its pressure at no flow and one or two points between, from its maker's curve.`,
      ),
    );
  }
  if (kind !== "pump" && tests.length > 0 && tests.every(({ pressure_kpa }) => pressure_kpa === null)) {
    found.push(
      unplaced(
        "drip/no-pressure-read",
        "note",
        say`No pressure was read while a bucket filled.`,
        say`All of the pressure is reckoned to be used up at that flow, as from an open outlet; between it and none the curve is an estimate.`,
        say`Put a gauge before a half-open valve and fill the bucket again, best at two or three openings.`,
      ),
    );
  }
  if ((kind === "measured" || kind === "town") && tests.length === 0 && staticPressure_kpa !== null) {
    found.push(
      unplaced(
        "drip/no-flowing-pressure",
        "note",
        say`The pressure was never read while water flowed; it is reckoned to stay ${quantity("pressure", staticPressure_kpa)} up to the limit.`,
        say`Meter, service pipe and street main lose some of it, so rows get less than is shown.`,
        say`Fill a bucket at about the flow you want to take and read the gauge meanwhile.`,
      ),
    );
  }
  return found;
}
