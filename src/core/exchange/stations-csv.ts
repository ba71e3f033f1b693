import type { Plan } from "../plan.ts";
import { markInWords } from "../trench/mark-in-words.ts";
import { text } from "../units.ts";
import { type Cell, csv } from "./csv.ts";
import { known } from "./known.ts";
import { millimetres, position } from "./rounding.ts";
import { teeOf } from "./route-geojson.ts";
import { isSketch } from "./sketch.ts";
import { branchPlaces, stationAt } from "./trench-places.ts";

/**
 * The trench for the person who digs, a line a station (RFC 4180, CRLF): how far along the branch, level and on the slope, where that is, ground,
 * pipe and bottom as heights (empty where the ground is not known), the depth to dig, the row that has its tee there, and what is met, in the
 * project's units. On an outline that was walked there is a last column, `sketch`.
 */
export function stationsCsv(plan: Plan): string {
  const sketch = isSketch(plan);
  const lines = branchPlaces(plan).flatMap(({ name, stations }) =>
    stations.map((station): readonly Cell[] => [
      name,
      millimetres(station.station_m),
      known(station.slopeStation_m, millimetres),
      ...position(stationAt(plan, station)),
      known(station.ground_m, millimetres),
      known(station.pipe_m, millimetres),
      known(station.bottom_m, millimetres),
      millimetres(station.depth_m),
      teeOf(station.marks),
      station.marks.map((mark) => text(markInWords(mark), plan.project.units)).join("; "),
      ...(sketch ? ["yes"] : []),
    ]),
  );
  return csv([[...heads, ...(sketch ? ["sketch"] : [])], ...lines]);
}

const heads = [
  "branch",
  "station_m",
  "slopeStation_m",
  "longitude",
  "latitude",
  "ground_m",
  "pipe_m",
  "bottom_m",
  "depth_m",
  "row",
  "note",
] as const;
