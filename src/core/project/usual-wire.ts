import type { TensileClass, Wire } from "./project.ts";
import { si } from "./si.ts";

/**
 * A wire with what is usual for all that is not said of it: single, fixed, of unknown class, tightened as its purpose and class allow,
 * without in-line tensioners.
 */
export function usualWire(
  said: Pick<Wire, "purpose" | "height_m" | "diameter_mm"> & Partial<Wire>,
  ends: Pick<Wire, "tieOffStart" | "tieOffEnd">,
): Wire {
  const tensile = said.tensile ?? "unknown";
  const isMovable = said.isMovable ?? false;
  return {
    count: 1,
    coating: "unknown",
    tension_n: usualTension_n(said.purpose, tensile, isMovable),
    tensioners: 0,
    ...ends,
    ...said,
    tensile,
    isMovable,
  };
}

/**
 * What a wire is tightened to, newtons: a fruiting wire whose class is not known 75 lbf, which leaves 13 gauge of low carbon steel within a
 * third of its breaking load in a cold snap of 25 K; drip and foliage wires less, a movable wire hand tight (common practice, no source); a
 * fixed wire of high-tensile steel 200 lbf (fence-wire suppliers' articles: 200 to 250 lbf for 12 1/2 gauge).
 */
function usualTension_n(purpose: Wire["purpose"], tensile: TensileClass, isMovable: boolean): number {
  if (isMovable) return handTight_n;
  if (purpose === "drip") return drip_n;
  if (tensile !== "unknown" && tensile !== "low-carbon") return highTensile_n;
  return purpose === "foliage" ? foliage_n : fruiting_n;
}

const handTight_n = si("force", "35 lbf");
const drip_n = si("force", "60 lbf");
const foliage_n = si("force", "50 lbf");
const fruiting_n = si("force", "75 lbf");
const highTensile_n = si("force", "200 lbf");
