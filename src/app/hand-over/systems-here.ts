import type { Plan } from "../../core/plan.ts";
import { type CoordinateSystem, systemOfCode } from "../../core/systems/coordinate-system.ts";

/** A system with a name that fits a narrow field. */
export interface SystemHere {
  /** "EPSG:32610". */
  readonly value: string;
  /** "UTM 10 north, WGS 84". */
  readonly label: string;
  readonly system: CoordinateSystem;
}

/** Projected systems that are likely wanted where a plan lies: the UTM zone of WGS 84, and of NAD83 where that is in use. */
export function systemsHere({ ground }: Plan): readonly SystemHere[] {
  if (ground === null) return [];
  const [lon_deg, lat_deg] = ground.frame.origin;
  const zone = Math.min(60, Math.floor((lon_deg + 180) / 6) + 1);
  const side = lat_deg < 0 ? "south" : "north";
  const world = { code: (side === "south" ? 32700 : 32600) + zone, datum: "WGS 84" };
  const wanted = isNorthAmerican(lon_deg, lat_deg) ? [world, { code: 26900 + zone, datum: "NAD83" }] : [world];
  return wanted.flatMap(({ code, datum }) => {
    const system = systemOfCode(code);
    return system.ok ? [{ value: `EPSG:${code}`, label: `UTM ${zone} ${side}, ${datum}`, system: system.value }] : [];
  });
}

function isNorthAmerican(lon_deg: number, lat_deg: number): boolean {
  return lat_deg > 14 && lon_deg > -172 && lon_deg < -50;
}
