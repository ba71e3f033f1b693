import type { Coating, TensileClass, Wire } from "../../project/project.ts";

/** Standard gravity, m/s2. */
export const gravity_mps2 = 9.80665;
/** Density of steel, kg/m3; modulus of elasticity, Pa; thermal expansion, 1/K. From memory of any table of steel. */
export const steelDensity_kgpm3 = 7850;
export const steelModulus_pa = 200e9;
export const steelExpansion_perK = 11.7e-6;

const ksi_pa = 6.894757293168e6;

/**
 * Least strength by class: grades 200, 180, 140 of ASTM A854/A854M (200, 180, 140 ksi; its scope was read); low carbon about 60 ksi (a
 * fence-wire supplier's 460 lbf for 12 1/2 gauge). Unknown counts as low carbon, to be on the safe side.
 */
const strength_ksi: Readonly<Record<TensileClass, number>> = {
  unknown: 60,
  "low-carbon": 60,
  "grade-140": 140,
  "grade-180": 180,
  "grade-200": 200,
};

/** Zinc by class, kg per m2 of surface. From memory of ASTM A641/A641M; unknown counts as none. */
export const zinc_kgpm2: Readonly<Record<Coating, number>> = { unknown: 0, bare: 0, "class-1": 0.085, "class-3": 0.25 };

/** Cross-section of a wire, m2: pi d2 / 4. */
export function wireArea_m2(diameter_mm: number): number {
  return (Math.PI / 4) * (diameter_mm / 1000) ** 2;
}

/** Mass of a wire, kg/m: steel and zinc. 12 1/2 gauge bare: 0.038985 kg/m. */
export function wireMass_kgpm({ diameter_mm, coating }: Pick<Wire, "diameter_mm" | "coating">): number {
  return steelDensity_kgpm3 * wireArea_m2(diameter_mm) + zinc_kgpm2[coating] * Math.PI * (diameter_mm / 1000);
}

/** Breaking load, N: strength times the area of the bare steel; zinc adds none. 12 1/2 gauge, grade 200: 1539.5 lbf. */
export function breakingLoad_n({ diameter_mm, tensile }: Pick<Wire, "diameter_mm" | "tensile">): number {
  return leastStrength_pa(tensile) * wireArea_m2(diameter_mm);
}

/** Least strength of a class of steel wire, Pa: 200 ksi are 1379 MPa. */
export function leastStrength_pa(tensile: TensileClass): number {
  return strength_ksi[tensile] * ksi_pa;
}
