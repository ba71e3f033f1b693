import { blockOfLateral, lateralOf } from "../drip/lateral-of.ts";
import type { Watered } from "../drip/watering-stage.ts";
import { lateralAt } from "../hydraulics/lateral-steps.ts";
import { pressureOf_kpa } from "../hydraulics/pressure-head.ts";

/** Pressure and flow of every emitter along the hose of a row, from the water end on. */
export interface LateralChart {
  /** Name of the set it runs in; null while no set is worked out: then it is what the row needs by itself. */
  readonly set: string | null;
  readonly hose_m: number;
  readonly emitters: readonly LateralPoint[];
  readonly flow_lph: number;
  readonly nominal_lph: number;
  /** Least pressure of a compensating emitter's range; null for plain ones. */
  readonly least_kpa: number | null;
}

export interface LateralPoint {
  readonly at_m: number;
  readonly pressure_kpa: number;
  readonly flow_lph: number;
}

/**
 * The lateral of a row (its index in the plan) while its set runs with the filter due for cleaning, else as it needs by itself; null for a row without
 * emitters and while nothing is worked out. Gives no findings.
 */
export function lateralChart({ job, watering }: Watered, row: number): LateralChart | null {
  const lateral = job.laterals.row.indexOf(row);
  const need = watering?.laterals[lateral];
  if (watering === null || need === undefined) return null;
  const [from, to] = [job.laterals.offsets[lateral] ?? 0, job.laterals.offsets[lateral + 1] ?? 0];
  if (to === from) return null;
  const { emitter } = blockOfLateral(job, lateral);
  const set = watering.sets.find(({ laterals }) => laterals.includes(lateral));
  const isRunning = watering.emitters !== null && set !== undefined;
  const states = isRunning ? watering.emitters : null;
  const own = states === null ? lateralAt(lateralOf(job, lateral), need.inlet_m) : null;
  const emitters = Array.from({ length: to - from }, (_, i): LateralPoint => {
    const height_m = Number(job.laterals.height_m[from + i]);
    const pressure_m = states === null ? Number(own?.head_m[i]) - height_m : Number(states.pressure_m[from + i]);
    const flow_lps = states === null ? Number(own?.outflow_lps[i]) : Number(states.flow_lps[from + i]);
    return {
      at_m: Number(job.laterals.at_m[from + i]),
      pressure_kpa: pressureOf_kpa(pressure_m),
      flow_lph: flow_lps * 3600,
    };
  });
  return {
    set: isRunning ? set.name : null,
    hose_m: Number(job.laterals.hose_m[lateral]),
    emitters,
    flow_lph: emitters.reduce((sum, { flow_lph }) => sum + flow_lph, 0),
    nominal_lph: emitter.nominal_lps * 3600,
    least_kpa: emitter.from_m === null ? null : pressureOf_kpa(emitter.from_m),
  };
}
