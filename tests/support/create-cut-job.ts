import type { CoilSize, CutJob } from "../../src/core/materials/cutting/cut-job.ts";

/** A coil of 1000 ft without a price. */
export const coil1000ft: CoilSize = { length_m: 304.8, price: null, mass_kg: null };

const bay_m = 7.2;
/** Wire of a join, m. */
const join_m = 0.3;

interface CutJobSketch extends Partial<CutJob> {
  /** A run each, one row after another; `wires` runs of it in every row. */
  readonly lengths_m: readonly number[];
  readonly wires?: number;
  readonly isJoinable?: boolean;
}

/** A job of wire from coils of 1000 ft, with the reserve and slop of the defaults; joins in the middle of bays of 7.2 m when they are allowed. */
export function createCutJob({ lengths_m, wires = 1, isJoinable = false, ...changes }: CutJobSketch): CutJob {
  return {
    article: "wire-13ga",
    runs: lengths_m.flatMap((length_m, row) =>
      Array.from({ length: wires }, (_, copy) => ({
        row,
        wire: 0,
        copy,
        length_m,
        joinsAt_m: isJoinable ? joins_m(length_m) : [],
      })),
    ),
    onHand_m: [],
    sizes: [coil1000ft],
    tooHeavy: [],
    reserve_ratio: 0.01,
    reserve_m: 2,
    slop_m: 0.3,
    joinLength_m: join_m,
    joinPrice: null,
    ...changes,
  };
}

/** Middles of the inner bays of a row that is so long. */
function joins_m(length_m: number): readonly number[] {
  const inner = Math.max(0, Math.floor(length_m / bay_m) - 2);
  return Array.from({ length: inner }, (_, i) => (i + 1.5) * bay_m);
}

/** What can be cut from a coil. */
export function usable_m({ reserve_ratio, reserve_m }: CutJob, length_m: number): number {
  return length_m * (1 - reserve_ratio) - reserve_m;
}
