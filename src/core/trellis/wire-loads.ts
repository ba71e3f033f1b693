import type { Block } from "../project/project.ts";
import type { WireLoads } from "./loads.ts";
import { dropUnderWeight_m, sag_m } from "./mechanics/sag.ts";
import { breakingLoad_n, gravity_mps2, wireArea_m2, wireMass_kgpm } from "./mechanics/steel.ts";
import { changedTension_n, stretch_m } from "./mechanics/stretch.ts";
import type { HungWire } from "./trellis.ts";

/** Hose of 0.600 by 0.700 in full of water: tube 0.0606 and water 0.18241 kg/m (calculation handbook 2.3). */
export const hoseWeight_npm = 2.38318;
/** A bottle of a litre, full: what is hung at mid-bay. */
const testMass_kg = 1;
/** A wire that is not tightened at all is reckoned as if a newton held it: it hangs, and is not without end. */
const loose_n = 1;

/**
 * Tension and sag of one wire in the longest bay, and its take-up over the longest run. Hose hangs on drip wires, fruit evenly on fruiting
 * wires. Weight and temperature change the tension as of one span between fixed supports; at harvest both limits are given, ends that do
 * not give at all and ends that give way, since reality lies between. Calculation handbook 2.1 to 2.4.
 */
export function wireLoads({ wire }: HungWire, block: Block, bay_m: number, run_m: number): WireLoads {
  const { trellis, rows } = block;
  const area_m2 = wireArea_m2(wire.diameter_mm);
  const ownWeight_npm = wireMass_kgpm(wire) * gravity_mps2;
  const alike = trellis.wires.reduce((sum, { purpose, count }) => sum + (purpose === wire.purpose ? count : 0), 0);
  const hose_npm = wire.purpose === "drip" ? hoseWeight_npm / alike : 0;
  const fruit_npm = ((trellis.cropPerVine_kg ?? 0) * gravity_mps2) / rows.vineSpacing_m;
  const crop_npm = wire.purpose === "fruiting" ? fruit_npm / alike : 0;
  const usual_npm = ownWeight_npm + hose_npm;
  const harvest_npm = usual_npm + crop_npm;
  const tension_n = Math.max(wire.tension_n, loose_n);
  const breaking_n = breakingLoad_n(wire);
  const set = { tension_n, weight_npm: usual_npm };
  const at = (weight_npm: number, temperature_c: number) =>
    changedTension_n(set, weight_npm, bay_m, area_m2, temperature_c - trellis.tensionedAt_c);
  const coldest_n = at(usual_npm, trellis.coldest_c);
  const hottest_n = at(usual_npm, trellis.hottest_c);
  const cropRigid_n = crop_npm === 0 ? tension_n : at(harvest_npm, trellis.tensionedAt_c);
  return {
    bay_m,
    run_m,
    ownWeight_npm,
    hoseWeight_npm: hose_npm,
    cropWeight_npm: crop_npm,
    breaking_n,
    tension_n,
    coldest_n,
    hottest_n,
    cropRigid_n,
    share_ratio: Math.max(tension_n, coldest_n, hottest_n, cropRigid_n) / breaking_n,
    sag_m: sag_m(usual_npm, bay_m, tension_n),
    hottestSag_m: sag_m(usual_npm, bay_m, hottest_n),
    cropSag_m: sag_m(harvest_npm, bay_m, tension_n),
    takeUp_m: stretch_m(tension_n, run_m, area_m2),
    check: { mass_kg: testMass_kg, drop_m: dropUnderWeight_m(testMass_kg * gravity_mps2, bay_m, tension_n) },
  };
}
