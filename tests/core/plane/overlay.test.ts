import { describe, expect, it } from "vitest";
import { arcTolerance_m } from "../../../src/core/plane/band-outline.ts";
import { type Overlay, type PlantingParts, plantingArea, type RingSet } from "../../../src/core/plane/overlay.ts";
import { overlayAgainstKernel } from "../../bench/checks/overlay-against-kernel.ts";
import { seedsFrom, tally } from "../../bench/checks/verdict.ts";
import { createGeos } from "../../support/geos.ts";
import { distanceToPiece, type Point, ringArea, toRingSet } from "../../support/parcels.ts";

/** Corners lie on a grid finer than this for parcels of a few hundred metres. */
const grid_m = 0.00002;
const area_m2Tolerance = 0.01;

function createRectangle(x: number, y: number, width_m: number, height_m: number): Point[] {
  return [
    [x, y],
    [x + width_m, y],
    [x + width_m, y + height_m],
    [x, y + height_m],
  ];
}

function createParts(outlines: readonly RingSet[], more: Partial<PlantingParts> = {}): PlantingParts {
  return { outlines, closed: [], segments: createSegments([]), ...more };
}

function createSegments(pieces: readonly (readonly [x1: number, y1: number, x2: number, y2: number, d: number])[]) {
  return {
    xy: Float64Array.from(pieces.flatMap((piece) => piece.slice(0, 4))),
    distance_m: Float64Array.from(pieces, (piece) => piece[4]),
  };
}

function edgesOf(ring: readonly Point[], distance_m: (edge: number) => number) {
  return createSegments(
    ring.map(([x1, y1], i) => {
      const [x2, y2] = ring[(i + 1) % ring.length] ?? [x1, y1];
      return [x1, y1, x2, y2, distance_m(i)] as const;
    }),
  );
}

function ringPoints(ring: Float64Array): Point[] {
  return Array.from({ length: ring.length / 2 }, (_, i): Point => [ring[2 * i] ?? 0, ring[2 * i + 1] ?? 0]);
}

function corners(overlay: Overlay): Point[] {
  return overlay.polygons.flat().flatMap(ringPoints);
}

const block = createRectangle(0, 0, 200, 100);

describe("the planting area", () => {
  it("is the whole parcel when nothing has a setback", () => {
    const planted = plantingArea(createParts([toRingSet([block])]));
    expect(planted.area_m2).toBeCloseTo(20_000, 2);
    expect(planted.polygons).toHaveLength(1);
  });

  it("of a rectangle with one setback is the smaller rectangle, corner by corner", () => {
    const planted = plantingArea(createParts([toRingSet([block])], { segments: edgesOf(block, () => 8) }));
    expect(Math.abs(planted.area_m2 - 184 * 84)).toBeLessThan(area_m2Tolerance);
    expect(corners(planted)).toHaveLength(4);
    for (const [x, y] of corners(planted)) {
      expect(Math.min(Math.abs(x - 8), Math.abs(x - 192))).toBeLessThan(grid_m);
      expect(Math.min(Math.abs(y - 8), Math.abs(y - 92))).toBeLessThan(grid_m);
    }
  });

  it("gives each edge its own setback", () => {
    const setbacks_m = [3, 15, 0, 8];
    const planted = plantingArea(
      createParts([toRingSet([block])], { segments: edgesOf(block, (i) => setbacks_m[i] ?? 0) }),
    );
    expect(Math.abs(planted.area_m2 - (200 - 15 - 8) * (100 - 3))).toBeLessThan(area_m2Tolerance);
  });

  it("goes round a reflex corner in an arc", () => {
    const notched: Point[] = [
      [0, 0],
      [100, 0],
      [100, 40],
      [60, 40],
      [60, 100],
      [0, 100],
    ];
    const planted = plantingArea(createParts([toRingSet([notched])], { segments: edgesOf(notched, () => 10) }));
    // Two rectangles inside the setback, and the corner square less its quarter disc.
    const expected_m2 = 80 * 20 + 40 * 60 + 10 * 10 - (Math.PI * 10 * 10) / 4;
    expect(Math.abs(planted.area_m2 - expected_m2)).toBeLessThan(area_m2Tolerance);
    const arc = corners(planted).filter(([x, y]) => x > 50.1 && x < 60 && y > 30 && y < 39.9);
    expect(arc.length).toBeGreaterThan(10);
    for (const [x, y] of arc) expect(Math.abs(Math.hypot(x - 60, y - 40) - 10)).toBeLessThanOrEqual(arcTolerance_m);
  });

  it("is cut apart by a stream, and a tree leaves a round hole of the true area", () => {
    const segments = createSegments([
      [80, -50, 80, 300, 6],
      [150, 50, 150, 50, 4],
    ]);
    const planted = plantingArea(createParts([toRingSet([block])], { segments }));
    expect(planted.polygons.map((polygon) => polygon.length).sort()).toEqual([1, 2]);
    expect(Math.abs(planted.area_m2 - (20_000 - 12 * 100 - Math.PI * 16))).toBeLessThan(area_m2Tolerance);
  });

  it("keeps the larger distance where two setbacks meet in a line of short pieces", () => {
    const pieces = Array.from({ length: 40 }, (_, i) => {
      const at = (k: number) => [100 + 30 * Math.cos(k / 6), 50 + 30 * Math.sin(k / 6)] as const;
      return [...at(i), ...at(i + 1), i % 3 === 0 ? 9 : 5] as const;
    });
    const planted = plantingArea(createParts([toRingSet([block])], { segments: createSegments(pieces) }));
    for (const [x, y] of corners(planted)) {
      for (const [x1, y1, x2, y2, distance] of pieces) {
        expect(distanceToPiece(x, y, x1, y1, x2, y2)).toBeGreaterThan(distance - arcTolerance_m);
      }
    }
  });

  it("leaves no slivers between the pieces of a straight fence", () => {
    const turn = 0.3;
    const along = (s: number) => [20 + s * Math.cos(turn), 20 + s * Math.sin(turn)] as const;
    const stops = [0, 7.1, 13.37, 22, 22.3, 50.123, 71, 99.9];
    const pieces = stops.slice(1).map((to, i) => [...along(stops[i] ?? 0), ...along(to), 2.5] as const);
    const planted = plantingArea(createParts([toRingSet([block])], { segments: createSegments(pieces) }));
    expect(planted.polygons.map((polygon) => polygon.length)).toEqual([2]);
    expect(Math.abs(planted.area_m2 - (20_000 - 5 * 99.9 - Math.PI * 2.5 ** 2))).toBeLessThan(area_m2Tolerance);
  });

  it("stays out of closed areas, even one that reaches over the fence", () => {
    const closed = [toRingSet([createRectangle(50, 50, 20, 10)]), toRingSet([createRectangle(190, -10, 50, 60)])];
    const planted = plantingArea(createParts([toRingSet([block])], { closed }));
    expect(Math.abs(planted.area_m2 - (20_000 - 200 - 500))).toBeLessThan(area_m2Tolerance);
  });

  it("of an island in a pond is a polygon of its own", () => {
    const rings = toRingSet([block, createRectangle(40, 20, 100, 60).reverse(), createRectangle(60, 30, 20, 20)]);
    const planted = plantingArea(createParts([rings]));
    expect(planted.polygons.map((polygon) => polygon.length).sort()).toEqual([1, 2]);
    expect(Math.abs(planted.area_m2 - (20_000 - 6000 + 400))).toBeLessThan(area_m2Tolerance);
  });

  it("has its outer rings counter-clockwise and its holes clockwise", () => {
    const segments = createSegments([[150, 50, 150, 50, 4]]);
    const planted = plantingArea(createParts([toRingSet([block])], { segments }));
    const signs = planted.polygons.map((polygon) => polygon.map((ring) => Math.sign(ringArea(ringPoints(ring)))));
    expect(signs).toEqual([[1, -1]]);
  });

  it("is nothing when setbacks swallow the parcel, or when there is no parcel", () => {
    const swallowed = plantingArea(createParts([toRingSet([block])], { segments: edgesOf(block, () => 60) }));
    expect(swallowed).toEqual({ area_m2: 0, polygons: [] });
    expect(plantingArea(createParts([]))).toEqual({ area_m2: 0, polygons: [] });
  });

  it("agrees with an independent geometry kernel on random parcels with a setback for each edge", {
    timeout: 60_000,
  }, async () => {
    const geos = await createGeos();
    const { faults } = tally(seedsFrom(1, 30), (seed) => overlayAgainstKernel(geos, seed));
    expect(faults).toEqual([]);
  });
});
