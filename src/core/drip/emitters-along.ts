import type { DripSettings } from "../project/water-settings.ts";
import { builtIn } from "./hose.ts";

/** A hose as emitters are placed along it: vines by their distance from the end post at the water end, along the ground, ascending. */
export interface HoseWithVines {
  readonly hose_m: number;
  readonly vines_m: Float64Array;
  /** Does the ground rise, away from the water, at a distance from the end post? */
  isRising(reach_m: number): boolean;
}

/**
 * Emitters by their distance along the hose, ascending, m. On-line: one sits uphill of its trunk by the offset, so that water runs to the vine (on
 * level ground on the side the water comes from); two sit on either side, more evenly between. In-line: half a spacing from where the hose begins,
 * then spacing by spacing. Common practice, no source.
 */
export function emittersAlong({ hose_m, vines_m, isRising }: HoseWithVines, drip: DripSettings): Float64Array {
  const { emitterPlacing, emittersPerVine, emitterSpacing_m, emitterOffset_m, slack_ratio } = drip;
  if (emitterPlacing === "in-line") {
    return Float64Array.from({ length: builtIn(hose_m, emitterSpacing_m) }, (_, i) => (i + 0.5) * emitterSpacing_m);
  }
  const at_m = new Float64Array(vines_m.length * emittersPerVine);
  vines_m.forEach((reach_m, vine) => {
    const trunk_m = reach_m * (1 + slack_ratio);
    for (let i = 0; i < emittersPerVine; i++) {
      const side = emittersPerVine > 1 ? (2 * i) / (emittersPerVine - 1) - 1 : isRising(reach_m) ? 1 : -1;
      at_m[vine * emittersPerVine + i] = Math.min(Math.max(trunk_m + side * emitterOffset_m, 0), hose_m);
    }
  });
  return at_m.sort();
}
