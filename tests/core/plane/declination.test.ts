import { describe, expect, it } from "vitest";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { decimalYear, firstModelDay, lastModelDay, magneticField } from "../../../src/core/plane/declination.ts";

const vineyard = lonLat(-122.3, 38.3);

describe("the compass at a vineyard", () => {
  it("points east of true north in the west of North America, a little less each year", () => {
    const answers = [2025, 2026, 2027, 2028, 2029].map((year) => magneticField(vineyard, { year, month: 6, day: 1 }));
    const declinations = answers.map((answer) => (answer.ok ? answer.field.declination_deg : Number.NaN));
    expect(declinations.every((declination) => declination > 11 && declination < 14)).toBe(true);
    expect(declinations).toEqual([...declinations].sort((a, b) => b - a));
  });

  it("is known on the model's first and last day, and on no day outside them", () => {
    expect(magneticField(vineyard, firstModelDay).ok).toBe(true);
    expect(magneticField(vineyard, lastModelDay).ok).toBe(true);
    expect(magneticField(vineyard, { year: 2024, month: 11, day: 12 })).toEqual({
      ok: false,
      reason: "before the model",
    });
    expect(magneticField(vineyard, { year: 2030, month: 1, day: 1 })).toEqual({ ok: false, reason: "after the model" });
  });

  it("is not asked for on a day that no calendar has", () => {
    const days = [
      [2026, 2, 29],
      [2026, 0, 1],
      [2026, 13, 1],
      [2026, 4, 31],
      [2026, 4, 0],
      [2026.5, 4, 1],
    ] as const;
    for (const [year, month, day] of days) {
      expect(magneticField(vineyard, { year, month, day })).toEqual({ ok: false, reason: "not a day" });
    }
    expect(magneticField(vineyard, { year: 2028, month: 2, day: 29 }).ok).toBe(true);
  });

  it("is the same on both sides of the antimeridian", () => {
    const west = magneticField(lonLat(180, -17), { year: 2026, month: 1, day: 1 });
    const east = magneticField(lonLat(-180, -17), { year: 2026, month: 1, day: 1 });
    if (!west.ok || !east.ok) throw new Error("no field");
    expect(west.field.declination_deg).toBeCloseTo(east.field.declination_deg, 9);
  });
});

describe("a year with its fraction", () => {
  it("counts leap days", () => {
    expect(decimalYear({ year: 2027, month: 1, day: 1 })).toBe(2027);
    expect(decimalYear({ year: 2027, month: 12, day: 31 })).toBeCloseTo(2027 + 364 / 365, 12);
    expect(decimalYear({ year: 2028, month: 3, day: 1 })).toBeCloseTo(2028 + 60 / 366, 12);
  });
});
