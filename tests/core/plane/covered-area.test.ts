import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { coveredArea_m2 } from "../../../src/core/plane/covered-area.ts";
import type { RingSet } from "../../../src/core/plane/overlay.ts";
import { createGeos } from "../../support/geos.ts";
import { createRandomParcel, type Point, toPoints, toRingSet } from "../../support/parcels.ts";

const tolerance_m2 = 1e-9;
/** Of the area of both: what rounding may leave after some thousand strips. */
const relativeTolerance = 1e-11;
const seed = 20_260;

function createRectangle(x: number, y: number, width_m: number, height_m: number): Point[] {
  return [
    [x, y],
    [x + width_m, y],
    [x + width_m, y + height_m],
    [x, y + height_m],
  ];
}

/** The same ring set turned about the origin and moved. */
function posed({ xy, ringStart }: RingSet, turn_deg: number, dx: number, dy: number): RingSet {
  const [cos, sin] = [Math.cos((turn_deg * Math.PI) / 180), Math.sin((turn_deg * Math.PI) / 180)];
  const turned = xy.map((value, i) => {
    const [x, y] = i % 2 === 0 ? [value, Number(xy[i + 1])] : [Number(xy[i - 1]), value];
    return i % 2 === 0 ? x * cos - y * sin + dx : x * sin + y * cos + dy;
  });
  return { xy: turned, ringStart };
}

describe("the ground that several outlines cover", () => {
  const whole = toRingSet([createRectangle(0, 0, 10, 10)]);

  it("adds up where they lie apart", () => {
    expect(coveredArea_m2([[whole, toRingSet([createRectangle(20, 0, 10.1, 10)])]])).toBeCloseTo(201, 9);
  });

  it("counts an overlap once", () => {
    expect(coveredArea_m2([[whole, toRingSet([createRectangle(5, 0, 10, 10)])]])).toBeCloseTo(150, 9);
  });

  it("loses nothing along a shared edge, and counts the same outline once", () => {
    expect(coveredArea_m2([[whole, toRingSet([createRectangle(10, 0, 10, 10)])]])).toBeCloseTo(200, 9);
    expect(coveredArea_m2([[whole, whole]])).toBeCloseTo(100, 9);
  });

  it("takes holes off whichever way they are wound", () => {
    const hole = createRectangle(2, 2, 4, 4);
    for (const wound of [hole, [...hole].reverse()]) {
      expect(coveredArea_m2([[toRingSet([createRectangle(0, 0, 10, 10), wound])]])).toBeCloseTo(84, 9);
    }
  });

  it("is what lies in every layer: a block's area within the parcel", () => {
    const across = toRingSet([createRectangle(-5, 2, 100, 3)]);
    expect(coveredArea_m2([[whole], [across]])).toBeCloseTo(30, 9);
    expect(coveredArea_m2([[whole], [across], [toRingSet([createRectangle(0, 0, 4, 10)])]])).toBeCloseTo(12, 9);
    expect(coveredArea_m2([[whole], [toRingSet([createRectangle(50, 0, 5, 5)])]])).toBe(0);
  });

  it("is nothing without outlines", () => {
    expect(coveredArea_m2([])).toBe(0);
    expect(coveredArea_m2([[]])).toBe(0);
  });

  it("is the same in every pose, far from the origin too", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: -10_000, max: 10_000, noNaN: true }),
        fc.integer({ min: 1, max: 50 }),
        (turn_deg, away_m, parcel) => {
          const [one, other] = [createRandomParcel(parcel).rings, createRandomParcel(parcel + 1).rings];
          const apart = coveredArea_m2([[one, other]]);
          const moved = coveredArea_m2([[one, other].map((rings) => posed(rings, turn_deg, away_m, -away_m))]);
          expect(Math.abs(moved - apart)).toBeLessThan(apart * relativeTolerance * 1000 + tolerance_m2);
        },
      ),
      { seed, numRuns: 50 },
    );
  });

  it("agrees with an independent geometry kernel on random parcels: both together, and what they share", async () => {
    const geos = await createGeos();
    for (let parcel = 1; parcel <= 40; parcel++) {
      const [one, other] = [createRandomParcel(parcel).rings, createRandomParcel(parcel + 100).rings];
      const [a, b] = [geos.polygon(toPoints(one)), geos.polygon(toPoints(other))];
      const onlyA = geos.difference(a, b);
      const [areaA, areaB, apart] = [geos.area(a), geos.area(b), geos.area(onlyA)];
      geos.free(a, b, onlyA);
      const most = (areaA + areaB) * relativeTolerance + tolerance_m2;
      expect(Math.abs(coveredArea_m2([[one]]) - areaA)).toBeLessThan(most);
      expect(Math.abs(coveredArea_m2([[one, other]]) - (apart + areaB))).toBeLessThan(most);
      expect(Math.abs(coveredArea_m2([[one], [other]]) - (areaA - apart))).toBeLessThan(most);
    }
  });
});
