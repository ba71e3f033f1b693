import { booleanPointInPolygon, lineIntersect, lineSplit, lineString, point, polygon } from "@turf/turf";
import type { Feature, Polygon } from "geojson";
import { type Point, toPoints } from "../../support/parcels.ts";
import type { Cut, RowJob } from "../row-job.ts";

/** The parcel as Turf takes it; its topology works on metres as well as on degrees. */
export function turfParcel(job: RowJob): Feature<Polygon> {
  const rings = toPoints(job.parcel.rings).map((ring) => [...ring, ...ring.slice(0, 1)].map(([x, y]) => [x, y]));
  return polygon(rings);
}

/** Crossings of each line with the parcel, in order; a part counts when its middle lies inside. */
export function turfByIntersection(parcel: Feature<Polygon>, lines: readonly (readonly [Point, Point])[]): Cut {
  let [length_m, pieces] = [0, 0];
  for (const [from, to] of lines) {
    const line = lineString([[...from], [...to]]);
    const stops = lineIntersect(line, parcel).features.map(({ geometry }) => {
      const [x = 0, y = 0] = geometry.coordinates;
      return { x, y, along: Math.hypot(x - from[0], y - from[1]) };
    });
    stops.sort((a, b) => a.along - b.along);
    stops.forEach((stop, i) => {
      const next = stops[i + 1];
      if (next === undefined) return;
      if (!booleanPointInPolygon(point([(stop.x + next.x) / 2, (stop.y + next.y) / 2]), parcel)) return;
      length_m += next.along - stop.along;
      pieces++;
    });
  }
  return { length_m, pieces };
}

/** Each line split by the parcel; a part counts when its middle lies inside. */
export function turfBySplitting(parcel: Feature<Polygon>, lines: readonly (readonly [Point, Point])[]): Cut {
  let [length_m, pieces] = [0, 0];
  for (const [from, to] of lines) {
    for (const part of lineSplit(lineString([[...from], [...to]]), parcel).features) {
      const [[x1 = 0, y1 = 0] = [], [x2 = 0, y2 = 0] = []] = part.geometry.coordinates;
      if (!booleanPointInPolygon(point([(x1 + x2) / 2, (y1 + y2) / 2]), parcel)) continue;
      length_m += Math.hypot(x2 - x1, y2 - y1);
      pieces++;
    }
  }
  return { length_m, pieces };
}
