import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createPlanner } from "../../src/core/planner.ts";
import {
  angleTo,
  blockReach_m,
  handleBearing,
  nearerEnd,
  planeDirection,
  turned,
} from "../../src/plugin/handle-geometry.ts";
import { createProject } from "../support/create-project.ts";

const angleTolerance_deg = 1e-9;

function createGround() {
  const ground = createPlanner().plan(createProject()).ground?.blocks[0];
  if (!ground) throw new Error("the test ground is not laid out");
  return ground;
}

describe("the bearing handle", () => {
  test("a direction and the angle back to it agree at every angle", () => {
    const ground = createGround();
    fc.assert(
      fc.property(fc.double({ min: 0, max: 359.999, noNaN: true }), (angle_deg) => {
        const [dx, dy] = planeDirection(ground, angle_deg);
        const back = angleTo(ground, ground.centre[0] + 50 * dx, ground.centre[1] + 50 * dy);
        expect(Math.abs(((back - angle_deg + 540) % 360) - 180)).toBeLessThan(angleTolerance_deg);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  test("it stays at the end of the row it was dragged to", () => {
    expect(nearerEnd(10, 20)).toBe(10);
    expect(nearerEnd(10, 200)).toBe(190);
    expect(nearerEnd(175, 5)).toBe(355);
    expect(nearerEnd(5, 352)).toBe(5);
  });

  test("its bearing is a tenth of a degree and never 180", () => {
    expect(handleBearing(24.04)).toBe(24);
    expect(handleBearing(204.06)).toBe(24.1);
    expect(handleBearing(179.97)).toBe(0);
    expect(handleBearing(359.99)).toBe(0);
  });

  test("angles are brought around", () => {
    expect(turned(-10, 360)).toBe(350);
    expect(turned(725, 360)).toBe(5);
  });

  test("its reach is from the block's middle to its furthest corner", () => {
    // A rectangle of 60 by 120 m.
    expect(blockReach_m(createGround())).toBeCloseTo(Math.hypot(30, 60), 3);
  });
});
