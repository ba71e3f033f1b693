import { lawCodes } from "../hydraulics/friction-law.ts";
import type { Network } from "../hydraulics/network.ts";
import type { Outlet } from "../hydraulics/outlet.ts";
import { waterViscosity_m2ps } from "../hydraulics/viscosity.ts";
import type { SetTree } from "./set-lines.ts";
import type { LineJob, WateringJob } from "./watering-job.ts";

/** 1 m of water. */
export const kpa_pm = 9.80665;

/** Of plastic pipe, for EPANET's law, which wants mm. From memory. */
const smooth_mm = 0.0015;

/** C of Hazen-Williams, or mm. */
export function pipeRoughness({ friction, roughness }: WateringJob["sets"]): number {
  return friction === "epanet" ? smooth_mm : roughness;
}

/** Of no length, so that it does not matter. */
const noPipe_mm = 50;

/** The pipes of one set as hydraulics has them. `inside_mm`: by leg. `outletOf`: a lateral as one outlet. */
export function setNetwork(
  { sets, water }: Pick<WateringJob, "sets" | "water">,
  line: LineJob,
  tree: SetTree,
  inside_mm: (leg: number) => number,
  outletOf: (lateral: number) => Outlet,
): Network {
  const nodes = tree.point.length;
  const outlets: Outlet[] = [];
  const outlet = new Int32Array(nodes).fill(-1);
  tree.lateral.forEach((lateral, node) => {
    if (lateral < 0) return;
    outlet[node] = outlets.length;
    outlets.push(outletOf(lateral));
  });
  const regulator_m = (sets.regulator_kpa ?? Number.NaN) / kpa_pm;
  return {
    upstream: Int32Array.from(tree.upstream),
    length_m: Float64Array.from(tree.point, (point, node) =>
      Number(tree.leg[node]) < 0 ? 0 : Number(line.length_m[point]),
    ),
    inside_mm: Float64Array.from(tree.leg, (leg) => (leg < 0 ? noPipe_mm : inside_mm(leg))),
    law: new Uint8Array(nodes).fill(lawCodes[sets.friction]),
    roughness: new Float64Array(nodes).fill(pipeRoughness(sets)),
    minor: new Float64Array(nodes),
    height_m: Float64Array.from(tree.point, (point) => Number(line.height_m[point])),
    regulator_m: Float64Array.from(tree.isRegulated, (is) => (is === 1 ? regulator_m : Number.NaN)),
    outlet,
    outlets,
    viscosity_m2ps: waterViscosity_m2ps(water.temperature_c),
  };
}
