import { failure, type Outcome, success } from "../outcome.ts";
import type { Plan } from "../plan.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { type CoordinateSystem, lonLatSystem, statedSystem, systemOfCode } from "../systems/coordinate-system.ts";
import { localSystem } from "../systems/local-system.ts";
import { scaleAt } from "../systems/scale-at.ts";
import type { HandOverChoice } from "./choice.ts";
import type { Format } from "./format.ts";
import { noGround, systemInDegrees, systemOutOfReach } from "./hand-over-findings.ts";

/** Systems that are made for a region keep lengths within a thousandth there. */
const muchStretched_ratio = 0.01;

/**
 * The system that a plan is handed over in: the one asked for ("EPSG:26910", a proj4 text, "utm" for the zone of the place, "local"), else degrees, or the local plane where a format has no degrees. Findings:
 * `exchange/no-ground`, `exchange/system-in-degrees`, `exchange/system-out-of-reach`, and those of the systems.
 */
export function chosenSystem(plan: Plan, choice: HandOverChoice, format: Format): Outcome<CoordinateSystem> {
  const wished = format.places === "degrees" ? null : choice.system;
  const isLocal = wished === null ? format.places === "chosen, no degrees" : wished.trim().toLowerCase() === "local";
  if (isLocal) {
    return plan.ground === null ? failure([noGround()]) : success(localSystem(plan.ground.frame, choice.unit));
  }
  if (wished === null) return success(lonLatSystem);
  const origin = plan.ground?.frame.origin;
  const isZone = wished.trim().toLowerCase() === "utm";
  if (isZone && origin === undefined) return failure([noGround()]);
  const stated = origin !== undefined && isZone ? systemOfCode(utmZone(origin)) : statedSystem(wished);
  if (!stated.ok) return stated;
  const system = stated.value;
  if (system.kind === "geographic" && format.places === "chosen, no degrees") {
    return failure([systemInDegrees(format, system.name)]);
  }
  if (origin === undefined || system.kind === "geographic") return stated;
  if (!system.fromLonLat(origin[0], origin[1]).every(Number.isFinite)) {
    return failure([systemOutOfReach(system.name, null)]);
  }
  const scale_ratio = scaleAt(system, origin[0], origin[1])?.scale_ratio ?? 1;
  const isStretched = Math.abs(scale_ratio - 1) > muchStretched_ratio;
  return success(system, [...stated.findings, ...(isStretched ? [systemOutOfReach(system.name, scale_ratio)] : [])]);
}

/** EPSG code of the WGS 84 UTM zone of a place, by its longitude alone: the wider zones of Norway are not made. */
function utmZone([lon_deg, lat_deg]: LonLat): number {
  const zone = Math.min(60, Math.floor((lon_deg + 180) / 6) + 1);
  return (lat_deg < 0 ? 32700 : 32600) + zone;
}
