import type { PipeSettings } from "../project/project.ts";
import { type ElbowAngle, elbowAngles_deg } from "./trench.ts";

/** Least radius that rigid pipe is bent to, as so many outside diameters, and what is made use of at most. Common practice, no source. */
const rigidRadius = 300;
const mostFlexed_deg = 10;
/** Coiled pipe is bent round this in a trench. Common practice, no source. */
const coiled_deg = 45;
/** Fittings one behind the other. */
const mostElbows = 3;

/** The angle that the pipe takes by itself: a stick bent to its least radius, and coiled pipe far more. */
export function flexed_deg({
  outside_mm,
  stick_m,
  joint,
}: Pick<PipeSettings, "outside_mm" | "stick_m" | "joint">): number {
  if (joint === "barbed") return coiled_deg;
  return Math.min(mostFlexed_deg, ((stick_m / (rigidRadius * (outside_mm / 1000))) * 180) / Math.PI);
}

/** The fewest elbows whose angles come within what the pipe takes of an angle, the nearest of them, the largest first; none for less. */
export function elbowsFor(angle_deg: number, flexible_deg: number): readonly ElbowAngle[] {
  if (angle_deg <= flexible_deg) return [];
  let sets: readonly (readonly ElbowAngle[])[] = [[]];
  let nearest: readonly ElbowAngle[] = [];
  for (let count = 1; count <= mostElbows; count++) {
    sets = sets.flatMap((set) =>
      elbowAngles_deg.filter((angle) => angle <= (set.at(-1) ?? 90)).map((angle) => [...set, angle]),
    );
    const best = sets.reduce((one, other) => (off(other, angle_deg) < off(one, angle_deg) ? other : one));
    if (count === 1 || off(best, angle_deg) < off(nearest, angle_deg)) nearest = best;
    if (off(nearest, angle_deg) <= flexible_deg) return nearest;
  }
  return nearest;
}

function off(set: readonly number[], angle_deg: number): number {
  return Math.abs(set.reduce((sum, each) => sum + each, 0) - angle_deg);
}
