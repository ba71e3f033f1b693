/** Megajoules a square metre evaporate so many mm of water. FAO-56 table 3. */
const evaporated_mm = 0.408;

/** Water that grass gives off, mm a day, from temperatures and daylight outside the air alone; not below 0. FAO-56 eq. 52. */
export function hargreaves_mmpd(lowest_c: number, highest_c: number, outside_mjpm2d: number): number {
  const warming_c = Math.sqrt(Math.max(0, highest_c - lowest_c));
  return Math.max(0, 0.0023 * ((lowest_c + highest_c) / 2 + 17.8) * warming_c * evaporated_mm * outside_mjpm2d);
}
