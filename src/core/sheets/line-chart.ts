import type { Watered } from "../drip/watering-stage.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";

/** Pressure and flow along main line and submain of a set, from the source to the row tee that has least to spare. */
export interface LineChart {
  readonly set: string;
  /** Index into the plan's rows of the row at the end. */
  readonly row: number;
  readonly points: readonly LinePoint[];
  /** What the tee at the end needs. */
  readonly needed_kpa: number;
}

export interface LinePoint {
  /** Along the pipe from the source. */
  readonly at_m: number;
  /** In the pipe, over its own height. */
  readonly pressure_kpa: number;
  /** In the pipe up to the point; at the source what the set takes. */
  readonly flow_lph: number;
  /** What that pipe is, as settings call it; null at the source. */
  readonly pipe: string | null;
}

/** The line of a set (its index) to its tee with least to spare; null where there is no such set. Gives no findings. */
export function lineChart({ job, watering }: Watered, set: number): LineChart | null {
  const of = watering?.sets[set];
  if (!watering || of === undefined) return null;
  const { nodes, sparest } = of;
  const path: number[] = [];
  for (let node = nodes.lateral.indexOf(sparest); node >= 0; node = nodes.upstream[node] ?? -1) path.unshift(node);
  const last = path.at(-1);
  if (last === undefined) return null;
  const points = path.map((node): LinePoint => {
    return {
      at_m: Number(nodes.station_m[node]),
      pressure_kpa: pressureOf_kpa(Number(nodes.head_m[node]) - Number(nodes.height_m[node])),
      flow_lph: Number(nodes.flow_lps[node]) * 3600,
      pipe: watering.pipes[nodes.pipe[node] ?? -1]?.pipe.size ?? null,
    };
  });
  return {
    set: of.name,
    row: job.laterals.row[sparest] ?? -1,
    points,
    needed_kpa: pressureOf_kpa((watering.laterals[sparest]?.inlet_m ?? 0) - Number(nodes.height_m[last])),
  };
}
