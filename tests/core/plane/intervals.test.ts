import { describe, expect, it } from "vitest";
import { intersected, nothing, shortened, subtracted, withCauses } from "../../../src/core/plane/intervals.ts";
import { type LineIntervals, linesWithin } from "../../../src/core/plane/lines.ts";

function set(
  ...pairs: readonly (readonly [from: number, to: number, fromCause?: number, toCause?: number])[]
): LineIntervals {
  return {
    start: Int32Array.of(0, pairs.length),
    u: Float64Array.from(pairs.flatMap((pair) => pair.slice(0, 2)).map(Number)),
    cause: Int32Array.from(pairs.flatMap(([, , a = 0, b = 0]) => [a, b])),
  };
}

describe("intervals along a line", () => {
  it("less others keep what is outside, and take the cause of what cut them", () => {
    const left = subtracted(set([0, 100, 1, 2]), set([-5, 3, 8, 8], [40, 50, 9, 9], [99, 120, 7, 7]));
    expect([...left.u]).toEqual([3, 40, 50, 99]);
    expect([...left.cause]).toEqual([8, 9, 9, 7]);
  });

  it("wholly covered are gone, untouched ones stay", () => {
    expect([...subtracted(set([0, 10]), set([-1, 11])).u]).toEqual([]);
    expect([...subtracted(set([0, 10]), nothing(1)).u]).toEqual([0, 10]);
  });

  it("cut by one long interval over several", () => {
    expect([...subtracted(set([0, 10], [20, 30]), set([5, 25])).u]).toEqual([0, 5, 25, 30]);
  });

  it("met with others keep what is in both, and the cause of the tighter end", () => {
    const both = intersected(set([0, 50, 1, 2], [60, 90, 3, 4]), set([10, 70, 8, 9]));
    expect([...both.u]).toEqual([10, 50, 60, 70]);
    expect([...both.cause]).toEqual([8, 2, 3, 9]);
  });

  it("shortened by a headland lose it at both ends, and those too short vanish", () => {
    expect([...shortened(set([0, 100], [200, 215]), 8).u]).toEqual([8, 92]);
    expect([...shortened(set([0, 100]), 0).u]).toEqual([0, 100]);
  });

  it("have their causes looked up", () => {
    expect([...withCauses(set([0, 1, 1, 0]), Int32Array.of(40, 41)).cause]).toEqual([41, 40]);
  });
});

describe("lines at whole spacings", () => {
  it("lie within the bounds, ends included", () => {
    expect(linesWithin(0, 10, 2.5, 0)).toEqual({ first_m: 0, spacing_m: 2.5, count: 5 });
    expect(linesWithin(0, 10, 2.5, 101)).toEqual({ first_m: 1, spacing_m: 2.5, count: 4 });
    expect(linesWithin(0, 1, 2.5, 2).count).toBe(0);
  });
});
