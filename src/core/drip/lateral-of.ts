import { barbLength_m } from "../hydraulics/barb-length.ts";
import { lawCodes } from "../hydraulics/friction-law.ts";
import type { Lateral } from "../hydraulics/lateral.ts";
import { waterViscosity_m2ps } from "../hydraulics/viscosity.ts";
import type { WateringJob } from "./watering-job.ts";

/** One lateral of the job as hydraulics has it; barbs count where emitters are punched in. */
export function lateralOf({ laterals, blocks, water }: WateringJob, index: number): Lateral {
  const block = blocks[Number(laterals.block[index])];
  if (block === undefined)
    throw new Error(`lateral ${index} is of block ${laterals.block[index]}, which the job does not have`);
  const { drip, emitter } = block;
  const [from, to] = [laterals.offsets[index], laterals.offsets[index + 1]];
  return {
    at_m: laterals.at_m.subarray(from, to),
    height_m: laterals.height_m.subarray(from, to),
    emitter,
    hoseInside_mm: drip.hoseInside_mm,
    law: lawCodes[drip.friction],
    roughness: drip.friction === "hazen-williams" ? drip.hoseRoughness : 0,
    barb_m: drip.emitterPlacing === "on-line" ? barbLength_m(drip.barb, drip.hoseInside_mm) : 0,
    riser_m: Number(laterals.riser_m[index]),
    riserInside_mm: drip.riserInside_mm,
    viscosity_m2ps: waterViscosity_m2ps(water.temperature_c),
  };
}
