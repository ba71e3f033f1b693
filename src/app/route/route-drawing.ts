import type { Route } from "../../core/mainline/route.ts";
import { forEachLeg } from "../../core/trench/place-on-trench.ts";
import type { Branch } from "../../core/trench/trench.ts";
import { type MercatorPoint, mercator } from "../../plugin/mercator.ts";
import type { Placing } from "../../plugin/placing.ts";

/** A route as offsets from a local origin, ready to be uploaded. */
export interface RouteDrawing {
  readonly origin: MercatorPoint;
  /** from x, from y, to x, to y of every leg, a branch after another. */
  readonly legs: Float32Array;
  /** Number of the first leg of every branch; one more at the end. */
  readonly offsets: readonly number[];
  /** Legs that cross something, as above. */
  readonly crossings: Float32Array;
  /** x, y of every row's tee. */
  readonly tees: Float32Array;
}

/** The drawing of a route cut into its branches. */
export function routeDrawing(route: Route, branches: readonly Branch[], placing: Placing): RouteDrawing {
  const [originLng, originLat] = placing.lngLat(0, 0);
  const origin = mercator(originLng, originLat);
  const offset = (x_m: number, y_m: number): readonly [number, number] => {
    const [lng, lat] = placing.lngLat(x_m, y_m);
    const at = mercator(lng, lat);
    return [at.x - origin.x, at.y - origin.y];
  };
  const legs: number[] = [];
  const offsets = [0];
  for (const branch of branches) {
    forEachLeg(route.xy, branch, (from, to) => legs.push(...offset(from[0], from[1]), ...offset(to[0], to[1])));
    offsets.push(legs.length / 4);
  }
  const place = (i: number) => offset(route.xy[2 * i] ?? 0, route.xy[2 * i + 1] ?? 0);
  const points = Array.from(route.upstream, (from, i) => ({ from, i }));
  const crossings = points.flatMap(({ from, i }) =>
    from >= 0 && (route.crossing[i] ?? -1) >= 0 ? [...place(from), ...place(i)] : [],
  );
  const tees = points.flatMap(({ i }) => ((route.row[i] ?? -1) >= 0 ? [...place(i)] : []));
  return {
    origin,
    legs: Float32Array.from(legs),
    offsets,
    crossings: Float32Array.from(crossings),
    tees: Float32Array.from(tees),
  };
}
