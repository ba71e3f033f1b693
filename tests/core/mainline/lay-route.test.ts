import { describe, expect, it } from "vitest";
import { layRoute } from "../../../src/core/mainline/lay-route.ts";
import type { Route } from "../../../src/core/mainline/route.ts";
import type { RouteJob } from "../../../src/core/mainline/route-job.ts";
import type { MainLineSettings, Project } from "../../../src/core/project/project.ts";
import {
  at,
  createBlock,
  createKeepOut,
  createParcel,
  createProject,
  createShape,
  rectangle,
} from "../../support/create-project.ts";
import { createRouteJob, northRows, routeJobOf } from "../../support/create-route-job.ts";
import type { Point } from "../../support/parcels.ts";
import { legsOf, routeFaults } from "../../support/route-faults.ts";
import { apart_m } from "../../support/route-world.ts";
import { readSample, sampleNames } from "../../support/sample-plans.ts";

/** Metres; arcs are drawn with corners. */
const close_m = 0.1;

/** The route of a job, looked over. */
function laid(job: RouteJob): Route {
  const route = layRoute(job);
  if (route === null) throw new Error("no route");
  expect(routeFaults(job, route)).toEqual([]);
  return route;
}

const ends = (route: Route) => [...new Set(route.waterEnd)];

/** Around a circle between two places seen from its middle under half a turn. */
function roundTree(radius_m: number, a_m: number, b_m: number): number {
  const arc = Math.PI - Math.acos(radius_m / a_m) - Math.acos(radius_m / b_m);
  return Math.sqrt(a_m ** 2 - radius_m ** 2) + Math.sqrt(b_m ** 2 - radius_m ** 2) + radius_m * arc;
}

/** 20 rows of 100 m on 47.5 m, the trench 2 m past their end posts. */
const block = northRows(20, 100);

describe("one block", () => {
  it("with the well at a corner has one straight line along the near headland", () => {
    const route = laid(createRouteJob({ rows: block, sources: [[-5, -2]] }));
    expect(route.length_m).toBeCloseTo(5 + 47.5, 6);
    expect(ends(route)).toEqual(["start"]);
    expect(route.unreached).toEqual([]);
    expect(new Set(route.upstream).size).toBe(route.upstream.length);
  });

  it("with the well beyond the other ends takes its water there", () => {
    const route = laid(createRouteJob({ rows: block, sources: [[50, 104]] }));
    expect(ends(route)).toEqual(["end"]);
    expect(route.length_m).toBeCloseTo(Math.hypot(2.5, 2) + 47.5, 2);
  });

  it("with the well beside the middle of its headland branches to both sides", () => {
    const route = laid(createRouteJob({ rows: block, sources: [[23.75, -8]] }));
    // Down to the row of tees, then both ways; a fork of two slanting legs is a little shorter.
    expect(route.length_m).toBeLessThanOrEqual(47.5 + Math.hypot(6, 1.25) + close_m);
    expect(route.length_m).toBeGreaterThan(47.5 + 4);
    expect(ends(route)).toEqual(["start"]);
  });

  it("with the well beside the middle of a row goes along that row to one headland, not to both", () => {
    const route = laid(createRouteJob({ rows: block, sources: [[-5, 49]] }));
    expect(ends(route)).toEqual(["start"]);
    // Past the first anchor at its distance, not straight to the tee.
    expect(route.length_m).toBeGreaterThan(Math.hypot(5, 51) + 47.5);
    expect(route.length_m).toBeLessThan(1.015 * (Math.hypot(5, 51) + 47.5));
  });

  it("of a single row is a single leg", () => {
    const route = laid(createRouteJob({ rows: northRows(1, 40), sources: [[0, -20]] }));
    expect(route.length_m).toBeCloseTo(18, 9);
    expect([...route.row]).toEqual([-1, 0]);
  });

  it("with the well right at a tee begins there", () => {
    const route = laid(createRouteJob({ rows: northRows(3, 40), sources: [[0, -2]] }));
    expect(route.length_m).toBeCloseTo(5, 9);
  });

  it("with row ends on a slant follows them", () => {
    const rows = Array.from({ length: 10 }, (_, i) => ({
      start: [i * 3, i * 1.5] as const,
      end: [i * 3, 80] as const,
    }));
    const route = laid(createRouteJob({ rows, sources: [[0, -2]], spacing_m: 3 }));
    // The first leg leaves the well for the lane, which lies a little farther out there.
    expect(route.length_m).toBeGreaterThan(9 * Math.hypot(3, 1.5) - close_m);
    expect(route.length_m).toBeLessThan(9 * Math.hypot(3, 1.5) + 3 * close_m);
  });
});

describe("several blocks and groups of rows", () => {
  it("two blocks beside each other get water at the ends that suit both", () => {
    const west = northRows(10, 80);
    const east = Array.from({ length: 10 }, (_, i) => ({
      start: [40, 2 + i * 2.5] as const,
      end: [120, 2 + i * 2.5] as const,
      block: 1,
      line: i + 1,
    }));
    const route = laid(createRouteJob({ rows: [...west, ...east], sources: [[-5, -2]] }));
    expect(ends(route)).toEqual(["start"]);
    // Along the first headland, over to the second, along it.
    expect(route.length_m).toBeLessThan(5 + 22.5 + Math.hypot(38 - 22.5, 4) + 22.5 + close_m);
    expect(route.unreached).toEqual([]);
  });

  it("blocks whose near headlands lie on either side of the well each take the near one", () => {
    const south = northRows(8, 60).map(({ start, end }, i) => ({
      start: [start[0], start[1] - 70] as const,
      end: [end[0], end[1] - 70] as const,
      line: i + 1,
    }));
    const north = northRows(8, 60).map((row, i) => ({ ...row, block: 1, line: i + 1 }));
    const route = laid(createRouteJob({ rows: [...south, ...north], sources: [[-10, -5]] }));
    expect(route.waterEnd.slice(0, 8)).toEqual(Array(8).fill("end"));
    expect(route.waterEnd.slice(8)).toEqual(Array(8).fill("start"));
  });

  it("rows of which some are far shorter are met at whatever end is nearer to the others", () => {
    // The last four begin 60 m further north: their ends are nearer to nothing, their starts are in the middle of the block.
    const rows = northRows(12, 100).map(({ start, end }, i) => ({ start: [start[0], i < 8 ? 0 : 60] as const, end }));
    const route = laid(createRouteJob({ rows, sources: [[30, 104]] }));
    expect(ends(route)).toEqual(["end"]);
    expect(route.length_m).toBeCloseTo(Math.hypot(2.5, 2) + 27.5, 1);
  });
});

describe("things in the way", () => {
  it("an oak between well and rows is gone round at its distance", () => {
    const route = laid(
      createRouteJob({ rows: northRows(1, 40), sources: [[0, -22]], things: [{ points: [[0, -12]], distance_m: 3 }] }),
    );
    const exact = roundTree(3, 10, 10);
    expect(route.length_m).toBeGreaterThan(exact - 1e-6);
    expect(route.length_m).toBeLessThan(exact + close_m);
  });

  it("an oak in the headland makes the trench swing out between two tees", () => {
    // 12 m between two rows, the oak half-way and 1 m on the rows' side of the trench.
    const rows = [0, 12].map((x) => ({ start: [x, 0] as const, end: [x, 50] as const }));
    const job = createRouteJob({
      rows,
      spacing_m: 12,
      sources: [[-5, -2]],
      things: [{ points: [[6, -1]], distance_m: 3 }],
    });
    const route = laid(job);
    const seen = Math.hypot(6, 1);
    // The trench passes below: tangents from both tees, 1 m below the oak's middle.
    const arc = Math.PI - 2 * Math.atan2(1, 6) - 2 * Math.acos(3 / seen);
    const round = 2 * Math.sqrt(seen ** 2 - 9) + 3 * Math.max(0, arc);
    expect(route.length_m - 5).toBeGreaterThan(12);
    expect(route.length_m - 5).toBeLessThan(round + 2 * close_m);
  });

  it("a shed is not run through", () => {
    const shed = rectangle(10, 6, [-5, -14]);
    const route = laid(
      createRouteJob({ rows: northRows(1, 40), sources: [[0, -22]], things: [{ areas: [shed], distance_m: 1 }] }),
    );
    // Past a corner 1 m off it, along the side, and past the next.
    expect(route.length_m).toBeGreaterThan(2 * Math.hypot(5, 6));
    expect(route.length_m).toBeLessThan(Math.hypot(6, 7) + 8 + Math.hypot(6, 6));
  });

  const paddock = rectangle(110, 150, [-30, -20]);
  const stream = { lines: [[[-10, -40] as const, [-10, 160] as const]], distance_m: 3 };

  it("a stream that may be crossed is crossed once and square", () => {
    const route = laid(
      createRouteJob({
        rows: block,
        sources: [[-20, -2]],
        outline: paddock,
        things: [{ ...stream, isCrossable: true }],
      }),
    );
    expect(route.crossings).toBe(1);
    const crossing = legsOf(route).filter(({ crossing }) => crossing === 0);
    expect(crossing).toHaveLength(1);
    const [
      [from, to] = [
        [0, 0],
        [0, 0],
      ],
    ] = crossing.map(({ piece }) => piece);
    expect(from[1]).toBeCloseTo(to[1], 6);
    expect(Math.abs(from[0] - to[0])).toBeGreaterThanOrEqual(6 - 1e-6);
    expect(route.length_m).toBeCloseTo(20 + 47.5, 1);
    expect(route.unreached).toEqual([]);
  });

  it("a stream that may not be crossed leaves the rows behind it without water, and says which", () => {
    const route = laid(createRouteJob({ rows: block, sources: [[-20, -2]], outline: paddock, things: [stream] }));
    expect(route.unreached).toEqual(block.map((_, row) => row));
    expect(route.length_m).toBe(0);
    expect(route.crossings).toBe(0);
    // Told by distance: -20 is as near to -2 as the ends are far.
    expect(ends(route)).toEqual(["start"]);
  });

  it("a stream between two halves of a block leaves only the far half without water", () => {
    const rows = northRows(20, 100).map((row, i) =>
      i < 10 ? row : { start: [row.start[0] + 15, 0] as const, end: [row.end[0] + 15, 100] as const },
    );
    const job = createRouteJob({
      rows,
      sources: [[-5, -2]],
      outline: rectangle(110, 150, [-30, -20]),
      things: [
        {
          lines: [
            [
              [31, -40],
              [31, 160],
            ],
          ],
          distance_m: 3,
        },
      ],
    });
    const route = laid(job);
    expect(route.unreached).toEqual(rows.flatMap((_, row) => (row < 10 ? [] : [row])));
    expect(route.length_m).toBeCloseTo(5 + 22.5, 2);
  });

  it("a stream is crossed where the way round it costs more than the crossing counts, not where it costs less", () => {
    // A stream that ends 30 m north of the source's height: round its end, or through it.
    const sketch = (crossingAs_m: number) =>
      createRouteJob({
        rows: northRows(1, 40).map(() => ({ start: [0, 0] as const, end: [40, 0] as const })),
        sources: [[-20, 0]],
        things: [
          {
            lines: [
              [
                [-10, -300],
                [-10, 15],
              ],
            ],
            distance_m: 1,
            isCrossable: true,
          },
        ],
        crossingAs_m,
      });
    const round_m = Math.hypot(10, 16) + Math.hypot(8, 16) - 18;
    expect(laid(sketch(round_m - 2)).crossings).toBe(1);
    expect(laid(sketch(round_m + 2)).crossings).toBe(0);
  });

  it("the outline of the ground is kept its distance from", () => {
    const outline: readonly Point[] = [
      [0, 0],
      [100, 0],
      [100, 30],
      [30, 30],
      [30, 100],
      [0, 100],
    ];
    const job = createRouteJob({
      rows: [{ start: [60, 12], end: [90, 12] }],
      sources: [[12, 90]],
      outline,
      boundaryDistance_m: 2,
    });
    const route = laid(job);
    const least = Math.min(
      ...legsOf(route).map(({ piece }) =>
        apart_m(piece, [
          [30, 30],
          [30, 100],
        ]),
      ),
    );
    expect(least).toBeGreaterThanOrEqual(2 - 1e-6);
    expect(least).toBeLessThan(2.1);
  });
});

describe("what the person says", () => {
  it("pinned rows take their water at that end, whatever it costs, and the others follow as is cheapest", () => {
    const rows = block.map((row, i) => (i >= 5 && i < 8 ? { ...row, pin: 2 as const } : row));
    const route = laid(createRouteJob({ rows, sources: [[-5, -2]] }));
    expect(route.waterEnd.map((end) => (end === "end" ? 1 : 0)).slice(5, 8)).toEqual([1, 1, 1]);
    expect(route.unreached).toEqual([]);
    const free = laid(createRouteJob({ rows: block, sources: [[-5, -2]] }));
    expect(route.length_m).toBeGreaterThan(free.length_m + 90);
  });

  it("a line that the person drew is followed, snapped to the tees, and completed to the rows it leaves out", () => {
    // From the well along the far headland as far as the middle of the block, drawn by hand: half a metre off.
    const drawn: readonly Point[] = [
      [-4.8, 49.5],
      [-5.2, 102.3],
      [24, 101.6],
    ];
    const job = createRouteJob({ rows: block, sources: [[-5, 49]], drawn: [drawn] });
    const route = laid(job);
    expect(ends(route)).toEqual(["end"]);
    expect(route.unreached).toEqual([]);
    const drawnLegs = legsOf(route).filter(({ isDrawn }) => isDrawn);
    const along_m = drawnLegs.reduce((sum, { piece: [a, b] }) => sum + Math.hypot(a[0] - b[0], a[1] - b[1]), 0);
    expect(along_m).toBeGreaterThan(60);
    expect(along_m).toBeLessThan(90);
    expect(route.length_m).toBeGreaterThan(52 + 47.5);
    expect(route.length_m).toBeLessThan(52 + 5 + 47.5 + 5);
  });

  it("of several sources the cheaper one is taken", () => {
    const job = createRouteJob({
      rows: block,
      sources: [
        [-60, -2],
        [-5, 104],
        [-50, 50],
      ],
    });
    const route = laid(job);
    expect(route.source).toBe(1);
    expect(ends(route)).toEqual(["end"]);
  });

  it("a source that reaches fewer rows is not cheaper", () => {
    const job = createRouteJob({
      rows: block,
      sources: [
        [-20, -2],
        [60, 50],
      ],
      outline: rectangle(110, 150, [-30, -20]),
      things: [
        {
          lines: [
            [
              [-10, -40],
              [-10, 160],
            ],
          ],
          distance_m: 3,
        },
      ],
    });
    const route = laid(job);
    expect(route.source).toBe(1);
    expect(route.unreached).toEqual([]);
  });
});

/** A field of 60 by 120 m with rows north; a well near its south-west corner unless it is said. */
function field(
  mainLine: Partial<MainLineSettings> = {},
  change: Partial<Project> = {},
  well: Point = [3, 2],
): RouteJob {
  const usual = createProject();
  return routeJobOf({
    ...usual,
    mainLine: { ...usual.mainLine, ...mainLine },
    sources: [{ key: "well", name: "Well", at: at(well) }],
    ...change,
  });
}

/** How far past the end post the tee of the first row is, outward. */
function teeOut_m(job: RouteJob, route: Route): number {
  const i = route.row.indexOf(0);
  const end = route.waterEnd[0] === "end" ? 1 : 0;
  const [x, y] = [job.rows.posts[2 * end] ?? 0, job.rows.posts[2 * end + 1] ?? 0];
  const [ox, oy] = [job.rows.posts[2 - 2 * end] ?? 0, job.rows.posts[3 - 2 * end] ?? 0];
  const length_m = Math.hypot(x - ox, y - oy);
  return (((route.xy[2 * i] ?? 0) - x) * (x - ox) + ((route.xy[2 * i + 1] ?? 0) - y) * (y - oy)) / length_m;
}

describe("a planned field", () => {
  it("has its trench past the anchors, between them and the posts, or inside the end posts", () => {
    const out = (lane: MainLineSettings["lane"]) => {
      const job = field({ lane, postDistance_m: 0.7 });
      return teeOut_m(job, laid(job));
    };
    // Anchors 1.5 m out, the first vine 1 m in.
    expect(out("beyond")).toBeCloseTo(1.5 + 0.7, 6);
    expect(out("between")).toBeCloseTo(0.75, 6);
    expect(out("inside")).toBeCloseTo(-0.5, 6);
  });

  it("gets water at all rows from a well in its corner, at the ends near the well", () => {
    const job = field();
    const route = laid(job);
    expect(ends(route)).toEqual(["start"]);
    expect(route.unreached).toEqual([]);
  });

  it("gets water from a well outside the parcel, over the boundary", () => {
    const job = field({}, {}, [30, -25]);
    const route = layRoute(job);
    expect(route?.unreached).toEqual([]);
    expect(route?.length_m).toBeGreaterThan(25 + 40);
    expect(route?.length_m).toBeLessThan(40 + 60);
  });

  it("gets water to both pieces of rows that an oak splits", () => {
    const oak = createKeepOut({ points: [[30, 60]] }, { distance_m: 6 });
    const job = field({}, { keepOuts: [oak] });
    const route = laid(job);
    expect(job.rows.block.length).toBeGreaterThan(new Set(job.rows.line).size);
    expect(route.unreached).toEqual([]);
  });

  it("gets water to the rows on both sides of a cross alley", () => {
    const alley = {
      key: "alley",
      name: null,
      shape: createShape({
        lines: [
          [
            [-5, 60],
            [65, 60],
          ],
        ],
      }),
      width_m: 8,
    };
    const job = field({}, { crossAlleys: [alley] });
    const route = laid(job);
    const lines = new Set(job.rows.line).size;
    expect(job.rows.block.length).toBe(2 * lines);
    expect(route.unreached).toEqual([]);
    const wide_m = (lines - 1) * 2.5;
    // One line along the alley serves the pieces on both sides; two headlands would do as well. Never more than two and the way between.
    expect(route.length_m).toBeLessThan(2 * wide_m + 70);
  });

  it("of two blocks gets water to both", () => {
    const areas = [rectangle(60, 58, [0, 0]), rectangle(60, 58, [0, 62])].map((ring, i) => ({
      key: `area-${i}`,
      name: null,
      block: i === 0 ? "1" : "2",
      polygons: [[ring.map((point) => at(point))]],
    }));
    const job = field(
      {},
      {
        parcels: [createParcel([rectangle(60, 120)])],
        blockAreas: areas,
        blocks: [
          createBlock(),
          createBlock({ bearing: { kind: "given", bearing_deg: 90 } }, { id: "2", name: "Block 2" }),
        ],
      },
    );
    const route = laid(job);
    expect(new Set(job.rows.block).size).toBe(2);
    expect(route.unreached).toEqual([]);
  });
});

describe("the samples", () => {
  it.each(sampleNames())("%s has a main line that reaches every row and keeps its distances", (name) => {
    const route = laid(routeJobOf(readSample(name)));
    expect(route.unreached).toEqual([]);
  });

  it("the brook is crossed once, and the line along the fence is followed", () => {
    const route = laid(routeJobOf(readSample("brook-and-two-blocks")));
    expect(route.crossings).toBe(1);
    expect(route.isDrawn.some((each) => each === 1)).toBe(true);
  });
});
