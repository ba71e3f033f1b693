import { describe, expect, it } from "vitest";
import type { LineIntervals, Lines } from "../../../src/core/plane/lines.ts";
import { sweepRings, united } from "../../../src/core/plane/sweep.ts";

type Point = readonly [u: number, v: number];

/** Rings as the sweep takes them. */
function rings(...list: readonly (readonly Point[])[]): { readonly uv: Float64Array; readonly ringStart: Int32Array } {
  const starts = [0];
  for (const ring of list) starts.push(Number(starts.at(-1)) + ring.length);
  return { uv: Float64Array.from(list.flat(2)), ringStart: Int32Array.from(starts) };
}

function sweep(lines: Lines, ...list: readonly (readonly Point[])[]): LineIntervals {
  const { uv, ringStart } = rings(...list);
  return sweepRings(uv, ringStart, lines);
}

/** The intervals of each line as pairs. */
function byLine({ start, u }: LineIntervals): readonly (readonly (readonly number[])[])[] {
  return Array.from({ length: start.length - 1 }, (_, i) =>
    Array.from({ length: Number(start[i + 1]) - Number(start[i]) }, (_, k) => {
      const n = Number(start[i]) + k;
      return [Number(u[2 * n]), Number(u[2 * n + 1])];
    }),
  );
}

const one = (v: number): Lines => ({ first_m: v, spacing_m: 1, count: 1 });
const square: readonly Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

describe("a line over rings", () => {
  it("enters and leaves, and knows the edges by the point they begin at", () => {
    const crossed = sweep(one(5), square);
    expect(byLine(crossed)).toEqual([[[0, 10]]]);
    expect([...crossed.cause]).toEqual([3, 1]);
  });

  it("that only touches a corner gives nothing", () => {
    expect(
      byLine(
        sweep(one(10), [
          [0, 0],
          [10, 0],
          [5, 10],
        ]),
      ),
    ).toEqual([[]]);
  });

  it("that passes through a corner on its way is one interval", () => {
    expect(
      byLine(
        sweep(one(5), [
          [0, 0],
          [10, 5],
          [0, 10],
          [-10, 5],
        ]),
      ),
    ).toEqual([[[-10, 10]]]);
  });

  it("that runs along an edge is inside, above and below", () => {
    expect(byLine(sweep({ first_m: 0, spacing_m: 10, count: 2 }, square))).toEqual([[[0, 10]], [[0, 10]]]);
  });

  it("that runs along an edge within half a micrometre is inside as well", () => {
    const tilted: readonly Point[] = [
      [0, 4e-7],
      [10, -4e-7],
      [10, 10],
      [0, 10],
    ];
    expect(byLine(sweep(one(0), tilted))).toEqual([[[0, 10]]]);
  });

  it("that runs along the floor of a notch joins both sides", () => {
    const notched: readonly Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [7, 10],
      [7, 5],
      [3, 5],
      [3, 10],
      [0, 10],
    ];
    expect(byLine(sweep(one(5), notched))).toEqual([[[0, 10]]]);
    expect(byLine(sweep(one(6), notched))).toEqual([
      [
        [0, 3],
        [7, 10],
      ],
    ]);
  });

  it("crosses a hole", () => {
    const hole: readonly Point[] = [
      [4, 4],
      [4, 6],
      [6, 6],
      [6, 4],
    ];
    expect(byLine(sweep(one(5), square, hole))).toEqual([
      [
        [0, 4],
        [6, 10],
      ],
    ]);
  });

  it("along the edge of a hole is inside: the edge belongs to the land", () => {
    const hole: readonly Point[] = [
      [4, 4],
      [4, 6],
      [6, 6],
      [6, 4],
    ];
    expect(byLine(sweep(one(4), square, hole))).toEqual([[[0, 10]]]);
  });

  it("along a spike out and back is not led astray", () => {
    const spiked: readonly Point[] = [
      [0, 0],
      [10, 0],
      [10, 5],
      [20, 5],
      [10, 5],
      [10, 10],
      [0, 10],
    ];
    expect(byLine(sweep(one(5), spiked))).toEqual([[[0, 10]]]);
  });

  it("with many crossings keeps them in order", () => {
    const teeth = Array.from({ length: 100 }, (_, i): Point => [i, i % 2 === 0 ? 1 : 3]);
    const [intervals] = byLine(sweep(one(2), [...teeth, [99, 0], [0, 0]]));
    expect(intervals).toHaveLength(50);
    expect(
      intervals?.every(
        ([from, to], i) => Number(from) < Number(to) && (i === 0 || Number(from) > Number(intervals[i - 1]?.[1])),
      ),
    ).toBe(true);
  });

  it("outside gives nothing, and no lines give nothing", () => {
    expect(byLine(sweep(one(11), square))).toEqual([[]]);
    expect(byLine(sweep({ first_m: 0, spacing_m: 1, count: 0 }, square))).toEqual([]);
  });
});

describe("two sets of intervals united", () => {
  const set = (...pairs: readonly (readonly [number, number])[]): LineIntervals => ({
    start: Int32Array.of(0, pairs.length),
    u: Float64Array.from(pairs.flat()),
    cause: Int32Array.from(pairs.flat()),
  });

  it("join where they overlap or touch, and keep the causes of the outer ends", () => {
    const both = united(set([0, 5], [10, 12]), set([5, 7], [11, 14], [20, 21]), 1);
    expect(byLine(both)).toEqual([
      [
        [0, 7],
        [10, 14],
        [20, 21],
      ],
    ]);
    expect([...both.cause]).toEqual([0, 7, 10, 14, 20, 21]);
  });

  it("keep a long one that holds a short one", () => {
    expect(byLine(united(set([0, 20]), set([5, 7]), 1))).toEqual([[[0, 20]]]);
  });
});
