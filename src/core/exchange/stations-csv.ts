import type { Plan } from "../plan.ts";
import { markInWords } from "../trench/mark-in-words.ts";
import { text } from "../units.ts";
import { type Cell, csv } from "./csv.ts";
import { known } from "./known.ts";
import { millimetres, position } from "./rounding.ts";
import { teeOf } from "./route-geojson.ts";
import { isSketch } from "./sketch.ts";
import { type BranchPlaces, branchPlaces, stationAt } from "./trench-places.ts";

/**
 * The trench for the person who digs, a line a station (RFC 4180, CRLF): how far along the branch, level and on the slope, where that is, ground,
 * pipe and bottom as heights (empty where the ground is not known), the depth to dig, the row that has its tee there, and what is met, in the
 * project's units; where the sizes of pipes are chosen, the sizes that lie in the trench from there on too. On an outline that was walked there is
 * a last column, `sketch`.
 */
export function stationsCsv(plan: Plan): string {
  const sketch = isSketch(plan);
  const isSized = plan.trench?.isSized ?? false;
  const lines = branchPlaces(plan).flatMap(({ name, stations, pipes }) =>
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
      ...(isSized ? [sizesAt(pipes, station.station_m)] : []),
      ...(sketch ? ["yes"] : []),
    ]),
  );
  return csv([[...heads, ...(isSized ? ["pipes"] : []), ...(sketch ? ["sketch"] : [])], ...lines]);
}

/** "pvc-40-2in + pvc-40-1in": what lies from a station on, and at the end of the branch what lies up to it. */
function sizesAt(along: BranchPlaces["pipes"], station_m: number): string {
  const here = along.findLast(({ from_m }) => from_m <= station_m + same_m) ?? along[0];
  return (here?.pipes ?? []).map(({ pipe }) => pipe.size).join(" + ");
}

/** A station at a place is that place. */
const same_m = 1e-6;

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
