import { describe, expect, it } from "vitest";
import { lonLat } from "../../src/core/plane/coordinate.ts";
import { fieldAt, magneticField } from "../../src/core/plane/declination.ts";
import { type Source, titled } from "./source.ts";

const angleTolerance_deg = 0.01;
const fieldTolerance_nt = 0.3;

const testValues: Source = { read: "NOAA WMM2025 test values" };

/** Year, height in km, latitude, longitude; then declination and inclination in degrees and the field north, east and down in nT. */
const published = [
  { id: "8.5-1", at: [2025.0, 0, 80, 0], d: 1.28, i: 83.21, field_nt: [6521.6, 145.9, 54791.5] },
  { id: "8.5-2", at: [2025.0, 0, 0, 120], d: -0.16, i: -14.93, field_nt: [39677.8, -109.6, -10580.2] },
  { id: "8.5-3", at: [2025.0, 0, -80, 240], d: 68.78, i: -72.0, field_nt: [6117.5, 15751.9, -52022.5] },
  { id: "8.5-4", at: [2025.0, 100, 80, 0], d: 0.85, i: 83.26, field_nt: [6216.0, 92.4, 52598.8] },
  { id: "8.5-5", at: [2025.0, 100, -80, 240], d: 68.21, i: -72.19, field_nt: [5907.6, 14780.3, -49540.7] },
  { id: "8.5-6", at: [2027.5, 0, 80, 0], d: 2.59, i: 83.24, field_nt: [6500.8, 294.5, 54869.4] },
  { id: "8.5-7", at: [2027.5, 0, 0, 120], d: -0.24, i: -14.65, field_nt: [39701.6, -167.4, -10381.8] },
  { id: "8.5-8", at: [2027.5, 0, -80, 240], d: 68.49, i: -71.92, field_nt: [6200.7, 15730.3, -51783.7] },
  { id: "8.5-9", at: [2025.0, 65, 43, 93], d: 0.5, i: 64.1, field_nt: null },
  { id: "8.5-10", at: [2025.5, 6, -36, -137], d: 20.28, i: -52.11, field_nt: null },
] as const;

/** Declination on 1 January 2025 and on 1 January 2029. */
const samples = [
  { id: "8.5-11", lat: 42.6, lon: -76.7, in2025: -11.541, in2029: -11.388 },
  { id: "8.5-12", lat: 46.2, lon: -119.2, in2025: 14.124, in2029: 13.674 },
  { id: "8.5-13", lat: -34.5, lon: 19, in2025: -27.208, in2029: -28.16 },
  { id: "8.5-14", lat: 49.6, lon: 6.1, in2025: 2.846, in2029: 3.414 },
] as const;
const sampled: Source = { computed: "World Magnetic Model 2025" };

describe("magnetic declination", () => {
  it.each(published.map((row) => [titled(row.id, testValues), row] as const))("%s", (_, row) => {
    const [year, height_km, lat, lon] = row.at;
    const field = fieldAt(lonLat(lon, lat), year, height_km * 1000);
    expect(Math.abs(field.declination_deg - row.d)).toBeLessThanOrEqual(angleTolerance_deg);
    expect(Math.abs(field.inclination_deg - row.i)).toBeLessThanOrEqual(angleTolerance_deg);
    if (row.field_nt === null) return;
    const [north_nt, east_nt, down_nt] = row.field_nt;
    expect(Math.abs(field.north_nt - north_nt)).toBeLessThanOrEqual(fieldTolerance_nt);
    expect(Math.abs(field.east_nt - east_nt)).toBeLessThanOrEqual(fieldTolerance_nt);
    expect(Math.abs(field.down_nt - down_nt)).toBeLessThanOrEqual(fieldTolerance_nt);
  });

  it.each(samples.map((row) => [titled(row.id, sampled), row] as const))("%s", (_, { lat, lon, in2025, in2029 }) => {
    for (const [year, expected_deg] of [
      [2025, in2025],
      [2029, in2029],
    ] as const) {
      const answer = magneticField(lonLat(lon, lat), { year, month: 1, day: 1 });
      if (!answer.ok) throw new Error(answer.reason);
      expect(Math.abs(answer.field.declination_deg - expected_deg)).toBeLessThanOrEqual(angleTolerance_deg);
    }
  });
});
