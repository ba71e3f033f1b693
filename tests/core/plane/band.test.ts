import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sweepBands } from "../../../src/core/plane/band.ts";
import { nearestOnSegment } from "../../../src/core/plane/segment.ts";

/** The single band of a segment (u1, v1 to u2, v2) on the line at v, or null. */
function band(segment: readonly [number, number, number, number], distance_m: number, v: number) {
  const { u } = sweepBands(Float64Array.from(segment), Float64Array.of(distance_m), Int32Array.of(7), {
    first_m: v,
    spacing_m: 1,
    count: 1,
  });
  return u.length === 0 ? null : [Number(u[0]), Number(u[1])];
}

/** The slack of half a nanometre moves an end by more where the band is grazed; well inside it is this small. */
const near_m = 1e-8;

describe("the band around a segment", () => {
  it("of a point is a disc: at 3 m aside of 5 m it is 8 m wide", () => {
    const [from, to] = band([10, 0, 10, 0], 5, 3) ?? [];
    expect(from).toBeCloseTo(6, 7);
    expect(to).toBeCloseTo(14, 7);
  });

  it("of a segment along the line reaches its distance past both ends", () => {
    const [from, to] = band([0, 0, 100, 0], 5, 0) ?? [];
    expect(from).toBeCloseTo(-5, 7);
    expect(to).toBeCloseTo(105, 7);
  });

  it("of a segment square to the line is as wide as twice the distance", () => {
    const [from, to] = band([50, -100, 50, 100], 5, 0) ?? [];
    expect(from).toBeCloseTo(45, 7);
    expect(to).toBeCloseTo(55, 7);
  });

  it("of a slanting segment is wider by the slant: 5 / sin 45° each way", () => {
    const [from, to] = band([-100, -100, 100, 100], 5, 0) ?? [];
    expect(from).toBeCloseTo(-5 * Math.SQRT2, 6);
    expect(to).toBeCloseTo(5 * Math.SQRT2, 6);
  });

  it("does not cut a line exactly at its distance", () => {
    expect(band([0, 0, 100, 0], 5, 5)).toBeNull();
    expect(band([0, 0, 0, 0], 5, 5)).toBeNull();
  });

  it("of no distance is nothing", () => {
    expect(band([0, 0, 100, 0], 0, 0)).toBeNull();
  });

  it("holds exactly the points nearer than its distance", () => {
    const number = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(
        fc.tuple(number, number, number, number),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        number,
        number,
        (segment, distance_m, v, u) => {
          const distance = nearestOnSegment(u, v, ...segment).distance_m;
          const found = band(segment, distance_m, v);
          const isIn = found !== null && u > Number(found[0]) && u < Number(found[1]);
          // On the rim itself either answer will do.
          if (Math.abs(distance - distance_m) > near_m) expect(isIn).toBe(distance < distance_m);
        },
      ),
      { seed: 11, numRuns: 5000 },
    );
  });

  it("is united with those it overlaps, each end keeping its cause", () => {
    const { u, cause } = sweepBands(
      Float64Array.from([0, 0, 0, 0, 6, 0, 6, 0, 30, 0, 30, 0]),
      Float64Array.of(5, 5, 5),
      Int32Array.of(1, 2, 3),
      { first_m: 0, spacing_m: 1, count: 1 },
    );
    expect([...u].map((one) => Math.round(one))).toEqual([-5, 11, 25, 35]);
    expect([...cause]).toEqual([1, 2, 3, 3]);
  });
});
