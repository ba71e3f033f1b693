import { describe, expect, it } from "vitest";
import { createRouteJob, northRows } from "../support/create-route-job.ts";
import { leastCosts } from "../support/exact-tree.ts";
import type { Point } from "../support/parcels.ts";
import { routeWorld, type WorldWish } from "../support/route-world.ts";
import { visibilityGraph } from "../support/visibility-graph.ts";

/** What corners in place of arcs may add. */
const cornersAdd = 1.001;

function shortest(sketch: Parameters<typeof createRouteJob>[0], row: number, end: 0 | 1, wish: WorldWish = {}): number {
  const world = routeWorld(createRouteJob(sketch), wish);
  const [all, taut] = [false, true].map((isTaut) => {
    const seen = visibilityGraph(world, sketch.sources, { isTaut });
    return leastCosts(seen.graph, 0)[seen.tee(row, end)];
  });
  expect(taut === all || Math.abs(Number(taut) - Number(all)) < 1e-6, `taut ${taut}, all ${all}`).toBe(true);
  return all ?? Number.NaN;
}

const far: Point = [0, 1000];
const farRow = { start: far, end: [0, 1100] as const };

/** Around a circle of radius r between two points at a and b from its middle, seen under an angle of 180 degrees. */
function roundCircle(r: number, a: number, b: number): number {
  return Math.sqrt(a * a - r * r) + Math.sqrt(b * b - r * r) + r * (Math.PI - Math.acos(r / a) - Math.acos(r / b));
}

describe("shortest ways by the visibility graph", () => {
  it("are straight where nothing is in the way", () => {
    expect(shortest({ rows: [farRow], sources: [[0, 0]] }, 0, 0)).toBeCloseTo(998, 9);
  });

  it("go round a tree along the tangents and the arc between them", () => {
    const way = shortest(
      { rows: [farRow], sources: [[0, 980]], things: [{ points: [[0, 990]], distance_m: 4 }] },
      0,
      0,
    );
    const exact = roundCircle(4, 10, 8);
    expect(way).toBeGreaterThan(exact - 1e-6);
    expect(way).toBeLessThan(exact * cornersAdd);
  });

  it("go round the end of a fence at its distance", () => {
    // The fence from (-50, 990) to (0, 990), kept 3 m from: the arc about its right end.
    const way = shortest(
      {
        rows: [farRow],
        sources: [[0, 980]],
        things: [
          {
            lines: [
              [
                [-50, 990],
                [0, 990],
              ],
            ],
            distance_m: 3,
          },
        ],
      },
      0,
      0,
    );
    const exact = roundCircle(3, 10, 8);
    expect(way).toBeGreaterThan(exact - 1e-6);
    expect(way).toBeLessThan(exact * cornersAdd);
  });

  it("cross a row at its meeting places and nowhere between", () => {
    // Three rows of 30 m, the trench 2 m past their ends: from beside the middle of the first to the far end of the second.
    const rows = northRows(2, 30);
    const way = shortest({ rows, sources: [[-3, 15]] }, 1, 1);
    expect(way).toBeCloseTo(Math.hypot(3, 17) + 2.5, 6);
  });

  it("keep to a bent parcel", () => {
    // An L of 60 by 60 m with a corner at (20, 20), kept 1 m from: an arc about the corner, on its far side from the angle seen.
    const outline: readonly Point[] = [
      [0, 0],
      [60, 0],
      [60, 20],
      [20, 20],
      [20, 60],
      [0, 60],
    ];
    const way = shortest({ rows: [{ start: [50, 8], end: [50, 12] }], lane_m: 0, sources: [[10, 50]], outline }, 0, 0);
    const [a, b] = [Math.hypot(10, 30), Math.hypot(30, 12)];
    const seen = Math.acos((-10 * 30 + 30 * -12) / (a * b));
    const exact =
      Math.sqrt(a * a - 1) + Math.sqrt(b * b - 1) + (2 * Math.PI - seen - Math.acos(1 / a) - Math.acos(1 / b));
    expect(way).toBeGreaterThan(exact - 1e-6);
    expect(way).toBeLessThan(exact * cornersAdd);
  });

  it("do not exist across a stream that divides the ground", () => {
    const outline: readonly Point[] = [
      [-50, 900],
      [50, 900],
      [50, 1200],
      [-50, 1200],
    ];
    const stream = {
      lines: [
        [
          [-60, 950],
          [60, 950],
        ] as const,
      ],
      distance_m: 2,
    };
    expect(shortest({ rows: [farRow], sources: [[0, 920]], outline, things: [stream] }, 0, 0)).toBe(Infinity);
    expect(shortest({ rows: [farRow], sources: [[0, 970]], outline, things: [stream] }, 0, 0)).toBeCloseTo(28, 9);
  });

  it("do not run into a pond", () => {
    const pond = [
      [-10, 985],
      [10, 985],
      [10, 995],
      [-10, 995],
    ] as const;
    const way = shortest({ rows: [farRow], sources: [[0, 970]], things: [{ areas: [pond], distance_m: 0 }] }, 0, 0);
    expect(way).toBeCloseTo(Math.hypot(10, 15) + 10 + Math.hypot(10, 3), 2);
  });

  it("leave a place that is too near to something already, but go no nearer", () => {
    const fence = {
      lines: [
        [
          [-50, 990],
          [50, 990],
        ] as const,
      ],
      distance_m: 3,
    };
    expect(shortest({ rows: [farRow], sources: [[0, 991]], things: [fence] }, 0, 0)).toBeCloseTo(7, 9);
    expect(shortest({ rows: [farRow], sources: [[0, 989]], things: [fence] }, 0, 0)).toBeGreaterThan(100);
  });

  it("keep from rows too when asked to", () => {
    // From beside the row to its end, the trench 2 m past the post, the anchor 1 m past it: 1 m from the anchor all round.
    const sketch = { rows: northRows(1, 30), sources: [[-3, 15] as Point] };
    expect(shortest(sketch, 0, 0)).toBeCloseTo(Math.hypot(3, 17), 6);
    const kept = shortest(sketch, 0, 0, { keepsRows: true });
    const away = Math.hypot(3, 16);
    const exact = Math.sqrt(away ** 2 - 1) + (3 * Math.PI) / 2 - Math.atan2(16, -3) - Math.acos(1 / away);
    expect(kept).toBeGreaterThan(Math.hypot(3, 17));
    expect(Math.abs(kept - exact)).toBeLessThan(0.05);
  });
});
