import type { PipeSettings } from "../project/project.ts";
import type { Bend, ElbowAngle, Thrust } from "./trench.ts";
import { elbowAngles_deg } from "./trench.ts";

/** More face than the push needs. Common practice, no source (calculation handbook, section 7). */
export const blockSafety = 1.5;

/** Thicker solvent-welded pipe is blocked too: 3 in, outside (calculation handbook, section 7: common practice, no source). */
const heldByCement_mm = 88.9;

/** Does the line need blocks? Gasketed joints always, solvent-welded ones past 3 in; coiled pipe holds itself. */
export function isBlocked({ joint, outside_mm }: Pick<PipeSettings, "joint" | "outside_mm">): boolean {
  return joint === "gasket" || (joint === "solvent" && outside_mm > heldByCement_mm + 0.05);
}

/**
 * Push of water on a bend, N: 2 P A sin(angle / 2), or P A on a tee, a dead end and a closed valve; A on the outside diameter, since water
 * gets to it in a gasketed joint. Pressure in kPa, diameter in mm. 600 kPa, 60.325 mm, 90 degrees: 2425.218 N (calculation handbook, check 7-6).
 */
export function thrust_n(pressure_kpa: number, outside_mm: number, angle_deg: number | null): number {
  const area_m2 = (Math.PI / 4) * (outside_mm / 1000) ** 2;
  const share = angle_deg === null ? 1 : 2 * Math.sin((angle_deg * Math.PI) / 360);
  return pressure_kpa * 1000 * area_m2 * share;
}

/** Face of a block against undisturbed soil, m2: push over what the soil bears, with `safety` to spare. */
export function blockFace_m2(force_n: number, bearing_kpa: number, safety: number = blockSafety): number {
  return (safety * force_n) / (bearing_kpa * 1000);
}

/** Everything that is pushed, the hardest first. */
export function thrusts(
  bends: readonly Bend[],
  branchTees: number,
  ends: number,
  { outside_mm }: Pick<PipeSettings, "outside_mm">,
  pressure_kpa: number,
  bearing_kpa: number,
): readonly Thrust[] {
  const one = (at: Thrust["at"], angle_deg: ElbowAngle | null, count: number): Thrust => {
    const force_n = thrust_n(pressure_kpa, outside_mm, angle_deg);
    return { at, angle_deg, count, force_n, face_m2: blockFace_m2(force_n, bearing_kpa) };
  };
  const elbows = bends.flatMap((bend) => bend.elbows);
  return [
    ...elbowAngles_deg.map((angle_deg) => one("bend", angle_deg, elbows.filter((each) => each === angle_deg).length)),
    one("tee", null, branchTees),
    one("end", null, ends),
    one("valve", null, 1),
  ]
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.force_n - a.force_n);
}
