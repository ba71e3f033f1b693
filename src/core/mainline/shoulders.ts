import { type PlanePoint, planePoint } from "../plane/coordinate.ts";
import type { Clearance } from "./clearance.ts";
import type { RowEnd } from "./heads.ts";

/** Just outside, so that the way beside the row is clear. */
const outside_m = 1e-4;
const eighth_rad = Math.PI / 8;
/** Around the end of a row in pieces of 45 degrees. */
const turns_rad = [-3 * eighth_rad, -eighth_rad, eighth_rad, 3 * eighth_rad] as const;

/** Places around the end of a row where a way from its side to its head may bend, at the distance that the trench keeps from it. */
export function shoulders(
  { row, end, outward }: RowEnd,
  { wallEnd, isFree }: Pick<Clearance, "wallEnd" | "isFree">,
): readonly PlanePoint[] {
  const { x, y, beside_m } = wallEnd(row, end === "start" ? 0 : 1);
  const reach_m = (beside_m + outside_m) / Math.cos(eighth_rad);
  const towards_rad = Math.atan2(outward[1], outward[0]);
  return turns_rad
    .map((turn_rad) => {
      const angle = towards_rad + turn_rad;
      return planePoint(x + reach_m * Math.cos(angle), y + reach_m * Math.sin(angle));
    })
    .filter(([px, py]) => isFree(px, py));
}
