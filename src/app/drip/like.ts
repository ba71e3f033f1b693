import { si } from "../../core/project/si.ts";
import type { UnitSystem } from "../../core/units.ts";

/** Amounts whose units a bare number takes in a field that is empty, SI. */
interface Like {
  readonly flow_lph: number;
  readonly pressure_kpa: number;
  readonly volume_l: number;
  readonly length_m: number;
  readonly depth_mm: number;
  readonly temperature_c: number;
}

export function likeOf(units: UnitSystem): Like {
  const isUs = units === "us";
  return {
    flow_lph: si("flow", isUs ? "10 gal/min" : "2 m3/h"),
    pressure_kpa: si("pressure", isUs ? "40 psi" : "3 bar"),
    volume_l: si("volume", isUs ? "5 gal" : "20 L"),
    length_m: si("length", isUs ? "10 ft" : "3 m"),
    depth_mm: si("depth", isUs ? "0.2 in" : "5 mm"),
    temperature_c: 15,
  };
}
