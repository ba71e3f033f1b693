import type { PipeSettings } from "../project/project.ts";
import type { Fitting } from "./line-fittings.ts";
import type { ElbowAngle, Thrust } from "./trench.ts";

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

/** A place where water pushes on a pipe. */
export interface Pushed {
  readonly at: Thrust["at"];
  readonly angle_deg: ElbowAngle | null;
  readonly pipe: Pick<PipeSettings, "joint" | "outside_mm">;
}

/** Everything that is pushed: elbows, tees, ends and valves, those of a kind and pipe together, the hardest first. */
export function thrusts(places: readonly Pushed[], pressure_kpa: number, bearing_kpa: number): readonly Thrust[] {
  const found = new Map<string, Thrust>();
  for (const { at, angle_deg, pipe } of places) {
    const key = `${at} ${angle_deg} ${pipe.outside_mm} ${pipe.joint}`;
    const force_n = thrust_n(pressure_kpa, pipe.outside_mm, angle_deg);
    found.set(key, {
      at,
      angle_deg,
      count: 1 + (found.get(key)?.count ?? 0),
      outside_mm: pipe.outside_mm,
      isBlocked: isBlocked(pipe),
      force_n,
      face_m2: blockFace_m2(force_n, bearing_kpa),
    });
  }
  const kinds: readonly Thrust["at"][] = ["bend", "tee", "end", "valve"];
  return [...found.values()].sort((a, b) => b.force_n - a.force_n || kinds.indexOf(a.at) - kinds.indexOf(b.at));
}

/** The places of a line: its fittings, and every end of a run, capped or drained. */
export function pushedPlaces(
  fittings: readonly Fitting[],
  ends: readonly { readonly pipe: PipeSettings }[],
): readonly Pushed[] {
  return [
    ...fittings.flatMap((fitting): readonly Pushed[] => {
      const { pipe } = fitting;
      if (fitting.kind === "elbow") return [{ at: "bend", angle_deg: fitting.angle_deg, pipe }];
      if (fitting.kind === "branch-tee") return [{ at: "tee", angle_deg: null, pipe }];
      return fitting.kind === "main-valve" || fitting.kind === "set-valve"
        ? [{ at: "valve", angle_deg: null, pipe }]
        : [];
    }),
    ...ends.map(({ pipe }): Pushed => ({ at: "end", angle_deg: null, pipe })),
  ];
}
