import { courseBetween } from "../../core/drawing/place.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import type { Frame } from "../../core/plane/frame.ts";
import { formatQuantity, type UnitSystem } from "../../core/units.ts";

/** "32.4 m at 118.0°": length and true bearing from one place to another, as it can be typed. */
export function courseText(frame: Frame, from: LonLat, to: LonLat, units: UnitSystem): string {
  const { length_m, bearing_deg } = courseBetween(frame, from, to);
  return `${formatQuantity("length", length_m, units)} at ${bearingText(bearing_deg, 2)}`;
}

/** "118°": a true bearing with so many decimals; what rounds up to 360 is 0. */
export function bearingText(bearing_deg: number, decimals: 1 | 2): string {
  const ones = 10 ** decimals;
  return formatQuantity("angle", (Math.round(bearing_deg * ones) % (360 * ones)) / ones, "metric");
}
