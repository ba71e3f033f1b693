import type { TrenchStation } from "../../trench/trench-stations.ts";
import { known } from "../known.ts";
import { millimetres } from "../rounding.ts";
import { teeOf } from "../trench-places.ts";
import { lengthColumn, textColumn } from "./columns.ts";
import type { Column, Value } from "./layer.ts";

/** What is known at a place along the trench: where it is, its heights, and the row that has its tee there. */
export const trenchColumns: readonly Column[] = [
  lengthColumn("station_m"),
  lengthColumn("slopeStation_m"),
  lengthColumn("ground_m"),
  lengthColumn("pipe_m"),
  lengthColumn("bottom_m"),
  lengthColumn("depth_m"),
  textColumn("row"),
];

/** The values of those columns. */
export function trenchValues(station: TrenchStation): readonly Value[] {
  const { station_m, slopeStation_m, ground_m, pipe_m, bottom_m, depth_m, marks } = station;
  return [
    millimetres(station_m),
    known(slopeStation_m, millimetres),
    known(ground_m, millimetres),
    known(pipe_m, millimetres),
    known(bottom_m, millimetres),
    millimetres(depth_m),
    teeOf(marks),
  ];
}

/** The name of a line of pipes: the main, or that of a set. */
export function lineName(line: number): string {
  return line === 0 ? "main" : `set ${line}`;
}
