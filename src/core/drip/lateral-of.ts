import { barbLength_m } from "../hydraulics/barb-length.ts";
import { lawCodes } from "../hydraulics/friction-law.ts";
import type { Lateral } from "../hydraulics/lateral.ts";
import { waterViscosity_m2ps } from "../hydraulics/viscosity.ts";
import type { BlockJob, WateringJob } from "./watering-job.ts";

/** The block of a lateral. */
export function blockOfLateral(
  { blocks, laterals }: Pick<WateringJob, "blocks" | "laterals">,
  lateral: number,
): BlockJob {
  const block = blocks[laterals.block[lateral] ?? -1];
  if (block === undefined) throw new Error(`lateral ${lateral} is of no block that the job has`);
  return block;
}

/** One lateral of the job as hydraulics has it; barbs count where emitters are punched in. */
export function lateralOf(job: Pick<WateringJob, "blocks" | "laterals" | "water">, lateral: number): Lateral {
  const { laterals, water } = job;
  const [from, to] = [laterals.offsets[lateral] ?? 0, laterals.offsets[lateral + 1] ?? 0];
  return {
    ...hoseOf(blockOfLateral(job, lateral), water.temperature_c),
    at_m: laterals.at_m.subarray(from, to),
    height_m: laterals.height_m.subarray(from, to),
    riser_m: laterals.riser_m[lateral] ?? 0,
  };
}

/** What the laterals of a block have in common; for EPANET's law plastic is smooth. */
export function hoseOf(
  { drip, emitter }: BlockJob,
  temperature_c: number,
): Omit<Lateral, "at_m" | "height_m" | "riser_m"> {
  return {
    emitter,
    hoseInside_mm: drip.hoseInside_mm,
    law: lawCodes[drip.friction],
    roughness: drip.friction === "hazen-williams" ? drip.hoseRoughness : 0,
    barb_m: drip.emitterPlacing === "on-line" ? barbLength_m(drip.barb, drip.hoseInside_mm) : 0,
    riserInside_mm: drip.riserInside_mm,
    viscosity_m2ps: waterViscosity_m2ps(temperature_c),
  };
}
