import type { TrenchSettings } from "../project/project.ts";
import type { Rows } from "../rows/rows.ts";
import type { Tee } from "./tees.ts";
import type { Bend, BranchPipe, ProfilePoint, Sleeve, Thrust } from "./trench.ts";

/** The line as it is laid, for counting what it takes. */
export interface TrenchLine {
  readonly rows: Rows;
  /** Horizontal lengths, in the order of the branches. */
  readonly branches: readonly { readonly length_m: number }[];
  readonly pipes: readonly BranchPipe[];
  readonly tees: readonly Tee[];
  readonly bends: readonly Bend[];
  readonly lows: readonly ProfilePoint[];
  readonly highs: readonly ProfilePoint[];
  readonly sleeves: readonly Sleeve[];
  readonly thrusts: readonly Thrust[];
  readonly bedding_m3: number;
  readonly settings: TrenchSettings;
}

/** Branches that leave another: as many tees. */
export function branchTees({ branches }: Pick<TrenchLine, "branches">): number {
  return Math.max(0, branches.length - 1);
}

/** Drains at the very end of a run: each stands in place of its cap. */
function drainedEnds({ branches, lows }: Pick<TrenchLine, "branches" | "lows">): number {
  return lows.filter(({ branch, isFitted, station_m }) => isFitted && station_m === branches[branch]?.length_m).length;
}

/** Ends that are capped. */
export function capped(line: Pick<TrenchLine, "branches" | "lows">): number {
  return line.branches.length - drainedEnds(line);
}

/** Tees for the drains within a run and for air valves. */
export function valveTees({ branches, lows, highs }: Pick<TrenchLine, "branches" | "lows" | "highs">): number {
  const fitted = [...lows, ...highs].filter(({ isFitted }) => isFitted).length;
  return fitted - drainedEnds({ branches, lows });
}
