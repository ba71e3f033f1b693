import type { LonLat } from "../../plane/coordinate.ts";
import type { Row } from "../../rows/rows.ts";
import { millimetres } from "../rounding.ts";
import { isSketch } from "../sketch.ts";
import { baselineReader } from "./baseline.ts";
import type { Column, Value } from "./layer.ts";
import type { LayerJob } from "./layer-job.ts";

const along: readonly Column[] = [
  { name: "role", type: "text" },
  { name: "block", type: "text" },
  { name: "row", type: "text" },
  { name: "number", type: "whole" },
  { name: "station_m", type: "number", decimals: 3 },
];
const fromBaseline: readonly Column[] = [
  { name: "baselineStation_m", type: "number", decimals: 3 },
  { name: "baselineOffset_m", type: "number", decimals: 3 },
];
const sketch: Column = { name: "sketch", type: "yes" };

/** The columns of everything that stands along a row. */
export function pointColumns(job: LayerJob): readonly Column[] {
  return [...along, ...baselineColumns(job), ...sketchColumns(job)];
}

/** The values of those columns. */
export function pointValues(job: LayerJob) {
  const tail = tailValues(job);
  return (kind: string, row: Row, label: string, number: number, station_m: number, at: LonLat): readonly Value[] => [
    kind,
    row.block,
    label,
    number,
    millimetres(station_m),
    ...tail(at),
  ];
}

/** Station and offset from the baseline, where one is chosen. */
export function baselineColumns({ baseline }: LayerJob): readonly Column[] {
  return baseline === null ? [] : fromBaseline;
}

/** A last column of what stands on an outline that was walked: not for staking. */
export function sketchColumns({ plan }: LayerJob): readonly Column[] {
  return isSketch(plan) ? [sketch] : [];
}

/** Values of the columns that every point ends with: baseline, sketch. */
export function tailValues(job: LayerJob): (at: LonLat) => readonly Value[] {
  const fromLine = job.baseline === null ? null : baselineReader(job, job.baseline);
  const mark: readonly Value[] = isSketch(job.plan) ? [true] : [];
  return (at) => {
    if (fromLine === null) return mark;
    const { station_m, offset_m } = fromLine(at);
    return [millimetres(station_m), millimetres(offset_m), ...mark];
  };
}
