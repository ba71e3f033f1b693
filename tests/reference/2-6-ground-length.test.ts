import { describe, expect, it } from "vitest";
import { elevationOf, heightReader } from "../../src/core/ground/elevation.ts";
import { planePoint } from "../../src/core/plane/coordinate.ts";
import { groundLength_m } from "../../src/core/rows/ground-length.ts";
import { at, testFrame } from "../support/create-project.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook 2.6 and 8.4: length along the ground. */

const geometry: Source = { computed: "plan length times the root of 1 + slope squared" };
const tolerance_m = 1e-6;

/** Spot heights on the ground z = height(y) over a strip. */
function stripOf(height: (y_m: number) => number, step_m: number) {
  const spots = Array.from({ length: Math.round(200 / step_m) + 1 }, (_, i) => i * step_m - 50).flatMap((y) =>
    [-20, 20].map((x) => ({ key: `${x} ${y}`, name: null, at: at([x, y]), height_m: height(y) })),
  );
  return heightReader(elevationOf(spots, testFrame).elevation);
}

describe("2.6 length of a row along the ground", () => {
  it.each([1.8, 7.3152, 91.44])(
    `${titled("2-39 91.44 m at 15 % are 92.462978 m", geometry)}, a height every %s m`,
    (step_m) => {
      const heightAt = stripOf((y) => 0.15 * y, 25);
      const along_m = groundLength_m(heightAt, planePoint(3, 0), planePoint(3, 91.44), 91.44, step_m);
      expect(Math.abs(Number(along_m) - 92.462978)).toBeLessThanOrEqual(tolerance_m);
    },
  );

  it(titled("over a dip both sides count, each by its own slope", geometry), () => {
    const heightAt = stripOf((y) => 0.1 * Math.abs(y - 50), 50);
    const along_m = groundLength_m(heightAt, planePoint(0, 0), planePoint(0, 100), 100, 10);
    expect(Number(along_m)).toBeCloseTo(100 * Math.hypot(1, 0.1), 6);
  });

  it(titled("a hill of a circle's arc comes out near its length", { computed: "arc of a circle" }), () => {
    const radius_m = 400;
    const arc_m = 2 * radius_m * Math.asin(50 / radius_m);
    const heightAt = stripOf((y) => Math.sqrt(radius_m ** 2 - (y - 50) ** 2), 2);
    const along_m = Number(groundLength_m(heightAt, planePoint(0, 0), planePoint(0, 100), 100, 7.5));
    // Straight from post to post, so never longer than the arc.
    expect(along_m).toBeLessThan(arc_m);
    expect(along_m / arc_m).toBeGreaterThan(1 - 5e-5);
  });
});
