/** Metre of water at 1000 kg/m³ and 9.80665 m/s² (calculation handbook, section 0.1). */
const metreOfWater_kpa = 9.80665;

/** Height of the column of water that presses as much. */
export function headOf_m(pressure_kpa: number): number {
  return pressure_kpa / metreOfWater_kpa;
}

/** What a column of water of that height presses. */
export function pressureOf_kpa(head_m: number): number {
  return head_m * metreOfWater_kpa;
}
