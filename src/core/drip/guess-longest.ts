import { boreOf } from "../hydraulics/bore.ts";
import type { Lateral } from "../hydraulics/lateral.ts";
import { jetFlow, jetOf } from "../hydraulics/outlet-flow.ts";
import { pipeLoss } from "../hydraulics/pipe-loss.ts";

/** A lateral that could be longer: emitters evenly spaced from the first spacing on, on an even slope, fed where the hose begins. */
export interface EvenHose extends Omit<Lateral, "at_m" | "height_m" | "riser_m"> {
  readonly spacing_m: number;
  /** Above 0 where it rises away from the water. */
  readonly slope_ratio: number;
}

const halvings = 12;

/**
 * About how many emitters a hose may have and still be even enough: with some flow let in, walk down the hose until it is used up; the flow is halved
 * in upon. Near to an emitter or two, at a tenth of the cost of solving hoses. `isEven` is asked of lowest flow over mean flow.
 */
export function guessLongest(
  hose: EvenHose,
  inletPressure_m: number,
  isEven: (lowestToMean: number) => boolean,
  most: number,
): number {
  const { hoseInside_mm, law, roughness, viscosity_m2ps, barb_m, spacing_m, slope_ratio, emitter } = hose;
  const bore = boreOf({ law, inside_mm: hoseInside_mm, roughness, viscosity_m2ps });
  const jet = jetOf(emitter);
  const out = new Float64Array(2);
  /** Emitters that use the flow up; 0 where they are not even, or where the water does not get so far. */
  const walk = (flow_lps: number): number => {
    let [left_lps, pressure_m, lowest_lps, emitters] = [flow_lps, inletPressure_m, Infinity, 0];
    while (left_lps > 0 && emitters <= most) {
      pipeLoss(bore, spacing_m + barb_m, left_lps, out);
      pressure_m -= (out[0] ?? 0) + slope_ratio * spacing_m;
      if (pressure_m <= 0) return 0;
      jetFlow(jet, pressure_m, 0, out);
      const own_lps = out[0] ?? 0;
      left_lps -= own_lps;
      lowest_lps = Math.min(lowest_lps, own_lps);
      emitters++;
    }
    return isEven((lowest_lps * emitters) / (flow_lps - left_lps)) ? emitters : 0;
  };
  let [low, high, found] = [0, emitter.nominal_lps * most, 1];
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2;
    const emitters = walk(middle);
    if (emitters === 0) high = middle;
    else {
      low = middle;
      found = Math.max(found, emitters);
    }
  }
  return Math.min(found, most);
}
