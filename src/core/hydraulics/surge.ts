/** 4660 ft/s: sound in water that nothing gives way around (PVC pipe handbook, from memory; calculation handbook, section 4.8). */
const openWater_mps = 4660 * 0.3048;

/** Bulk modulus of water over the modulus of the pipe's wall: 300 000 over 400 000 psi for PVC, 150 000 psi for polyethylene. From memory. */
export const stiffness = { pvc: 300 / 400, pe: 300 / 150 } as const;

/**
 * How fast a wave of pressure runs through a pipe, m/s: a = c / sqrt(1 + K/E (D/e)), D/e the inside over the wall: DR - 2. SDR 21 of PVC: 363.719 m/s
 * (calculation handbook, section 4.8).
 */
export function waveSpeed_mps(stiffness_ratio: number, insideByWall: number, open_mps: number = openWater_mps): number {
  return open_mps / Math.sqrt(1 + stiffness_ratio * insideByWall);
}

/** The same by outside and inside diameter, mm; average walls make it a little faster than the least walls of the standard do. */
export function waveSpeedIn_mps(material: keyof typeof stiffness, outside_mm: number, inside_mm: number): number {
  return waveSpeed_mps(stiffness[material], (2 * inside_mm) / (outside_mm - inside_mm));
}

/** Rise of pressure, kPa, when a flow is stopped: at once, and slowly. The lower of the two counts. */
export interface Surge {
  /** Water at 1000 kg/m3 times wave speed times velocity (Joukowsky). */
  readonly fast_kpa: number;
  /** That times the wave's way forth and back over the closing time: 2 L v / t. */
  readonly slow_kpa: number;
}

/** What stopping a velocity, m/s, in a time, s, does in a length of pipe, m. SDR 26, 1.5 m/s at once: 488.78 kPa (calculation handbook, check 4-36). */
export function surgeOf(wave_mps: number, velocity_mps: number, length_m: number, closing_s: number): Surge {
  return {
    fast_kpa: wave_mps * velocity_mps,
    slow_kpa: closing_s > 0 ? (2 * length_m * velocity_mps) / closing_s : Infinity,
  };
}

/** The rise that counts, kPa. */
export function rise_kpa({ fast_kpa, slow_kpa }: Surge): number {
  return Math.min(fast_kpa, slow_kpa);
}
