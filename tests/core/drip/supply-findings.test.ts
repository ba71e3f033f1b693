import { expect, test } from "vitest";
import { supplyFindings } from "../../../src/core/drip/supply-findings.ts";
import type { Finding } from "../../../src/core/finding.ts";
import { usualHeadWork, usualWater } from "../../../src/core/project/water-defaults.ts";
import type { BucketTest, SetSettings, WaterSettings } from "../../../src/core/project/water-settings.ts";
import { inUnit, text } from "../../../src/core/units.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

const gallon_l = 1 / inUnit("volume", 1, "gal");
const gpm_lph = 60 * gallon_l;
const psi_kpa = 1 / inUnit("pressure", 1, "psi");
const bucket = (gallons: number, seconds: number, psi: number | null): BucketTest => ({
  volume_l: gallons * gallon_l,
  time_h: seconds / 3600,
  pressure_kpa: psi === null ? null : psi * psi_kpa,
});

/** A farm tap that is measured well, with the usual head works. */
const sound: Partial<WaterSettings> = {
  kind: "measured",
  staticPressure_kpa: 60 * psi_kpa,
  tests: [bucket(5, 30, 50), bucket(5, 20, 40)],
  headWorks: usualWater("us").headWorks,
};

function saidOf(water: Partial<WaterSettings>, more: WateringSketch = {}): readonly Finding[] {
  return supplyFindings(createWateringJob({ ...more, water: { tankLevel_m: null, ...sound, ...water } }));
}

const codesOf = (found: readonly Finding[]) => found.map(({ code }) => code);
/** Without the cautions, which every known water has. */
const oddities = (water: Partial<WaterSettings>) => saidOf(water).filter(({ code }) => !cautions.includes(code));
const cautions: readonly string[] = [
  "drip/backflow",
  "drip/injection",
  "drip/electricity",
  "drip/pressure-hurts",
  "drip/water-quality",
  "drip/water-right",
];

/** The one oddity of that code, as a person in the United States reads it. */
function readOf(code: Finding["code"], water: Partial<WaterSettings>): string {
  const found = oddities(water).filter((finding) => finding.code === code);
  expect(found).toHaveLength(1);
  return found.map(({ message, remedy }) => `${text(message, "us")} ${text(remedy, "us")}`).join("");
}

test("water that is measured well is not odd, and has its cautions", () => {
  expect(oddities({})).toEqual([]);
  expect(codesOf(saidOf({}))).toEqual([
    "drip/backflow",
    "drip/pressure-hurts",
    "drip/water-quality",
    "drip/water-right",
  ]);
});

test("water that is not known yet says nothing at all", () => {
  expect(saidOf({ kind: "unknown", staticPressure_kpa: null, tests: [bucket(0, 0, 40)] })).toEqual([]);
});

test("a pressure that rises with the flow: swapped pressures are suspected", () => {
  const said = readOf("drip/pressure-rises", { tests: [bucket(5, 30, 40), bucket(5, 20, 50)] });
  expect(said).toContain("40 psi at 10 gal/min, but 50 psi at 15 gal/min");
  expect(said).toContain("the two pressures are swapped");
});

test("a pump point in gallons per hour among others per minute is suspected as such", () => {
  const said = readOf("drip/pressure-rises", {
    kind: "pump",
    staticPressure_kpa: null,
    pump: [
      { flow_lph: 10 * gpm_lph, pressure_kpa: 50 * psi_kpa },
      { flow_lph: (20 * gpm_lph) / 60, pressure_kpa: 40 * psi_kpa },
    ],
  });
  expect(said).toContain("20 gal/h was meant per minute, which is 20 gal/min");
});

test("a reading above the static pressure", () => {
  expect(readOf("drip/above-static", { tests: [bucket(5, 20, 70)] })).toContain(
    "70 psi at 15 gal/min is more than the static pressure, 60 psi",
  );
  expect(
    readOf("drip/above-static", {
      kind: "pump",
      pump: [{ flow_lph: 5 * gpm_lph, pressure_kpa: 80 * psi_kpa }],
    }),
  ).toContain("more than the static pressure");
  expect(readOf("drip/above-static", { kind: "tank", tankLevel_m: 10 })).toContain("a pump feeds the line");
});

test("a bucket without volume or time is left out", () => {
  expect(readOf("drip/no-flow-read", { tests: [bucket(5, 20, 40), bucket(5, 0, 40)] })).toContain("Bucket test 2");
  expect(readOf("drip/no-flow-read", { tests: [bucket(0, 20, 40), bucket(5, 20, 40)] })).toContain("nothing ran");
});

test("a pump whose points are all at no flow", () => {
  expect(readOf("drip/no-flow-read", { kind: "pump", pump: [{ flow_lph: 0, pressure_kpa: 400 }] })).toContain(
    "only the pressure at closed valves",
  );
});

test("seconds taken for hours: what they would give is said", () => {
  const said = readOf("drip/slow-bucket", { tests: [{ ...bucket(5, 20, 40), time_h: 20 }] });
  expect(said).toContain("took 20 h");
  expect(said).toContain("in seconds it would be 15 gal/min");
});

test("a bucket that nobody can time", () => {
  expect(readOf("drip/quick-bucket", { tests: [bucket(5, 1, 40)] })).toContain("minutes taken for seconds");
});

test("gallons per hour for gallons per minute: in the limit, and at the end of a pump's curve", () => {
  expect(readOf("drip/little-flow", { kind: "town", tests: [], limitFlow_lph: 12 * gallon_l })).toContain(
    "per minute it would be 12 gal/min",
  );
  const pump = [
    { flow_lph: 0, pressure_kpa: 60 * psi_kpa },
    { flow_lph: 15 * gallon_l, pressure_kpa: 40 * psi_kpa },
  ];
  expect(readOf("drip/little-flow", { kind: "pump", pump })).toContain("per minute it would be 15 gal/min");
});

test("psi and bar taken for kPa", () => {
  const inKpa = (static_kpa: number, test_kpa: number): Partial<WaterSettings> => ({
    staticPressure_kpa: static_kpa,
    tests: [{ ...bucket(5, 20, 0), pressure_kpa: test_kpa }],
    headWorks: [usualHeadWork("filter")],
  });
  expect(readOf("drip/low-pressure", inKpa(60, 40))).toMatch(/a gauge in psi taken for kPa.* it would be 60 psi/);
  expect(readOf("drip/low-pressure", inKpa(4, 3))).toMatch(/a gauge in bar taken for kPa.* it would be 58 psi/);
});

test("kPa taken for psi", () => {
  const said = readOf("drip/high-pressure", { staticPressure_kpa: 400 * psi_kpa });
  expect(said).toContain("The highest pressure of the water is 400 psi");
  expect(said).toContain("in kPa it would be 58 psi");
});

test("a limit that is a sixtieth of what was measured", () => {
  expect(readOf("drip/limit-unlike", { limitFlow_lph: 18 * gallon_l })).toContain("per hour and meant per minute");
  expect(codesOf(oddities({ limitFlow_lph: 8 * gpm_lph }))).toEqual([]);
});

test("a least flow that the pump never reaches", () => {
  const pump = [
    { flow_lph: 0, pressure_kpa: 60 * psi_kpa },
    { flow_lph: 15 * gpm_lph, pressure_kpa: 40 * psi_kpa },
  ];
  expect(readOf("drip/least-above-most", { kind: "pump", pump, leastFlow_lph: 600 * gpm_lph })).toContain(
    "10 gal/min may be meant",
  );
  expect(readOf("drip/least-above-most", { kind: "pump", pump, leastFlow_lph: 20 * gpm_lph })).toContain(
    "another pump",
  );
});

test("others that take all there is, and a limit below what others take", () => {
  expect(readOf("drip/others-take-all", { others_lph: 20 * gpm_lph })).toContain("Others take 20 gal/min");
  expect(readOf("drip/others-take-all", { others_lph: 6 * gpm_lph, limitFlow_lph: 5 * gpm_lph })).toContain(
    "a limit that is for the field alone",
  );
});

test("a dirty filter that loses less than a clean one", () => {
  const filter = { ...usualHeadWork("filter"), loss_kpa: 8 * psi_kpa, dirtyLoss_kpa: 3 * psi_kpa };
  expect(readOf("drip/dirty-below-clean", { headWorks: [filter] })).toContain("the two are swapped");
});

test("head works that leave nothing of a low tank", () => {
  const said = readOf("drip/head-works-take-all", {
    kind: "tank",
    tankLevel_m: 3,
    staticPressure_kpa: null,
    tests: [],
  });
  expect(said).toContain("at the gauge there is 4.3 psi");
});

test("a regulator that never has anything to regulate", () => {
  const headWorks = [usualHeadWork("filter"), { ...usualHeadWork("regulator"), outlet_kpa: 70 * psi_kpa }];
  expect(readOf("drip/idle-regulator", { headWorks })).toContain("set to 70 psi");
});

test("no filter, and injection or a shared supply without a backflow device, are warned of", () => {
  expect(codesOf(oddities({ headWorks: [] }))).toEqual(["drip/no-filter"]);
  const filter = usualHeadWork("filter");
  const injecting = { headWorks: [filter, usualHeadWork("injector-port")] };
  expect(codesOf(oddities(injecting))).toEqual(["drip/injector-without-backflow"]);
  expect(codesOf(saidOf(injecting))).toContain("drip/injection");
  expect(codesOf(oddities({ headWorks: [filter], kind: "town" }))).toEqual(["drip/shared-without-backflow"]);
  expect(codesOf(oddities({ headWorks: [filter], others_lph: gpm_lph }))).toEqual(["drip/shared-without-backflow"]);
});

test("a kind of water with what it needs not stated asks for just that", () => {
  expect(readOf("drip/water-incomplete", { tests: [] })).toContain("still wanted is a bucket test");
  expect(readOf("drip/water-incomplete", { tests: [], staticPressure_kpa: null })).toContain("nothing flowing, and a");
  expect(readOf("drip/water-incomplete", { kind: "town", tests: [] })).toContain("the flow you are allowed");
  expect(readOf("drip/water-incomplete", { kind: "pump", staticPressure_kpa: null })).toContain("points of its curve");
  expect(readOf("drip/water-incomplete", { kind: "tank", tests: [] })).toContain("the level of its water");
});

test("no pressure at all, and a limit of nothing, are fields left at nothing", () => {
  expect(readOf("drip/no-pressure", { staticPressure_kpa: 0, tests: [] })).toContain("a field left at nothing");
  expect(readOf("drip/limit-none", { limitFlow_lph: 0 })).toContain("where no limit was meant");
  expect(codesOf(oddities({ limitFlow_lph: 0, others_lph: gpm_lph }))).toEqual(["drip/limit-none"]);
});

test("a tank below its own outlet", () => {
  expect(readOf("drip/level-below", { kind: "tank", tankLevel_m: -2, tests: [] })).toContain("takes a pump");
});

test("readings that are thin are noted", () => {
  expect(codesOf(oddities({ staticPressure_kpa: null }))).toEqual(["drip/static-unknown"]);
  expect(codesOf(oddities({ kind: "town", staticPressure_kpa: null }))).toEqual(["drip/static-unknown"]);
  expect(codesOf(oddities({ tests: [bucket(5, 20, null)] }))).toEqual(["drip/no-pressure-read"]);
  expect(readOf("drip/no-flowing-pressure", { kind: "town", tests: [], limitFlow_lph: 8 * gpm_lph })).toContain(
    "it is reckoned to stay 60 psi up to the limit",
  );
  const pump = [{ flow_lph: 15 * gpm_lph, pressure_kpa: 40 * psi_kpa }];
  expect(codesOf(oddities({ kind: "pump", staticPressure_kpa: null, pump }))).toEqual(["drip/one-pump-point"]);
});

test("water without a main line asks for the source", () => {
  expect(codesOf(saidOf({}, { isWithoutLine: true }))).toContain("drip/no-line");
});

test("electricity is warned of where there is a pump or a controller", () => {
  const control = (sets: Partial<SetSettings>) => codesOf(saidOf({}, { sets })).includes("drip/electricity");
  expect([control({ control: "hand" }), control({ control: "controller" })]).toEqual([false, true]);
});
