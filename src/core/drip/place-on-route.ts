import type { Ground } from "../ground/ground.ts";
import type { Mainline } from "../mainline/water-end.ts";
import { type LonLat, planePoint } from "../plane/coordinate.ts";

/** The place on the map of a point of the route; null without a route. */
export function placeOnRoute(
  { route }: Pick<Mainline, "route">,
  { frame }: Pick<Ground, "frame">,
  point: number,
): LonLat | null {
  const [x, y] = [route?.xy[2 * point], route?.xy[2 * point + 1]];
  return x === undefined || y === undefined ? null : frame.toLonLat(planePoint(x, y));
}
