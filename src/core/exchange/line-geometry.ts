import type { LineString, MultiLineString } from "geojson";
import { type LonLat, lonLat } from "../plane/coordinate.ts";
import { position } from "./rounding.ts";

type Position = [number, number];

/** A line as GeoJSON, 8 decimals; one that crosses the antimeridian is cut there, as RFC 7946 section 3.1.9 asks. */
export function lineGeometry(places: readonly LonLat[]): LineString | MultiLineString {
  const lines: Position[][] = [];
  let line: Position[] = [];
  places.forEach((to, i) => {
    const from = places[i - 1];
    if (from !== undefined && Math.abs(from[0] - to[0]) > 180) {
      const side_deg = from[0] > 0 ? 180 : -180;
      const share = (side_deg - from[0]) / (to[0] + 2 * side_deg - from[0]);
      const crossing = from[1] + share * (to[1] - from[1]);
      lines.push([...line, position(lonLat(side_deg, crossing))]);
      line = [position(lonLat(-side_deg, crossing))];
    }
    line.push(position(to));
  });
  return lines.length === 0
    ? { type: "LineString", coordinates: line }
    : { type: "MultiLineString", coordinates: [...lines, line] };
}
