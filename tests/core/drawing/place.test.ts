import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { measurePath } from "../../../src/core/drawing/measure.ts";
import {
  courseBetween,
  drawingFrame,
  formatPlace,
  parseCourse,
  parsePlace,
  placeAt,
} from "../../../src/core/drawing/place.ts";
import { meanPosition } from "../../../src/core/drawing/walked.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { createFrame } from "../../../src/core/plane/frame.ts";
import { testFrame } from "../../support/create-project.ts";
import { drawnProject, fieldProject } from "../../support/drawn-files.ts";
import { destination, geodesic, geodesicArea } from "../../support/geodesic.ts";

/** Of a length, against GeographicLib: 1 mm in 100 m. */
const lengthTolerance_ratio = 1e-5;
const bearingTolerance_deg = 0.001;
/** Of an area: twice that of a length. */
const areaTolerance_ratio = 2e-5;

const latitude = fc.double({ min: -60, max: 60, noNaN: true });
const longitude = fc.double({ min: -180, max: 180, noNaN: true });
const offset = fc.double({ min: -3000, max: 3000, noNaN: true });
const turn = fc.double({ min: 0, max: 359.99, noNaN: true });
const length = fc.double({ min: 0.5, max: 1500, noNaN: true });

const turnApart_deg = (one: number, other: number) => Math.abs(((one - other + 540) % 360) - 180);

describe("a way from place to place, held against GeographicLib", () => {
  it("has its length and its bearing", () => {
    fc.assert(
      fc.property(latitude, longitude, offset, turn, length, (lat, lon, off, bearing_deg, length_m) => {
        const frame = createFrame(lonLat(lon, lat));
        const from = destination(lonLat(lon, lat), off, Math.abs(off));
        const to = destination(from, bearing_deg, length_m);
        const course = courseBetween(frame, from, to);
        const exact = geodesic(from, to);
        expect(Math.abs(course.length_m - exact.length_m)).toBeLessThan(length_m * lengthTolerance_ratio);
        expect(turnApart_deg(course.bearing_deg, exact.azimuth_deg)).toBeLessThan(bearingTolerance_deg);
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it("ends where it must", () => {
    fc.assert(
      fc.property(latitude, longitude, turn, length, (lat, lon, bearing_deg, length_m) => {
        const from = lonLat(lon, lat);
        const to = placeAt(createFrame(from), from, { length_m, bearing_deg });
        const exact = destination(from, bearing_deg, length_m);
        expect(geodesic(to, exact).length_m).toBeLessThan(Math.max(1e-4, length_m * lengthTolerance_ratio));
      }),
      { seed: 8, numRuns: 300 },
    );
  });

  it("is told to the north as 0, not as 360", () => {
    const from = lonLat(-76.9, 42.6);
    for (const [to, bearing_deg] of [
      [lonLat(-76.9, 42.601), 0],
      [lonLat(-76.9, 42.599), 180],
    ] as const) {
      expect(courseBetween(testFrame, from, to).bearing_deg).toBeCloseTo(bearing_deg, 9);
    }
  });
});

describe("a measured path", () => {
  it("has the area of the ellipsoid", () => {
    fc.assert(
      fc.property(latitude, longitude, fc.array(length, { minLength: 3, maxLength: 12 }), (lat, lon, reaches) => {
        const middle = lonLat(lon, lat);
        const corners = reaches.map((reach, i) => destination(middle, (-360 * i) / reaches.length, reach));
        const { area_m2, sides, length_m } = measurePath(createFrame(middle), corners, true);
        const exact = Math.abs(geodesicArea(corners));
        expect(Math.abs(Number(area_m2) - exact)).toBeLessThan(exact * areaTolerance_ratio + 0.01);
        expect(sides).toHaveLength(corners.length);
        const around = corners.reduce(
          (sum, at, i) => sum + geodesic(at, corners[(i + 1) % corners.length] ?? at).length_m,
          0,
        );
        expect(Math.abs(length_m - around)).toBeLessThan(around * lengthTolerance_ratio + 1e-6);
      }),
      { seed: 9, numRuns: 100 },
    );
  });

  it("has no area while it is open, or of fewer than three corners", () => {
    const corners = [lonLat(-76.9, 42.6), lonLat(-76.899, 42.6)];
    expect(measurePath(testFrame, corners, true)).toEqual(measurePath(testFrame, corners, false));
    expect(measurePath(testFrame, corners, false)).toMatchObject({ area_m2: null, sides: [{}] });
    expect(measurePath(testFrame, [], true)).toEqual({ sides: [], length_m: 0, area_m2: null });
  });
});

describe("the frame to draw in", () => {
  it("is the project's own, else that of its parcels, else one near by that stays", () => {
    const near = lonLat(10.01, 50.01);
    const stated = fieldProject([], { frame: { origin: [-76.9, 42.6] } });
    expect(drawingFrame(stated, near).origin).toEqual([-76.9, 42.6]);
    expect(drawingFrame(fieldProject(), near).origin[1]).toBeCloseTo(42.60054, 5);
    const empty = drawnProject([]);
    expect(drawingFrame(empty, near).origin).toEqual([10, 50]);
    expect(drawingFrame(empty, lonLat(10.0101, 50.0101))).toBe(drawingFrame(empty, near));
  });
});

describe("a place as text", () => {
  const close = (lat: number, lon: number) => [expect.closeTo(lon, 9), expect.closeTo(lat, 9)];

  test.each<[string, number, number]>([
    ["38.2914, -122.4580", 38.2914, -122.458],
    ["38.2914 -122.458", 38.2914, -122.458],
    ["  38.2914;-122.458 ", 38.2914, -122.458],
    ["38.2914,-122.458", 38.2914, -122.458],
    ["38, 122", 38, 122],
    ["+38.2914, +122.458", 38.2914, 122.458],
    [".5, -.25", 0.5, -0.25],
    ["38.2914 N 122.458 W", 38.2914, -122.458],
    ["38.2914N,122.458W", 38.2914, -122.458],
    ["N38.2914 W122.458", 38.2914, -122.458],
    ["N 38.2914, W 122.458", 38.2914, -122.458],
    ["38.2914° s 122.458° e", -38.2914, 122.458],
    ["122.458 W, 38.2914 N", 38.2914, -122.458],
    ["38.2914 north, 122.458 west", 38.2914, -122.458],
    ["38 deg 17.484' N, 122 deg 27.48' W", 38.2914, -122.458],
    ["38° 17.484′, -122° 27.48′", 38.2914, -122.458],
    ["38 17.484 -122 27.48", 38.2914, -122.458],
    [`38°17'29.04"N 122°27'28.8"W`, 38.2914, -122.458],
    ["38°17′29.04″ N, 122°27′28.8″ W", 38.2914, -122.458],
    ["38 17 29.04 N 122 27 28.8 W", 38.2914, -122.458],
    ["N 38 17 29.04 W 122 27 28.8", 38.2914, -122.458],
    ["−38.2914, 122.458", -38.2914, 122.458],
    ["-0° 30', -0° 15'", -0.5, -0.25],
    ["90, -180", 90, -180],
  ])("%s", (text, lat, lon) => {
    expect(parsePlace(text)).toEqual({ ok: true, at: close(lat, lon) });
  });

  test.each<[string, string]>([
    ["", "latitude, then longitude"],
    ["vineyard", "latitude, then longitude"],
    ["38.2914", "latitude, then longitude"],
    ["1, 2, 3", "latitude, then longitude"],
    ["38,2914 -122,4580", "comma"],
    ["38,2914, -122,4580", "comma"],
    ["38,2914; -122,4580", "comma"],
    ["38,2914 N 122,458 W", "comma"],
    ["38,2914", "comma"],
    ["91, 10", "latitude goes from -90 to 90"],
    ["-122.4580, 38.2914", "written first"],
    ["38, 181", "longitude goes from -180 to 180"],
    ["38 17 60, 122 27 0", "less than 60"],
    ["38 60.1, 122 27.5", "less than 60"],
    ["38.5 17.2, 122.5 27.5", "whole number"],
    ["38 17.2 29, 122 27.5 2", "whole number"],
    ["-38.2914 N, 122.458 W", "not both"],
    ["38.2914 N, 122.458", "for both"],
    ["38.2914 N, 12.4 S", "east or west"],
    ["N 38.2914 N, 122.458 W", "one letter"],
    ["38', 122", "latitude, then longitude"],
    ["38.2914 x 122.458", "latitude, then longitude"],
    ["NaN, Infinity", "latitude, then longitude"],
    ["1e1, 1e2", "latitude, then longitude"],
    ["9".repeat(200), "too long"],
  ])("%s is refused", (text, why) => {
    const read = parsePlace(text);
    expect(read.ok ? read.at : read.reason).toContain(why);
  });

  it("comes back as it was written", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -900_000_000, max: 900_000_000 }),
        fc.integer({ min: -1_800_000_000, max: 1_800_000_000 }),
        (lat, lon) => {
          const at = lonLat(lon / 1e7 + 0, lat / 1e7 + 0);
          expect(parsePlace(formatPlace(at))).toEqual({ ok: true, at });
        },
      ),
      { seed: 10, numRuns: 300 },
    );
    expect(formatPlace(lonLat(-122.458, 38.2914))).toBe("38.2914000, -122.4580000");
    expect(formatPlace(lonLat(-1e-9, 0))).toBe("0.0000000, 0.0000000");
  });

  it("never throws", () => {
    const marks = fc.constantFrom("3", "8", ".", ",", "-", "°", "'", '"', "n", "W", " ", ";", "e");
    fc.assert(
      fc.property(fc.array(marks, { maxLength: 30 }), (parts) => {
        const read = parsePlace(parts.join(""));
        if (read.ok) expect(Math.abs(read.at[1]) <= 90 && Math.abs(read.at[0]) <= 180).toBe(true);
        else expect(read.reason).not.toBe("");
      }),
      { seed: 11, numRuns: 2000 },
    );
  });
});

describe("a length and a bearing as text", () => {
  test.each<[string, "metric" | "us", number, number]>([
    ["32.4 m at 118", "metric", 32.4, 118],
    ["32.4 at 118", "metric", 32.4, 118],
    ["32.4 118°", "metric", 32.4, 118],
    ["120 ft 45.5°", "metric", 36.576, 45.5],
    ["120 45.5 deg", "us", 36.576, 45.5],
    ["120 m @ 0", "us", 120, 0],
    ["7 ft 6 in, 90", "us", 2.286, 90],
    ["7' 6\" at 90 true", "us", 2.286, 90],
    ["12.5m;360", "metric", 12.5, 0],
    ["1,000 ft at 10", "us", 304.8, 10],
  ])("%s (%s)", (text, units, length_m, bearing_deg) => {
    expect(parseCourse(text, units)).toEqual({ ok: true, length_m: expect.closeTo(length_m, 9), bearing_deg });
  });

  test.each<[string, string]>([
    ["", "a length and a bearing"],
    ["32.4 m", "a length and a bearing"],
    ["118", "a length and a bearing"],
    ["north 30 m", "a length and a bearing"],
    ["32,4 m at 118", "comma"],
    ["32.4 m at 118,5", "comma"],
    ["32,4", "comma"],
    ["0 m at 10", "more than nothing"],
    ["30 km at 10", "at most 20 km"],
    ["32.4 m at 361", "from 0 to 360"],
    ["32.4 m at 1.1.1", "from 0 to 360"],
    ["32.4 furlongs at 118", "was not understood"],
    ["-3 m at 118", "more than nothing"],
  ])("%s is refused", (text, why) => {
    const read = parseCourse(text, "metric");
    expect(read.ok ? read : read.reason).toContain(why);
  });
});

describe("a corner that is walked to", () => {
  it("is the mean of its readings, the better ones counting more", () => {
    const readings = [
      { at: lonLat(-76.9, 42.6), accuracy_m: 3 },
      { at: lonLat(-76.8999, 42.6001), accuracy_m: 6 },
    ];
    const mean = meanPosition(readings);
    expect(mean?.at).toEqual([expect.closeTo(-76.9 + 0.0001 / 5, 12), expect.closeTo(42.6 + 0.0001 / 5, 12)]);
    // Between the two accuracies: many readings of one phone are not better than one.
    expect(mean?.accuracy_m).toBeCloseTo(Math.sqrt(2 / (1 / 9 + 1 / 36)), 12);
    expect(meanPosition(readings.slice(0, 1))).toEqual({ at: [-76.9, 42.6], accuracy_m: expect.closeTo(3, 12) });
  });

  it("may lie beside longitude 180, and is none without readings", () => {
    const mean = meanPosition([180, -179.9998].map((lon) => ({ at: lonLat(lon, -17), accuracy_m: 5 })));
    expect(mean?.at[0]).toBeCloseTo(-179.9999, 9);
    expect(meanPosition([])).toBeNull();
  });

  it("with an accuracy that is none still counts, but hardly", () => {
    const mean = meanPosition([
      { at: lonLat(10, 50), accuracy_m: 5 },
      { at: lonLat(11, 51), accuracy_m: Number.NaN },
    ]);
    expect(mean?.at[0]).toBeCloseTo(10, 3);
  });
});
