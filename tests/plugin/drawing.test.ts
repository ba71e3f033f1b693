import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lonLat, planePoint } from "../../src/core/plane/coordinate.ts";
import { coveredArea_m2 } from "../../src/core/plane/covered-area.ts";
import { createFrame } from "../../src/core/plane/frame.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { groundDrawing, triangles } from "../../src/plugin/ground-drawing.ts";
import { groundFeatures } from "../../src/plugin/ground-features.ts";
import { liveBuffers } from "../../src/plugin/live-buffers.ts";
import { mercator, offsetMatrix } from "../../src/plugin/mercator.ts";
import { createPlacing, nearLongitude } from "../../src/plugin/placing.ts";
import { planBounds } from "../../src/plugin/plan-bounds.ts";
import { rowAt } from "../../src/plugin/row-at.ts";
import { anchorToward, endPosts, pointsByRow, rowLabels, rowLines, rowTicks } from "../../src/plugin/row-features.ts";
import { createKeepOut, createProject } from "../support/create-project.ts";
import { createRandomParcel, toPoints } from "../support/parcels.ts";

/** Half a millimetre on the map's unit square at mid latitudes. */
const mapTolerance = 0.0005 / 40_075_017;
const tolerance_m = 1e-6;
/** Of an area: what single precision loses on some hundred triangles. */
const triangleTolerance = 1e-5;

function createDrawn() {
  const plan = createPlanner().plan(createProject({ keepOuts: [createKeepOut({ points: [[30, 60]] })] }));
  if (!plan.rows || !plan.ground) throw new Error("the test ground is not planned");
  return { plan, rows: plan.rows, frame: plan.ground.frame, placing: createPlacing(plan.ground.frame) };
}

describe("rows as the map's sources get them", () => {
  test("every row is one line from its start to its end", () => {
    const { rows, frame, placing } = createDrawn();
    const lines = rowLines(rows, placing);
    expect(lines.map(({ properties }) => properties?.id)).toEqual(rows.rows.map(({ id }) => id));
    lines.forEach(({ geometry }, i) => {
      const [from, to] = geometry.coordinates;
      const start = frame.toPlane(lonLat(from?.[0] ?? 0, from?.[1] ?? 0));
      const end = frame.toPlane(lonLat(to?.[0] ?? 0, to?.[1] ?? 0));
      expect(
        Math.hypot(start[0] - (rows.rows[i]?.start[0] ?? 0), start[1] - (rows.rows[i]?.start[1] ?? 0)),
      ).toBeLessThan(tolerance_m);
      expect(Math.hypot(end[0] - (rows.rows[i]?.end[0] ?? 0), end[1] - (rows.rows[i]?.end[1] ?? 0))).toBeLessThan(
        tolerance_m,
      );
    });
  });

  test("vines come as one feature a row, and rows without any are left out", () => {
    const { rows, placing } = createDrawn();
    const features = pointsByRow(rows.vines, placing);
    const count = features.reduce((sum, { geometry }) => sum + geometry.coordinates.length, 0);
    expect(features).toHaveLength(rows.rows.filter(({ vines }) => vines > 0).length);
    expect(count).toBe(rows.vines.station_m.length);
    const none = { offsets: Uint32Array.of(0, 0), station_m: new Float64Array(0), xy: new Float64Array(0) };
    expect(pointsByRow(none, placing)).toEqual([]);
  });

  test("every row has two end posts, two ticks and a label at its start", () => {
    const { rows, placing } = createDrawn();
    expect(endPosts(rows, placing).flatMap(({ geometry }) => geometry.coordinates)).toHaveLength(2 * rows.rows.length);
    expect(rowTicks(rows, placing)[0]?.geometry.coordinates).toHaveLength(2 * rows.rows.length);
    const labels = rowLabels(rows, placing);
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

describe("rows as the live layer gets them", () => {
  test("offsets from the origin give the same places as the sources", () => {
    const { rows, placing } = createDrawn();
    const buffers = liveBuffers(rows, placing, true);
    expect(buffers.rows).toHaveLength(4 * rows.rows.length);
    expect(buffers.ticks).toHaveLength(8 * rows.rows.length);
    expect(buffers.vines).toHaveLength(2 * rows.vines.station_m.length);
    rowLines(rows, placing).forEach(({ geometry }, i) => {
      const [lng = 0, lat = 0] = geometry.coordinates[0] ?? [];
      const at = mercator(lng, lat);
      expect(Math.abs((buffers.rows[4 * i] ?? 0) + buffers.origin.x - at.x)).toBeLessThan(mapTolerance);
      expect(Math.abs((buffers.rows[4 * i + 1] ?? 0) + buffers.origin.y - at.y)).toBeLessThan(mapTolerance);
    });
  });

  test("vines are left out while they are too small to see", () => {
    const { rows, placing } = createDrawn();
    expect(liveBuffers(rows, placing, false).vines).toHaveLength(0);
  });

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
