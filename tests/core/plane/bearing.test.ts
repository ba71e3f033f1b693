import { describe, expect, it } from "vitest";
import { gridBearing_deg, lineBearing_deg } from "../../../src/core/plane/bearing.ts";
import { between, createRandom } from "../../support/random.ts";

describe("the bearing of a row", () => {
  it("is the same from both ends", () => {
    const random = createRandom(21);
    for (let i = 0; i < 200; i++) {
      const bearing_deg = between(random, -720, 720);
      const there = lineBearing_deg(bearing_deg);
      const back = lineBearing_deg(bearing_deg + 180);
      // 179.9999… and 0 are the same direction.
      expect(Math.abs(((there - back + 270) % 180) - 90)).toBeLessThan(1e-9);
    }
  });

  it("lies from 0 up to, not including, 180 degrees", () => {
    for (const [given_deg, line_deg] of [
      [0, 0],
      [-0, 0],
      [180, 0],
      [360, 0],
      [-180, 0],
      [200, 20],
      [-10, 170],
      [539, 179],
    ] as const) {
      expect(lineBearing_deg(given_deg)).toBeCloseTo(line_deg, 12);
    }
    expect(lineBearing_deg(180 - 1e-12)).toBe(0);
    expect(lineBearing_deg(-1e-12)).toBe(0);
  });

  it("is measured clockwise from north in the plane", () => {
    expect(gridBearing_deg(0, 0, 0, 10)).toBe(0);
    expect(gridBearing_deg(0, 0, 10, 10)).toBeCloseTo(45, 12);
    expect(gridBearing_deg(0, 0, 10, 0)).toBeCloseTo(90, 12);
    expect(gridBearing_deg(0, 0, 10, -10)).toBeCloseTo(135, 12);
    expect(gridBearing_deg(10, 0, 0, 0)).toBeCloseTo(90, 12);
  });
});
