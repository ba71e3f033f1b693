import { describe, expect, it, test } from "vitest";
import { mendRing } from "../../../src/core/project/mend-ring.ts";

type Corner = readonly [x_m: number, y_m: number];
const ring = (corners: readonly Corner[]): Float64Array => Float64Array.from(corners.flat());

/*
 *   6 --- 5 --- 4      1, 3, 5, 7 lie on straight edges
 *   |           |
 *   7           3
 *   |           |
 *   0 --- 1 --- 2
 */
const withMiddles: readonly Corner[] = [
  [0, 0],
  [50, 0],
  [100, 0],
  [100, 50],
  [100, 100],
  [50, 100],
  [0, 100],
  [0, 50],
];

describe("a ring keeps the corners it needs", () => {
  test("whichever corner it begins at and whichever way it runs", () => {
    for (let turn = 0; turn < withMiddles.length; turn++) {
      const turned = [...withMiddles.slice(turn), ...withMiddles.slice(0, turn)];
      for (const corners of [turned, [...turned].reverse()]) {
        const { kept, collinear, repeated } = mendRing(ring(corners));
        expect(kept.map((i) => corners[i]).sort()).toEqual([
          [0, 0],
          [0, 100],
          [100, 0],
          [100, 100],
        ]);
        expect([collinear, repeated]).toEqual([4, 0]);
      }
    }
  });

  test("a corner a hundredth of a millimetre off the edge is a corner", () => {
    const bent = withMiddles.map(([x, y]): Corner => (x === 50 && y === 0 ? [x, -1e-5] : [x, y]));
    expect(mendRing(ring(bent)).kept).toContain(1);
  });

  test("repeats go, the first of them stays; also over the beginning", () => {
    const { kept, repeated } = mendRing(
      ring([
        [0, 0],
        [0, 0],
        [100, 0],
        [100, 0.0005],
        [100, 100],
        [0, 100],
        [0.0002, 0],
      ]),
    );
    expect(kept).toEqual([0, 2, 4, 5]);
    expect(repeated).toBe(3);
  });

  test("a spike is kept for the crossing check to name", () => {
    expect(
      mendRing(
        ring([
          [0, 0],
          [100, 0],
          [100, 100],
          [50, 100],
          [50, 150],
          [50, 100],
          [0, 100],
        ]),
      ).kept,
    ).toContain(4);
  });

  it("a fine curve loses nothing to speak of", () => {
    const corners = Array.from({ length: 10_000 }, (_, i): Corner => {
      const turn = (i * 2 * Math.PI) / 10_000;
      return [100 * Math.cos(turn), 100 * Math.sin(turn)];
    });
    expect(mendRing(ring(corners)).kept).toHaveLength(10_000);
  });

  it.each([
    [[]],
    [[[1, 1]]],
    [
      [
        [1, 1],
        [1, 1],
      ],
    ],
    [
      [
        [0, 0],
        [50, 0],
        [100, 0],
      ],
    ],
  ])("%j leaves fewer than three corners", (corners) => {
    expect(mendRing(ring(corners.map(([x = 0, y = 0]) => [x, y] as const))).kept.length).toBeLessThan(3);
  });
});
