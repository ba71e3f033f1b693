import type { SeasonMonth } from "../drip/watering.ts";
import type { Watered } from "../drip/watering-stage.ts";

/** What vines of a block need week by week, ready to be drawn. */
export interface SeasonChart {
  readonly block: string;
  readonly months: readonly SeasonMonth[];
  readonly peak: SeasonMonth;
  /** The tallest of what is drawn. */
  readonly most_lpw: number;
  /** What the hours a day bring to a vine in a week when all sets take turns; null without sets. */
  readonly bound_lpw: number | null;
  readonly hours_h: number;
  /** Months with parts; null: never. */
  readonly firstWatering: number | null;
  /** Evapotranspiration was worked out from temperatures. */
  readonly isEstimated: boolean;
}

/** The season of a block (null: the first); null while it is not known, or when there is no such block. */
export function seasonChart({ job, watering }: Watered, blockId: string | null): SeasonChart | null {
  const index = blockId === null ? 0 : job.blocks.findIndex(({ id }) => id === blockId);
  const [block, season] = [job.blocks[index], watering?.season?.[index]];
  if (block === undefined || season === undefined || watering === null) return null;
  const { months, peak, firstWatering } = season;
  const hours_h = job.water.hoursADay_h;
  const bound_lpw = watering.sets.length === 0 || peak.all_h === 0 ? null : (peak.peak_lpw * hours_h) / peak.all_h;
  const tallest_lpw = months.reduce(
    (most, { usual_lpw, peak_lpw, young_lpw }) => Math.max(most, usual_lpw, peak_lpw, young_lpw),
    0,
  );
  return {
    block: block.name,
    months,
    peak,
    // A bound far above what is needed would make the bars small: it is said, not drawn.
    most_lpw: bound_lpw !== null && bound_lpw < 1.5 * tallest_lpw ? Math.max(bound_lpw, tallest_lpw) : tallest_lpw,
    bound_lpw,
    hours_h,
    firstWatering,
    isEstimated: job.season.reference_mmpd === null,
  };
}
