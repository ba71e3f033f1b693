import { kinks } from "@turf/kinks";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { overlappingPairs, placeOutside, selfContacts, signedArea_m2 } from "../../../src/core/plane/validity.ts";

type Corner = readonly [x_m: number, y_m: number];

function ring(...corners: readonly Corner[]): Float64Array {
  return Float64Array.from(corners.flat());
}

/** One case, many poses: turned, mirrored, and 8 km from the origin. */
function poses(corners: readonly Corner[]): readonly Float64Array[] {
  return [0, 37, 90, 143].flatMap((angle_deg) =>
    [1, -1].map((mirror) => {
      const [cos, sin] = [Math.cos((angle_deg * Math.PI) / 180), Math.sin((angle_deg * Math.PI) / 180)];
      return ring(
        ...corners.map(([x, y]): Corner => [8000 + x * cos * mirror - y * sin, -8000 + x * sin * mirror + y * cos]),
      );
    }),
  );
}

const square = (size_m: number, x = 0, y = 0): readonly Corner[] => [
  [x, y],
  [x + size_m, y],
  [x + size_m, y + size_m],
  [x, y + size_m],
];

describe("an outline that is fit to plan on touches itself nowhere", () => {
  test.each<[string, readonly Corner[], number]>([
    ["a square", square(100), 0],
    [
      "a notch",
      [
        [0, 0],
        [100, 0],
        [100, 100],
        [60, 100],
        [60, 40],
        [40, 40],
        [40, 100],
        [0, 100],
      ],
      0,
    ],
    [
      "a needle a millimetre wide",
      [
        [0, 0],
        [100, 0],
        [50, 0.001],
      ],
      0,
    ],
    [
      "a bow tie",
      [
        [0, 0],
        [100, 100],
        [100, 0],
        [0, 100],
      ],
      1,
    ],
    [
      "two crossings",
      [
        [0, 0],
        [100, 0],
        [100, 50],
        [66, -20],
        [33, 50],
        [0, 50],
      ],
      2,
    ],
    [
      "a corner on another edge",
      [
        [0, 0],
        [100, 0],
        [100, 100],
        [50, 0],
        [0, 100],
      ],
      1,
    ],
    [
      "a corner on another corner",
      [
        [0, 0],
        [50, 50],
        [100, 0],
        [100, 100],
        [50, 50],
        [0, 100],
      ],
      1,
    ],
    [
      "a spike that runs out and back",
      [
        [0, 0],
        [100, 0],
        [100, 100],
        [50, 100],
        [50, 150],
        [50, 100],
        [0, 100],
      ],
      1,
    ],
    [
      "an edge that runs along another",
      [
        [0, 0],
        [100, 0],
        [100, 100],
        [80, 100],
        [80, 0],
        [20, 0],
        [20, 100],
        [0, 100],
      ],
      2,
    ],
  ])("%s", (_, corners, contacts) => {
    for (const pose of poses(corners)) {
      const found = selfContacts(pose, 20).length;
      // Where edges run along each other, or a spike comes back, how many places are named depends on the pose; that there are some does not.
      if (contacts === 0) expect(found).toBe(0);
      else expect(found).toBeGreaterThanOrEqual(contacts);
    }
  });

  it("says where", () => {
    expect(selfContacts(ring([0, 0], [100, 100], [100, 0], [0, 100]), 20)).toEqual([[50, 50]]);
  });

  it("agrees with @turf/kinks on random outlines in general position", () => {
    const corner = fc.tuple(fc.double({ min: 0, max: 100, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true }));
    fc.assert(
      fc.property(fc.array(corner, { minLength: 4, maxLength: 12 }), (corners) => {
        const closed = [...corners, ...corners.slice(0, 1)].map(([x, y]) => [x, y]);
        const theirs = kinks({ type: "Polygon", coordinates: [closed] }).features.map(
          ({ geometry }) => geometry.coordinates,
        );
        const ours = selfContacts(ring(...corners), 1000);
        const apart = (a: readonly number[], b: readonly number[]): number =>
          Math.hypot(Number(a[0]) - Number(b[0]), Number(a[1]) - Number(b[1]));
        // Ours also sees corners that only come within a micrometre and edges that run back; theirs must all be among ours.
        for (const place of theirs) expect(ours.some((own) => apart(own, place) < 2e-3)).toBe(true);
        const isGeneral = corners.every((a, i) => corners.every((b, j) => i === j || apart(a, b) > 0.1));
        if (isGeneral && theirs.length === 0)
          expect(ours.filter((own) => corners.every((at) => apart(own, at) > 1e-3))).toEqual([]);
      }),
      { seed: 51, numRuns: 1000 },
    );
  });

  it("ten thousand corners without a contact, and with one", () => {
    const corners = Array.from({ length: 10_000 }, (_, i): Corner => {
      const turn = (i * 2 * Math.PI) / 10_000;
      return [300 * Math.cos(turn), 200 * Math.sin(turn)];
    });
    expect(selfContacts(ring(...corners), 20)).toEqual([]);
    const [first = [0, 0], second = [0, 0], ...others] = corners;
    expect(selfContacts(ring(second, first, ...others), 20).length).toBeGreaterThan(0);
  });
});

test("an area is positive when its outline runs counter-clockwise, wherever it lies", () => {
  expect(signedArea_m2(ring(...square(100)))).toBe(10_000);
  expect(signedArea_m2(ring(...[...square(100)].reverse()))).toBe(-10_000);
  for (const pose of poses(square(100))) expect(Math.abs(signedArea_m2(pose))).toBeCloseTo(10_000, 6);
});

describe("a hole", () => {
  const outer = square(100);
  test.each<[string, readonly Corner[], boolean]>([
    ["inside", square(20, 40, 40), false],
    [
      "that touches the outline with a corner",
      [
        [0, 50],
        [20, 40],
        [20, 60],
      ],
      false,
    ],
    ["that shares a piece of the outline", square(20, 0, 40), false],
    ["outside", square(20, 140, 40), true],
    ["across the outline", square(20, 90, 40), true],
    ["around the whole parcel", square(200, -50, -50), true],
    [
      "a metre outside in one corner",
      [
        [50, -1],
        [60, 20],
        [40, 20],
      ],
      true,
    ],
  ])("%s", (_, hole, isOutside) => {
    const outers = poses(outer);
    for (const [i, pose] of poses(hole).entries()) {
      expect(placeOutside(pose, outers[i] ?? pose) !== null).toBe(isOutside);
    }
  });
});

describe("two parcels", () => {
  test.each<[string, readonly Corner[], boolean]>([
    ["apart", square(100, 200), false],
    ["side by side on one edge", square(100, 100), false],
    ["on part of one edge", square(40, 100, 30), false],
    ["corner to corner", square(100, 100, 100), false],
    ["half a centimetre into each other, as rounded coordinates are", square(100, 99.995), false],
    ["a metre into each other", square(100, 99), true],
    ["one within the other", square(20, 40, 40), true],
    ["one within the other, on a shared edge", square(20, 0, 40), true],
    ["drawn twice", square(100), true],
    ["drawn twice, the other way round", [...square(100)].reverse(), true],
    [
      "crossed like a plus",
      [
        [40, -50],
        [60, -50],
        [60, 150],
        [40, 150],
      ],
      true,
    ],
  ])("%s", (_, other, doOverlap) => {
    const firsts = poses(square(100));
    for (const [i, pose] of poses(other).entries()) {
      expect(overlappingPairs([[firsts[i] ?? pose], [pose]], 10).length > 0).toBe(doOverlap);
      expect(overlappingPairs([[pose], [firsts[i] ?? pose]], 10).length > 0).toBe(doOverlap);
    }
  });

  it("do not overlap where one fills the other's hole", () => {
    const hole = ring(...[...square(20, 40, 40)].reverse());
    expect(overlappingPairs([[ring(...square(100)), hole], [ring(...square(20, 40, 40))]], 10)).toEqual([]);
  });

  it("the place named lies in both", () => {
    const [pair] = overlappingPairs([[ring(...square(100))], [ring(...square(100, 60, 60))]], 10);
    expect(pair?.at.every((metres) => metres >= 60 && metres <= 100)).toBe(true);
  });
});
