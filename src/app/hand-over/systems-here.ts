import type { Plan } from "../../core/plan.ts";
import { type CoordinateSystem, systemOfCode } from "../../core/systems/coordinate-system.ts";

/** Projected systems that are likely wanted where a plan lies: the UTM zone of WGS 84, and of NAD83 where that is in use. */
export function systemsHere({ ground }: Plan): readonly CoordinateSystem[] {
  if (ground === null) return [];
  const [lon_deg, lat_deg] = ground.frame.origin;
  const zone = Math.min(60, Math.floor((lon_deg + 180) / 6) + 1);
  const codes =
    lat_deg < 0 ? [32700 + zone] : [32600 + zone, ...(isNorthAmerican(lon_deg, lat_deg) ? [26900 + zone] : [])];
  return codes.flatMap((code) => {
    const system = systemOfCode(code);
    return system.ok ? [system.value] : [];
  });
}

function isNorthAmerican(lon_deg: number, lat_deg: number): boolean {
  return lat_deg > 14 && lon_deg > -172 && lon_deg < -50;
}
