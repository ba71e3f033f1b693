import type { EmitterLaw } from "../hydraulics/outlet.ts";
import { headOf_m } from "../hydraulics/pressure-head.ts";
import type { Block } from "../project/project.ts";
import type { DripSettings } from "../project/water-settings.ts";
import type { BlockJob } from "./watering-job.ts";

/** What the watering needs of a block. */
export function blockJob({ id, name, drip, rows }: Block): BlockJob {
  const { rowSpacing_m, vineSpacing_m } = rows;
  return { id, name, drip, emitter: emitterLaw(drip), rowSpacing_m, vineSpacing_m };
}

/** The law by which the emitters of a block give water. */
export /** A compensating emitter whose range begins at nothing is worked out like a plain one. */
function emitterLaw(drip: DripSettings): EmitterLaw {
  return {
    kind: "emitter",
    nominal_lps: drip.emitterFlow_lph / 3600,
    nominalHead_m: headOf_m(drip.emitterPressure_kpa),
    exponent: drip.emitterExponent,
    from_m: drip.emitterKind === "compensating" && drip.emitterLeast_kpa > 0 ? headOf_m(drip.emitterLeast_kpa) : null,
  };
}
