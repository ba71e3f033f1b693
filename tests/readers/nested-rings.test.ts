import fc from "fast-check";
import type { Position } from "geojson";
import { describe, expect, test } from "vitest";
import { nestedRings } from "../../src/readers/nested-rings.ts";

const square = (x: number, y: number, side: number): Position[] => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
  [x, y],
];
const isLeft = (ring: readonly Position[]) =>
  ring.reduce((sum, [x = 0, y = 0], i) => {
    const [nextX = 0, nextY = 0] = ring[(i + 1) % ring.length] ?? [];
    return sum + x * nextY - nextX * y;
  }, 0) > 0;

describe("rings in rings", () => {
  test("a ring within another is its hole, one within the hole an outline again", () => {
    const polygons = nestedRings([square(2, 2, 6), square(0, 0, 10), square(4, 4, 2), square(20, 0, 5)]);
    expect(polygons.map((rings) => rings.map(([first]) => first))).toEqual([
      [
        [0, 0],
        [2, 2],
      ],
      [[20, 0]],
      [[4, 4]],
    ]);
  });

  // RFC 7946 section 3.1.6.
  test("outlines come out counter-clockwise and holes clockwise, however they were drawn", () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 3, maxLength: 3 }), ([a, b, c]) => {
        const drawn = [square(0, 0, 10), square(1, 1, 3), square(5, 5, 2)];
        const turned = drawn.map((ring, i) => ([a, b, c][i] ? [...ring].reverse() : ring));
        const [polygon = []] = nestedRings(turned);
        expect(polygon.map(isLeft)).toEqual([true, false, false]);
      }),
      { seed: 7, numRuns: 8 },
    );
  });
});
