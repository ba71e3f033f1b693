import type { Lateral, LateralState } from "../hydraulics/lateral.ts";
import { lateralAt } from "../hydraulics/lateral-steps.ts";
import { emissionUniformity, emittersAtVine, evennessOfRuns } from "./evenness.ts";
import { type EvenHose, guessLongest } from "./guess-longest.ts";
import { blockOfLateral, hoseOf } from "./lateral-of.ts";
import type { BlockJob, WateringJob } from "./watering-job.ts";

export interface LongestLateral {
  readonly emitters: number;
  readonly length_m: number;
}

/** Longer than this is longer than any row. */
const longest_m = 1000;
/** Slopes that differ by less are reckoned as one, for rows have hundreds of slopes. */
const slopeStep_ratio = 0.01;

/**
 * The most emitters that a hose may have and still be even enough, looked for around a guess in growing steps, then by halves: hoses get less even as
 * they get longer, until they fall so steeply that the slope outweighs friction. null: `most` emitters are even still.
 */
export function longestLateral(
  hose: EvenHose,
  inletPressure_m: number,
  isEven: (state: LateralState) => boolean,
  most: number,
  guess = 32,
): number | null {
  const isEvenOf = (emitters: number): boolean => isEven(lateralAt(evenLateral(hose, emitters), inletPressure_m));
  let even = 0;
  let uneven = most + 1;
  let step = 1;
  let at = Math.min(Math.max(guess, 1), most);
  while (even < at && at < uneven) {
    if (isEvenOf(at)) {
      even = at;
      at = Math.min(at + step, most);
    } else {
      uneven = at;
      at = Math.max(at - step, 1);
    }
    step *= 2;
  }
  while (uneven - even > 1) {
    const middle = Math.floor((even + uneven) / 2);
    if (isEvenOf(middle)) even = middle;
    else uneven = middle;
  }
  return even === most ? null : even;
}

/** The lateral with so many emitters; heights count from where the hose begins. */
export function evenLateral({ spacing_m, slope_ratio, ...hose }: EvenHose, emitters: number): Lateral {
  const at_m = Float64Array.from({ length: emitters }, (_, i) => (i + 1) * spacing_m);
  return { ...hose, riser_m: 0, at_m, height_m: at_m.map((each_m) => each_m * slope_ratio) };
}

/**
 * For every lateral of a job the longest one that keeps the evenness asked for with the nominal pressure where the hose begins, on the mean slope of
 * its row; worked out once for each block and slope (in steps of a percent).
 */
export function longestByBlock(
  job: Pick<WateringJob, "blocks" | "laterals" | "water">,
): (lateral: number) => LongestLateral | null {
  const known = new Map<string, LongestLateral | null>();
  return (lateral) => {
    const block = blockOfLateral(job, lateral);
    const steps = Math.round(meanSlope(job, lateral) / slopeStep_ratio);
    const key = `${job.laterals.block[lateral]} ${steps}`;
    const found = known.get(key);
    if (found !== undefined || known.has(key)) return found ?? null;
    const longest = longestOf(block, steps * slopeStep_ratio, job.water.temperature_c);
    known.set(key, longest);
    return longest;
  };
}

function longestOf(block: BlockJob, slope_ratio: number, temperature_c: number): LongestLateral | null {
  const { drip, emitter, vineSpacing_m } = block;
  const isInLine = drip.emitterPlacing === "in-line";
  const perStation = isInLine ? 1 : drip.emittersPerVine;
  if (perStation === 0 || emitter.nominal_lps === 0) return null;
  const spacing_m = isInLine ? drip.emitterSpacing_m : vineSpacing_m / perStation;
  const hose: EvenHose = { ...hoseOf(block, temperature_c), spacing_m, slope_ratio };
  const isEven = (evenness: number): boolean => evenness >= drip.evenness_ratio;
  const loss_ratio = drip.emitterVariation_ratio / Math.sqrt(emittersAtVine(drip, vineSpacing_m));
  const most = Math.floor(longest_m / spacing_m);
  const guess = guessLongest(
    hose,
    emitter.nominalHead_m,
    (share) => isEven(emissionUniformity(share, loss_ratio, 1)),
    most,
  );
  const emitters = longestLateral(
    hose,
    emitter.nominalHead_m,
    ({ outflow_lps }) =>
      isEven(evennessOfRuns([{ block, from: 0, to: outflow_lps.length }], outflow_lps).emission_ratio),
    most,
    guess,
  );
  return emitters === null ? null : { emitters, length_m: emitters * spacing_m };
}

/** Rise from the first emitter of a lateral to its last over the hose between them; 0 for fewer than two. */
export function meanSlope({ laterals }: Pick<WateringJob, "laterals">, lateral: number): number {
  const [from, to] = [laterals.offsets[lateral] ?? 0, (laterals.offsets[lateral + 1] ?? 0) - 1];
  const run_m = Number(laterals.at_m[to]) - Number(laterals.at_m[from]);
  return to > from && run_m > 0 ? (Number(laterals.height_m[to]) - Number(laterals.height_m[from])) / run_m : 0;
}
