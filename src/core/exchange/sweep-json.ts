import type { Sweep, SweepPoint } from "../rows/rows.ts";

/** Goes up when a member changes its meaning or goes away. */
export const sweepJsonVersion = 1;

export interface SweepJson {
  readonly schema: "tautrow-sweep";
  readonly version: typeof sweepJsonVersion;
  readonly step_deg: number;
  readonly blocks: readonly {
    readonly block: string;
    readonly best: SweepPoint | null;
    readonly points: readonly SweepPoint[];
  }[];
}

/** The bearing sweeps of a project's blocks as one plain object of the documented schema; numbers are SI and not rounded. */
export function sweepJson(sweeps: readonly Sweep[], step_deg: number): SweepJson {
  return {
    schema: "tautrow-sweep",
    version: sweepJsonVersion,
    step_deg,
    blocks: sweeps.map(({ block, best, points }) => ({ block, best, points })),
  };
}
