import { describe, expect, test } from "vitest";
import { distanceToPiece_px, isInside, sidesOf, svgPath } from "../../src/app/drawing/pixels.ts";

const at = (x: number, y: number) => ({ x, y });
const outline = [at(0, 0), at(100, 0), at(100, 100), at(0, 100)];

describe("a press on the map", () => {
  test("is as far from a side as from its nearest place, ends counted", () => {
    expect(distanceToPiece_px(at(50, 7), at(0, 0), at(100, 0))).toBe(7);
    expect(distanceToPiece_px(at(103, 4), at(0, 0), at(100, 0))).toBe(5);
    expect(distanceToPiece_px(at(3, 4), at(0, 0), at(0, 0))).toBe(5);
  });
  test("in a hole is not inside", () => {
    const hole = [at(40, 40), at(60, 40), at(60, 60), at(40, 60)];
    expect(isInside(at(20, 20), [outline, hole])).toBe(true);
    expect(isInside(at(50, 50), [outline, hole])).toBe(false);
    expect(isInside(at(150, 50), [outline, hole])).toBe(false);
  });
});

describe("the sides of a path", () => {
  test("of an outline come back to its first corner, those of a line do not", () => {
    expect(sidesOf({ closed: true, corners: outline })).toHaveLength(4);
    expect(sidesOf({ closed: true, corners: outline })[3]).toEqual([at(0, 100), at(0, 0)]);
    expect(sidesOf({ closed: false, corners: outline })).toHaveLength(3);
  });
  test("of a single place are none", () => {
    expect(sidesOf({ closed: false, corners: [at(0, 0)] })).toEqual([]);
    expect(svgPath([], true)).toBe("");
  });
});
