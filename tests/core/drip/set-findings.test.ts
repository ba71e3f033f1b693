import { describe, expect, it } from "vitest";
import { runTimeFindings } from "../../../src/core/drip/run-time-findings.ts";
import { setFindings } from "../../../src/core/drip/set-findings.ts";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

const where = { placeOf: () => null, rowOf: (lateral: number) => String(lateral + 1) };

function found(sketch: WateringSketch) {
  const job = createWateringJob(sketch);
  const watering = waterRows(job);
  if (watering === null) throw new Error("nothing was worked out");
  return [...setFindings(job, watering, where), ...runTimeFindings(job, watering)];
}

const codesOf = (sketch: WateringSketch) => found(sketch).map(({ code }) => code);

const town = (limitFlow_lph: number) =>
  ({ kind: "town", staticPressure_kpa: 200, limitFlow_lph, tankLevel_m: null }) as const;

/** Grass gives off 5 mm a day all year, vines 3.5: of 6 m2 each 21 L, and half of it is usual. */
const season = {
  reference_mmpd: new Array<number>(12).fill(5),
  cropStart: 0.7,
  cropMid: 0.7,
  cropEnd: 0.7,
  soil_mmpm: 1,
};

describe("what sets have to say", () => {
  it("is nothing where the water is enough", () => {
    expect(codesOf({})).toEqual([]);
  });

  it("is nothing while the water is not known", () => {
    expect(codesOf({ water: { kind: "unknown" }, season })).toEqual([]);
  });

  it("names the row that lacks most and how much", () => {
    const [finding] = found({ rows: 4, water: { tankLevel_m: 8 } });
    expect(finding?.code).toBe("drip/short-of-water");
    expect(finding?.message).toContainEqual(expect.objectContaining({ kind: "pressure" }));
  });

  it("tells that even a single row is too much", () => {
    expect(codesOf({ water: town(30) })).toContain("drip/row-above-supply");
  });

  it("tells that the sets that are asked for take too much", () => {
    expect(codesOf({ water: town(100), sets: { count: 1 } })).toContain("drip/set-above-supply");
  });

  it("tells that pressure drives more through plain emitters than the water gives, and that regulators stop it", () => {
    expect(codesOf({ water: town(170) })).toContain("drip/pressure-takes-more");
    expect(codesOf({ water: town(170), sets: { regulator_kpa: 105 } })).not.toContain("drip/pressure-takes-more");
  });

  it("blames a regulator that holds too much back, not the water", () => {
    const codes = codesOf({ water: town(5000), sets: { regulator_kpa: 60 } });
    expect(codes).toContain("drip/regulator-too-low");
    expect(codes).not.toContain("drip/short-of-water");
  });

  it("tells that a set is less than the pump holds steady", () => {
    const pump = [
      { flow_lph: 0, pressure_kpa: 300 },
      { flow_lph: 4000, pressure_kpa: 150 },
    ];
    expect(codesOf({ water: { kind: "pump", tankLevel_m: null, pump, leastFlow_lph: 900 } })).toContain(
      "drip/set-below-least",
    );
  });

  it("tells which rows are not in the set they were put in", () => {
    const pins = (set: number) => [{ block: null, fromRow: 1, toRow: 1, set }];
    expect(codesOf({ rows: 4, sets: { pins: pins(9) } })).toContain("drip/pins-not-kept");
    expect(codesOf({ rows: 4, sets: { pins: pins(2) } })).not.toContain("drip/pins-not-kept");
  });

  it("tells where water runs too fast in pipe that is to stay", () => {
    const narrow = { ...createWateringJob().pipe, inside_mm: 6 };
    const job = { ...createWateringJob({ water: { tankLevel_m: 60 }, sets: { sizing: "as-set" } }), pipe: narrow };
    const watering = waterRows(job);
    const codes = watering === null ? [] : setFindings(job, watering, where).map(({ code }) => code);
    expect(codes).toContain("drip/fast-water");
  });

  it("tells where the line climbs above its water", () => {
    expect(codesOf({ lineRise_ratio: 1, sets: { sizing: "as-set" } })).toContain("drip/line-above-water");
  });
});

describe("what the hours say", () => {
  it("is that there are too few of them for what is usual", () => {
    expect(codesOf({ season, water: { hoursADay_h: 4 } })).toContain("drip/hours-too-few");
  });

  it("is only a note where the usual share fits and the peak share does not", () => {
    const [finding] = found({ season, water: { hoursADay_h: 8 } });
    expect(finding).toMatchObject({ code: "drip/hours-too-few", severity: "note" });
  });

  it("is that runs are short beside the time pipes take to fill", () => {
    const little = { ...season, usualShare_ratio: 0.02, peakShare_ratio: 0.02 };
    expect(codesOf({ season: little })).toContain("drip/short-runs");
  });

  it("is that less comes back than the vines take", () => {
    expect(codesOf({ season, water: { recovery_lph: 10 } })).toContain("drip/recovery-too-slow");
    expect(codesOf({ season, water: { recovery_lph: 1000 } })).not.toContain("drip/recovery-too-slow");
  });

  it("is that the store runs dry within a day", () => {
    expect(codesOf({ season, water: { stored_l: 100 } })).toContain("drip/stored-too-little");
    expect(codesOf({ season, water: { stored_l: 100_000 } })).not.toContain("drip/stored-too-little");
  });
});
