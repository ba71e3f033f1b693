import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lonLat, planePoint } from "../../src/core/plane/coordinate.ts";
import { coveredArea_m2 } from "../../src/core/plane/covered-area.ts";
import { createFrame } from "../../src/core/plane/frame.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { groundDrawing, triangles } from "../../src/plugin/ground-drawing.ts";
import { groundFeatures } from "../../src/plugin/ground-features.ts";
import { mercatorOfMetre, offsetMatrix } from "../../src/plugin/mercator.ts";
import { createPlacing, nearLongitude, type Placing } from "../../src/plugin/placing.ts";
import { planBounds } from "../../src/plugin/plan-bounds.ts";
import { rowAt } from "../../src/plugin/row-at.ts";
import { postPlaces, rangesWithin, rowBuffers, vinePlaces } from "../../src/plugin/row-buffers.ts";
import { anchorToward, rowLabels } from "../../src/plugin/row-labels.ts";
import { postSize_px, postZoom, rowWidth_px, vineSize_px, vineZoom } from "../../src/plugin/sizes.ts";
import { thinned } from "../../src/plugin/thinned.ts";
import { createKeepOut, createParcel, createProject, rectangle } from "../support/create-project.ts";
import { createRandomParcel, distanceToPiece, type Point, toPoints } from "../support/parcels.ts";

/** Vines are put on the drawn line by their share of it, and offsets are single numbers. */
const drawnTolerance_m = 0.01;
/** Of an area: what single precision loses on some hundred triangles. */
const triangleTolerance = 1e-5;

function apart(a: readonly [number, number], b: readonly [number, number]): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

function createDrawn() {
  const plan = createPlanner().plan(createProject({ keepOuts: [createKeepOut({ points: [[30, 60]] })] }));
  if (!plan.rows || !plan.ground) throw new Error("the test ground is not planned");
  return { plan, rows: plan.rows, frame: plan.ground.frame, placing: createPlacing(plan.ground.frame) };
}

describe("rows as their layer gets them", () => {
  /** Where the layer draws the n-th place of a list, in plane metres. */
  const drawnAt = (places: Float32Array, n: number, origin: { x: number; y: number }, { frame }: Placing) => {
    const [x, y] = [(places[2 * n] ?? 0) + origin.x, (places[2 * n + 1] ?? 0) + origin.y];
    const lat = (360 / Math.PI) * Math.atan(Math.exp((180 - y * 360) * (Math.PI / 180))) - 90;
    return frame.toPlane(lonLat(x * 360 - 180, lat));
  };

  test("every row is one line from its start to its end, with a tick across both", () => {
    const { rows, placing } = createDrawn();
    const { count, segments, origin } = rowBuffers(rows, placing);
    expect(count).toBe(rows.rows.length);
    expect(segments).toHaveLength(12 * count);
    rows.rows.forEach((row, i) => {
      const [start, end] = [drawnAt(segments, 2 * i, origin, placing), drawnAt(segments, 2 * i + 1, origin, placing)];
      expect(apart(start, row.start)).toBeLessThan(drawnTolerance_m);
      expect(apart(end, row.end)).toBeLessThan(drawnTolerance_m);
      for (const [tick, post] of [0, 1].map(
        (k) => [2 * count + 4 * i + 2 * k, k === 0 ? row.start : row.end] as const,
      )) {
        const [from, to] = [drawnAt(segments, tick, origin, placing), drawnAt(segments, tick + 1, origin, placing)];
        expect(apart([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], post)).toBeLessThan(drawnTolerance_m);
        expect(apart(from, to)).toBeCloseTo(2 * 0.2 * 2.5, 2);
      }
    });
  });

  test("every vine and every post is drawn where it stands, on rows of half a kilometre too", () => {
    const long = createProject({ parcels: [createParcel([rectangle(40, 600, [-300, 4000])])] });
    for (const one of [createProject(), long]) {
      const { rows, ground } = createPlanner().plan(one);
      if (!rows || !ground) throw new Error("the test ground is not planned");
      const placing = createPlacing(ground.frame);
      const buffers = rowBuffers(rows, placing);
      const { places: vines } = vinePlaces(rows, buffers);
      expect(vines).toHaveLength(rows.vines.xy.length);
      for (let i = 0; i < vines.length / 2; i++) {
        const at = [rows.vines.xy[2 * i] ?? 0, rows.vines.xy[2 * i + 1] ?? 0] as const;
        expect(apart(drawnAt(vines, i, buffers.origin, placing), at)).toBeLessThan(drawnTolerance_m);
      }
      const { places: posts, offsets } = postPlaces(rows, buffers);
      expect(offsets.at(-1)).toBe(posts.length / 2);
      expect(posts).toHaveLength(4 * rows.rows.length + rows.linePosts.xy.length);
      expect(apart(drawnAt(posts, 0, buffers.origin, placing), rows.rows[0]?.start ?? [0, 0])).toBeLessThan(
        drawnTolerance_m,
      );
    }
  });

  test("of the vines those of rows in view are drawn, in one go where the rows are neighbours", () => {
    const { rows, placing } = createDrawn();
    const buffers = rowBuffers(rows, placing);
    const vines = vinePlaces(rows, buffers);
    const all = { west: -1, north: -1, east: 1, south: 1 };
    expect(rangesWithin(buffers, vines, all)).toEqual([0, rows.vines.station_m.length]);
    expect(rangesWithin(buffers, vines, { ...all, east: -0.5 })).toEqual([]);
    // Rows run north, side by side: a box around the third.
    const x = buffers.segments[8] ?? 0;
    const third = { ...all, west: x - buffers.spacing / 2, east: x + buffers.spacing / 2 };
    expect(rangesWithin(buffers, vines, third)).toEqual([rows.vines.offsets[2], rows.vines.offsets[3]]);
  });

  test("rows are drawn thinner where they would run together", () => {
    const spacing = 2.5 * mercatorOfMetre(42.6);
    expect(rowWidth_px(20, spacing)).toBe(1.6);
    expect(rowWidth_px(12, spacing)).toBe(0.6);
    expect(rowWidth_px(16, spacing)).toBeGreaterThan(0.6);
    expect(rowWidth_px(16, spacing)).toBeLessThan(1.6);
  });

  test("vines and posts grow as the map comes nearer, up to a size", () => {
    expect([vineSize_px(vineZoom), vineSize_px(22), vineSize_px(23)]).toEqual([4, 28, 28]);
    expect(vineSize_px(20.5)).toBeGreaterThan(vineSize_px(20));
    expect([postSize_px(postZoom), postSize_px(21), postSize_px(23)]).toEqual([6.4, 12.8, 12.8]);
  });

  test("every row has its number at its start", () => {
    const { rows, placing } = createDrawn();
    const labels = rowLabels(rows, placing);
    expect(labels).toHaveLength(rows.rows.length);
    expect(labels[0]?.properties.label).toBe("1");
    // Rows run north: the number stands south of the start, its top toward the row.
    expect(labels[0]?.properties.anchor).toBe("top");
  });

  test.each([
    [[0, 1], "top"],
    [[1, 0], "right"],
    [[0, -1], "bottom"],
    [[-1, 0], "left"],
    [[0.7, 0.7], "top-right"],
    [[-0.7, -0.7], "bottom-left"],
  ] as const)("a row toward %j has its label anchored at its %s", (direction, anchor) => {
    expect(anchorToward(direction)).toBe(anchor);
  });

  test("obstacles, alleys and marks keep their names", () => {
    const { plan, placing } = createDrawn();
    const features = groundFeatures(plan.project, placing);
    expect(features.map(({ properties }) => properties)).toEqual([{ kind: "keep-out", name: "oak" }]);
  });
});

describe("the ground as its layer gets it", () => {
  const squareArea = (triangles: Float32Array) => {
    let sum = 0;
    for (let i = 0; i + 5 < triangles.length; i += 6) {
      const [ax = 0, ay = 0, bx = 0, by = 0, cx = 0, cy = 0] = triangles.slice(i, i + 6);
      sum += Math.abs((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 2;
    }
    return sum;
  };

  test("the planting area is filled: its triangles cover it and nothing twice", () => {
    const { plan, placing } = createDrawn();
    const drawing = groundDrawing(plan, placing);
    // A metre on the map's unit square, at the ground's latitude.
    const [lng, lat] = placing.lngLat(0, 0);
    const scale = 1 / (40_075_016.686 * Math.cos((lat * Math.PI) / 180));
    expect(lng).toBeCloseTo(-76.9, 6);
    const drawn_m2 = squareArea(drawing?.fills.planting ?? new Float32Array(0)) / scale ** 2;
    expect(drawn_m2 / (plan.ground?.plantingArea_m2 ?? 0)).toBeCloseTo(1, 2);
  });

  test("an area with holes is cut into triangles that sum up to its area", () => {
    for (let parcel = 1; parcel <= 60; parcel++) {
      const { rings } = createRandomParcel(parcel);
      const cut = Float32Array.from(triangles(toPoints(rings)));
      const area_m2 = coveredArea_m2([[rings]]);
      expect(Math.abs(squareArea(cut) - area_m2)).toBeLessThan(area_m2 * triangleTolerance);
    }
  });

  test("the planting area stays as it was while the new one is not worked out", () => {
    const { plan, placing } = createDrawn();
    if (!plan.ground) throw new Error("the test ground is not planned");
    const open = { ...plan, ground: { ...plan.ground, plantingArea: null, plantingArea_m2: null } };
    expect(groundDrawing(open, placing)?.fills.planting).toHaveLength(0);
    const before = groundDrawing(plan, placing);
    expect(groundDrawing(open, placing, before)?.fills.planting).toBe(before?.fills.planting);
    const elsewhere = createPlacing(createFrame(lonLat(7, 50)));
    expect(groundDrawing(open, elsewhere, before)?.fills.planting).toHaveLength(0);
    expect(groundDrawing({ ...open, ground: null }, placing, before)?.fills.planting).toHaveLength(0);
  });

  test("an area's corners are left out only where nobody can see it", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        (seed, tolerance) => {
          const [ring = []] = toPoints(createRandomParcel(seed).rings);
          const kept = thinned(ring, tolerance);
          expect(kept.length).toBeGreaterThanOrEqual(3);
          for (const [x, y] of ring) {
            const away = kept.map(([px, py], i) => {
              const [qx, qy] = kept[(i + 1) % kept.length] ?? [px, py];
              return distanceToPiece(x, y, px, py, qx, qy);
            });
            if (kept.length < ring.length) expect(Math.min(...away)).toBeLessThanOrEqual(tolerance * 1.000001);
          }
        },
      ),
      { seed: 21, numRuns: 100 },
    );
    const circle = Array.from({ length: 720 }, (_, i): Point => [Math.cos(i / 114.6) * 10, Math.sin(i / 114.6) * 10]);
    expect(thinned(circle, 0.02).length).toBeLessThan(80);
  });

  test("a rectangle has four sides, a point no line", () => {
    const { plan, placing } = createDrawn();
    const drawing = groundDrawing(plan, placing);
    expect(drawing?.strokes.outline).toHaveLength(4 * 4);
    expect(drawing?.strokes["keep-out"]).toHaveLength(0);
    expect(drawing?.strokes.sketch).toHaveLength(0);
  });

  test("ground that could not be laid out is drawn as the file has it", () => {
    const { plan } = createDrawn();
    const line = [
      [7, 50],
      [7.001, 50.001],
      [7.001, 50],
    ];
    const document = {
      type: "FeatureCollection" as const,
      features: [
        { type: "Feature" as const, properties: {}, geometry: { type: "LineString" as const, coordinates: line } },
      ],
    };
    const unplanned = { ...plan, ground: null, rows: null, project: { ...plan.project, document, parcels: [] } };
    expect(groundDrawing(unplanned, null)?.strokes.sketch).toHaveLength(2 * 4);
    expect(
      groundDrawing({ ...unplanned, project: { ...unplanned.project, document: { ...document, features: [] } } }, null),
    ).toBeNull();
  });
});

describe("a matrix for offsets", () => {
  test("a matrix moved to an origin takes offsets where the first took the sum", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 16, maxLength: 16 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (matrix, x, y) => {
          const moved = offsetMatrix(matrix, { x, y });
          for (let row = 0; row < 4; row++) {
            const expected = (matrix[row] ?? 0) * x + (matrix[4 + row] ?? 0) * y + (matrix[12 + row] ?? 0);
            expect(moved[12 + row]).toBeCloseTo(expected, 5);
          }
        },
      ),
      { seed: 20, numRuns: 100 },
    );
  });
});

describe("finding a row under the pointer", () => {
  test("the nearest row within reach is found, beyond it none", () => {
    const { rows } = createDrawn();
    const third = rows.rows[2];
    if (!third) throw new Error("the test ground has three rows");
    const beside = planePoint(third.start[0] + 0.4, (third.start[1] + third.end[1]) / 2);
    expect(rowAt(rows, beside, 1)).toBe(2);
    expect(rowAt(rows, planePoint(-50, 0), 1)).toBeNull();
    expect(rowAt(rows, planePoint(third.start[0], third.start[1] - 0.9), 1)).toBe(2);
  });
});

describe("places on either side of the antimeridian", () => {
  test("longitudes stay beside the frame's origin", () => {
    const placing = createPlacing(createFrame(lonLat(179.9995, -17)));
    expect(placing.lngLat(200, 0)[0]).toBeGreaterThan(180);
    expect(nearLongitude(-179.9, 179.9)).toBeCloseTo(180.1, 9);
    expect(nearLongitude(179.9, -179.9)).toBeCloseTo(-180.1, 9);
    expect(nearLongitude(7, 8)).toBe(7);
  });

  test("the whole plan's bounds are those of its parcels", () => {
    const { plan } = createDrawn();
    const bounds = planBounds(plan);
    const ring = plan.project.parcels[0]?.polygons[0]?.[0] ?? [];
    expect(bounds?.[0]).toEqual([Math.min(...ring.map(([lon]) => lon)), Math.min(...ring.map(([, lat]) => lat))]);
    expect(planBounds({ ...plan, project: { ...plan.project, parcels: [] } })).toBeNull();
  });
});
