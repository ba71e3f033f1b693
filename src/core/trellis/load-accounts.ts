import { type Account, type AccountInput, account, commonPractice, geometry, input, remark } from "../account.ts";
import { type Phrase, say } from "../finding.ts";
import type { Block } from "../project/project.ts";
import type { WireLoads } from "./loads.ts";
import { dropUnderWeight_m, sag_m } from "./mechanics/sag.ts";
import { gravity_mps2, leastStrength_pa, steelDensity_kgpm3, wireArea_m2, zinc_kgpm2 } from "./mechanics/steel.ts";
import { changedTension_n, stretch_m } from "./mechanics/stretch.ts";
import type { HungWire } from "./trellis.ts";
import { hoseWeight_npm } from "./wire-loads.ts";

/** One wire of a block with its loads and the block's settings. */
export interface ToldWire {
  readonly hung: HungWire;
  readonly loads: WireLoads;
  readonly block: Block;
}

/** The numbers of `WireLoads`; `drop_m` is that of its check. */
export type WireLoadName = Exclude<keyof WireLoads, "check"> | "drop_m";

const parabola = "parabola of a hung wire: w L2 / (8 T)";
const changeOfState = "change of state of a span between fixed supports, overhead-line mechanics, from memory";

function told(
  formula: Phrase,
  source: string,
  inputs: readonly AccountInput[],
  by: (...numbers: number[]) => number,
): Account {
  return account({ formula, source, inputs }, by);
}

/** How each number about a wire came about; all SI. */
export const wireLoadAccounts: Readonly<Record<WireLoadName, (wire: ToldWire) => Account>> = {
  bay_m: ({ loads }) =>
    told(
      say`The longest distance between two posts in the rows of the block; in the bays at the ends what the end post leans out is counted in.`,
      geometry,
      [input("Longest bay", "length", loads.bay_m)],
      Number,
    ),
  run_m: ({ loads }) =>
    told(
      say`The longest of the block's rows, along the ground between the ends of this wire.`,
      geometry,
      [input("Longest run", "length", loads.run_m)],
      Number,
    ),
  ownWeight_npm: ({ hung: { wire } }) =>
    told(
      say`Cross-section times the density of steel, and the zinc on its surface, times gravity.`,
      "steel 7850 kg/m3; zinc by class of coating, from memory",
      [
        input("Thickness", "diameter", wire.diameter_mm),
        input("Density, kg/m3", "count", steelDensity_kgpm3),
        input("Zinc, kg/m2", "count", zinc_kgpm2[wire.coating]),
        input("Gravity, m/s2", "count", gravity_mps2),
      ],
      (d = 0, density = 0, zinc = 0, g = 0) => (density * wireArea_m2(d) + (zinc * Math.PI * d) / 1000) * g,
    ),
  hoseWeight_npm: ({ hung: { wire }, block }) =>
    told(
      say`A hose of 0.6 by 0.7 in full of water, in equal shares on the drip wires of a row; 0 on other wires.`,
      "geometry, polyethylene and water",
      [
        input("Hose full of water, N/m", "count", wire.purpose === "drip" ? hoseWeight_npm : 0),
        input(`Wires for ${wire.purpose}`, "count", alike({ wire }, block)),
      ],
      (weight = 0, wires = 1) => weight / wires,
    ),
  cropWeight_npm: ({ hung: { wire }, block }) =>
    told(
      say`Fruit of a vine times gravity over the vine spacing, in equal shares on the fruiting wires of a row; 0 on other wires.`,
      commonPractice,
      [
        input("Fruit of a vine", "mass", wire.purpose === "fruiting" ? (block.trellis.cropPerVine_kg ?? 0) : 0),
        input("Gravity, m/s2", "count", gravity_mps2),
        input("Vine spacing", "length", block.rows.vineSpacing_m),
        input(`Wires for ${wire.purpose}`, "count", alike({ wire }, block)),
      ],
      (mass = 0, g = 0, spacing = 1, wires = 1) => (mass * g) / spacing / wires,
    ),
  breaking_n: ({ hung: { wire } }) =>
    told(
      say`Least strength of its class times the cross-section of the steel; zinc adds none.`,
      "classes of ASTM A854/A854M; low carbon 60 ksi after a fence-wire supplier's article; unknown as low carbon",
      [
        remark("Class", wire.tensile),
        input("Strength, N/mm2", "count", leastStrength_pa(wire.tensile) / 1e6),
        input("Thickness", "diameter", wire.diameter_mm),
      ],
      (strength = 0, d = 0) => strength * 1e6 * wireArea_m2(d),
    ),
  tension_n: ({ loads }) =>
    told(
      say`As set for this wire; a wire that is not tightened is reckoned as held by a newton.`,
      commonPractice,
      [input("Tension", "force", loads.tension_n)],
      Number,
    ),
  coldest_n: (wire) => changed(wire, "Coldest", wire.block.trellis.coldest_c),
  hottest_n: (wire) => changed(wire, "Hottest", wire.block.trellis.hottest_c),
  cropRigid_n: (wire) => {
    const { hung, loads } = wire;
    return told(
      say`One bay between ends that do not give at all: the tension that a bay of this length has when the fruit is hung on it. Where the ends give way, the tension stays as it was set.`,
      changeOfState,
      [
        ...spanInputs(wire),
        input("Weight of the fruit, N/m", "count", loads.cropWeight_npm),
        input("Thickness", "diameter", hung.wire.diameter_mm),
      ],
      (tension = 0, usual = 0, bay = 0, crop = 0, d = 0) =>
        changedTension_n({ tension_n: tension, weight_npm: usual }, usual + crop, bay, wireArea_m2(d), 0),
    );
  },
  share_ratio: ({ loads }) =>
    told(
      say`The largest of the tensions as set, in the cold, in the heat and at harvest, over the breaking load.`,
      commonPractice,
      [
        input("As set", "force", loads.tension_n),
        input("In the cold", "force", loads.coldest_n),
        input("In the heat", "force", loads.hottest_n),
        input("At harvest", "force", loads.cropRigid_n),
        input("Breaking load", "force", loads.breaking_n),
      ],
      (set = 0, cold = 0, hot = 0, crop = 0, breaking = 1) => Math.max(set, cold, hot, crop) / breaking,
    ),
  sag_m: ({ loads }) => sagged(loads, "Tension as set", loads.tension_n, 0),
  hottestSag_m: ({ loads }) => sagged(loads, "Tension in the heat", loads.hottest_n, 0),
  cropSag_m: ({ loads }) => sagged(loads, "Tension as set", loads.tension_n, loads.cropWeight_npm),
  takeUp_m: ({ hung, loads }) =>
    told(
      say`Tension times length over cross-section and stiffness of steel, 200 GPa. What a wire is slack before comes on top.`,
      "Hooke's law",
      [
        input("Tension as set", "force", loads.tension_n),
        input("Longest run", "length", loads.run_m),
        input("Thickness", "diameter", hung.wire.diameter_mm),
      ],
      (tension = 0, run = 0, d = 0) => stretch_m(tension, run, wireArea_m2(d)),
    ),
  drop_m: ({ loads }) =>
    told(
      say`Weight times the length of the bay over four times the tension. Goes it down farther, the wire is slacker than set.`,
      "extension notes on tension by the pull at mid-span: T = P L / (4 d)",
      [
        input("Hung at mid-bay", "mass", loads.check.mass_kg),
        input("Gravity, m/s2", "count", gravity_mps2),
        input("Longest bay", "length", loads.bay_m),
        input("Tension as set", "force", loads.tension_n),
      ],
      (mass = 0, g = 0, bay = 0, tension = 1) => dropUnderWeight_m(mass * g, bay, tension),
    ),
};

/** Tension after a change of temperature from when the wire was tightened. */
function changed(wire: ToldWire, when: string, then_c: number): Account {
  return told(
    say`One bay between fixed supports, its sag counted in: cooling shortens the wire and tightens it, warmth slackens it. Steel 200 GPa, 11.7 millionths a kelvin.`,
    changeOfState,
    [
      ...spanInputs(wire),
      input("Tightened at", "temperature", wire.block.trellis.tensionedAt_c),
      input(when, "temperature", then_c),
      input("Thickness", "diameter", wire.hung.wire.diameter_mm),
    ],
    (tension = 0, weight = 0, bay = 0, from = 0, to = 0, d = 0) =>
      changedTension_n({ tension_n: tension, weight_npm: weight }, weight, bay, wireArea_m2(d), to - from),
  );
}

function spanInputs({ loads }: ToldWire): readonly AccountInput[] {
  return [
    input("Tension as set", "force", loads.tension_n),
    input("Weight of wire and hose, N/m", "count", loads.ownWeight_npm + loads.hoseWeight_npm),
    input("Longest bay", "length", loads.bay_m),
  ];
}

function sagged(loads: WireLoads, name: string, tension_n: number, crop_npm: number): Account {
  return told(
    say`Weight per length times the length of the bay squared over eight times the tension.`,
    parabola,
    [
      input("Weight of all that hangs, N/m", "count", loads.ownWeight_npm + loads.hoseWeight_npm + crop_npm),
      input("Longest bay", "length", loads.bay_m),
      input(name, "force", tension_n),
    ],
    (weight = 0, bay = 0, tension = 1) => sag_m(weight, bay, tension),
  );
}

function alike({ wire }: Pick<HungWire, "wire">, { trellis }: Block): number {
  return trellis.wires.reduce((sum, { purpose, count }) => sum + (purpose === wire.purpose ? count : 0), 0);
}
