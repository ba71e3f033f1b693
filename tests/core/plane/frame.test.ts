import { describe, expect, it } from "vitest";
import { type LonLat, lonLat, planePoint } from "../../../src/core/plane/coordinate.ts";
import { createFrame, frameReach_m } from "../../../src/core/plane/frame.ts";
import { accuracyLatitudes_deg, frameError } from "../../bench/frame-error.ts";
import { destination, geodesic } from "../../support/geodesic.ts";
import { between, createRandom } from "../../support/random.ts";

const lengthTolerance_mmPerKm = 1;
const azimuthTolerance_deg = 0.001;
const areaTolerance_ppm = 2;
const convergenceTolerance_deg = 1e-7;
/** A hundredth of a millimetre on the ground. */
const roundTripTolerance_deg = 1e-10;

/** East along the ground, whichever way the numbers of the longitudes run. */
function eastOf(at: LonLat, length_m: number): LonLat {
  return destination(at, 90, length_m);
}

describe("the local plane", () => {
  it("has its origin at 0, 0, x to the east and y to the north", () => {
    const origin = lonLat(19, -34.5);
    const frame = createFrame(origin);
    expect(Math.hypot(...frame.toPlane(origin))).toBeLessThan(1e-9);
    const [x, y] = frame.toPlane(destination(origin, 30, 100));
    expect(x).toBeCloseTo(50, 6);
    expect(y).toBeCloseTo(100 * Math.cos(Math.PI / 6), 6);
  });

  it("brings every place back to where it was", () => {
    const random = createRandom(7);
    for (const lat of accuracyLatitudes_deg) {
      const frame = createFrame(lonLat(-76.9, lat));
      for (let i = 0; i < 50; i++) {
        const at = planePoint(
          between(random, -frameReach_m, frameReach_m),
          between(random, -frameReach_m, frameReach_m),
        );
        const place = frame.toLonLat(at);
        const again = frame.toLonLat(frame.toPlane(place));
        expect(Math.abs(again[0] - place[0])).toBeLessThan(roundTripTolerance_deg);
        expect(Math.abs(again[1] - place[1])).toBeLessThan(roundTripTolerance_deg);
        const back = frame.toPlane(place);
        expect(Math.hypot(back[0] - at[0], back[1] - at[1])).toBeLessThan(1e-5);
      }
    }
  });

  it.each(accuracyLatitudes_deg)("at latitude %d keeps rows, bearings and areas within 5 km of the origin", (lat) => {
    for (const away_m of [0, 100, 1000, 3000, 5000]) {
      const error = frameError(lonLat(6.1, lat), away_m, 11);
      expect(error.length_mmPerKm).toBeLessThanOrEqual(lengthTolerance_mmPerKm);
      expect(error.azimuth_deg).toBeLessThanOrEqual(azimuthTolerance_deg);
      expect(error.area_ppm).toBeLessThanOrEqual(areaTolerance_ppm);
    }
  });

  it("is off by no more than 1.3 mm a kilometre at the end of its reach", () => {
    for (const lat of accuracyLatitudes_deg) {
      expect(frameError(lonLat(6.1, lat), frameReach_m, 12).length_mmPerKm).toBeLessThan(1.3);
    }
  });

  it("is as good on a parcel that the antimeridian crosses", () => {
    for (const lon of [180, -180, 179.999, -179.999]) {
      const error = frameError(lonLat(lon, -17.3), 2000, 13);
      expect(error.length_mmPerKm).toBeLessThanOrEqual(lengthTolerance_mmPerKm);
      expect(error.azimuth_deg).toBeLessThanOrEqual(azimuthTolerance_deg);
      expect(error.area_ppm).toBeLessThanOrEqual(areaTolerance_ppm);
    }
  });

  it("takes longitudes past 180 degrees and gives them back within it", () => {
    const origin = lonLat(179.999, -17.3);
    const frame = createFrame(origin);
    const [x, y] = frame.toPlane(eastOf(origin, 500));
    expect(x).toBeCloseTo(500, 5);
    const unwrapped = frame.toPlane(lonLat(eastOf(origin, 500)[0] + 360, eastOf(origin, 500)[1]));
    expect(unwrapped[0]).toBeCloseTo(x, 6);
    expect(unwrapped[1]).toBeCloseTo(y, 6);
    const [lon] = frame.toLonLat(planePoint(500, 0));
    expect(lon).toBeGreaterThan(-180);
    expect(lon).toBeLessThan(-179.9);
  });

  it("turns grid north away from true north as one goes east, the other way round south of the equator", () => {
    expect(createFrame(lonLat(0, 45)).convergence_deg(planePoint(5000, 0))).toBeGreaterThan(0.04);
    expect(createFrame(lonLat(0, -45)).convergence_deg(planePoint(5000, 0))).toBeLessThan(-0.04);
    expect(Math.abs(createFrame(lonLat(0, 45)).convergence_deg(planePoint(0, 5000)))).toBeLessThan(1e-9);
    expect(createFrame(lonLat(180, 45)).convergence_deg(planePoint(5000, 0))).toBeCloseTo(
      createFrame(lonLat(0, 45)).convergence_deg(planePoint(5000, 0)),
      9,
    );
  });

  it("tells the convergence to a ten-millionth of a degree", () => {
    const step_deg = 1e-4;
    for (const lat of accuracyLatitudes_deg) {
      const frame = createFrame(lonLat(6.1, lat));
      for (const at of [
        planePoint(-frameReach_m, 0),
        planePoint(5000, 5000),
        planePoint(frameReach_m, -frameReach_m),
      ]) {
        const [lon, latHere] = frame.toLonLat(at);
        const south = frame.toPlane(lonLat(lon, latHere - step_deg));
        const north = frame.toPlane(lonLat(lon, latHere + step_deg));
        const meridian_deg = (Math.atan2(north[0] - south[0], north[1] - south[1]) * 180) / Math.PI;
        expect(Math.abs(meridian_deg + frame.convergence_deg(at))).toBeLessThan(convergenceTolerance_deg);
      }
    }
  });

  it("measures a row of the southern hemisphere as the tape does", () => {
    const frame = createFrame(lonLat(19, -34.5));
    const from = lonLat(19.01, -34.51);
    const to = destination(from, 123, 250);
    const [p, q] = [frame.toPlane(from), frame.toPlane(to)];
    expect(Math.hypot(q[0] - p[0], q[1] - p[1])).toBeCloseTo(geodesic(from, to).length_m, 4);
  });
});
