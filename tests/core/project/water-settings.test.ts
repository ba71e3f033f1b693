import { describe, expect, it } from "vitest";
import type { Json, Project } from "../../../src/core/project/project.ts";
import { createFile, fixtureText, projectIn } from "../../support/project-files.ts";

/** A pound-force (4.4482216152605 N) on a square inch. */
const psi_kpa = 44_482_216_152_605 / 6_451_600_000_000;
const gallon_l = 3.785411784;
const gallonPerMinute_lph = 227.12470704;
const digits = 9;

function createWater(sections: Readonly<Record<string, Json>>): Project {
  return projectIn(createFile(sections));
}

const codes = ({ findings }: Project) => findings.map(({ code }) => code);

describe("water that a file states", () => {
  const { water, sets, season, blocks } = projectIn(fixtureText("good", "everything-stated.geojson"));

  it("is read in SI whatever unit it is written in", () => {
    expect(water.kind).toBe("pump");
    expect(water.staticPressure_kpa).toBeCloseTo(70 * psi_kpa, digits);
    expect(water.tests).toHaveLength(2);
    expect(water.tests[0]?.volume_l).toBeCloseTo(5 * gallon_l, digits);
    expect(water.tests[0]?.time_h).toBeCloseTo(20 / 3600, digits);
    expect(water.tests[0]?.pressure_kpa).toBeCloseTo(40 * psi_kpa, digits);
    expect(water.tests[1]?.pressure_kpa).toBeNull();
    expect(water.pump[0]).toEqual({ flow_lph: 0, pressure_kpa: expect.closeTo(70 * psi_kpa, digits) });
    expect(water.pump[1]?.flow_lph).toBeCloseTo(12 * gallonPerMinute_lph, digits);
    expect(water.leastFlow_lph).toBeCloseTo(3 * gallonPerMinute_lph, digits);
    expect(water.tankLevel_m).toBeCloseTo(6.096, digits);
    expect(water.limitFlow_lph).toBeCloseTo(15 * gallonPerMinute_lph, digits);
    expect(water.others_lph).toBeCloseTo(2 * gallonPerMinute_lph, digits);
    expect(water.recovery_lph).toBeCloseTo(6 * gallonPerMinute_lph, digits);
    expect(water.stored_l).toBeCloseTo(2500 * gallon_l, digits);
    expect(water.height_m).toBeCloseTo(30.48, digits);
    expect([water.hoursADay_h, water.margin_ratio, water.temperature_c]).toEqual([10, 0.25, 15]);
    expect(water.closing_h).toBeCloseTo(3 / 3600, digits);
  });

  it("has its head works in the order they are written, each with what is usual of its kind where it does not say", () => {
    const [valve, filter, regulator, ...others] = water.headWorks;
    expect(others).toEqual([]);
    expect(valve).toEqual({
      kind: "isolating-valve",
      loss_kpa: 2,
      dirtyLoss_kpa: 2,
      atFlow_lph: null,
      outlet_kpa: null,
    });
    expect(filter?.loss_kpa).toBeCloseTo(3 * psi_kpa, digits);
    expect(filter?.dirtyLoss_kpa).toBeCloseTo(8 * psi_kpa, digits);
    expect(filter?.atFlow_lph).toBeCloseTo(10 * gallonPerMinute_lph, digits);
    expect(regulator?.outlet_kpa).toBeCloseTo(30 * psi_kpa, digits);
    expect(regulator?.dirtyLoss_kpa).toBe(regulator?.loss_kpa);
  });

  it("has its sets, its season and the drip of its blocks", () => {
    expect(sets).toEqual({
      pattern: "cock-a-row",
      count: 3,
      follow: "varieties",
      pins: [{ block: "east", fromRow: 1, toRow: 4, set: 2 }],
      regulator_kpa: expect.closeTo(25 * psi_kpa, digits),
      control: "controller",
      sizing: "chosen",
      family: "pvc-sdr21",
      mostVelocity_mps: 1.2,
      friction: "epanet",
      roughness: 140,
    });
    expect(season.reference_mmpd?.slice(0, 3).map((mm) => Number(mm.toFixed(6)))).toEqual([1.27, 2.032, 3]);
    expect(season.rain_mm?.[0]).toBeCloseTo(101.6, digits);
    expect(season.soil_mmpm).toBeCloseTo(45.72, digits);
    expect([season.method, season.stages, season.shaded_ratio]).toEqual(["hargreaves", [3.5, 5.5, 8, 10.5], 0.4]);
    const drip = blocks[0]?.drip;
    expect(drip?.hoseInside_mm).toBeCloseTo(15.748, digits);
    expect([drip?.emitterKind, drip?.emitterExponent, drip?.emitterPlacing, drip?.barb]).toEqual([
      "plain",
      0.45,
      "in-line",
      "large",
    ]);
  });
});

describe("water that a file does not state", () => {
  it("is not known, and nothing of it is told as taken for usual", () => {
    const project = createWater({});
    expect([project.water.kind, project.sets.sizing, project.season.reference_mmpd]).toEqual([
      "unknown",
      "chosen",
      null,
    ]);
    const said = project.findings.flatMap(({ message }) => message).join(" ");
    expect(said).not.toContain("a day");
  });

  it("keeps the pipe that the trench states, unless sizes are to be chosen", () => {
    const trench = { pipe: { size: "pvc-40-2in" } };
    expect(createWater({ trench }).sets.sizing).toBe("as-set");
    expect(createWater({ trench, sets: { sizing: "chosen" } }).sets.sizing).toBe("chosen");
  });

  it("has an exponent of its own for a plain emitter and for a compensating one", () => {
    const exponent = (emitterKind: string) => createWater({ drip: { emitterKind } }).blocks[0]?.drip.emitterExponent;
    expect([exponent("plain"), exponent("compensating")]).toEqual([0.5, 0]);
  });
});

describe("water that cannot be read", () => {
  it.each<[string, Readonly<Record<string, Json>>]>([
    ["an unknown kind of water", { water: { kind: "spring-fed" } }],
    ["a bucket test without a time", { water: { tests: [{ volume: "5 gal" }] } }],
    ["eleven months", { season: { reference: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1] } }],
    ["pins without numbers", { sets: { pins: [{ rows: "the first ones", set: 1 }] } }],
  ])("%s is said, and what is usual stands in", (_, sections) => {
    const project = createWater(sections);
    expect(codes(project)).toContain("project/bad-setting");
    expect([project.water.kind, project.water.tests, project.sets.pins, project.season.reference_mmpd]).toEqual([
      "unknown",
      [],
      [],
      null,
    ]);
  });

  it("a share of more than nine tenths kept back is out of range", () => {
    expect(codes(createWater({ water: { margin: "95 %" } }))).toContain("project/setting-out-of-range");
  });
});
