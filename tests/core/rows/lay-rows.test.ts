import { describe, expect, it } from "vitest";
import type { Plan } from "../../../src/core/plan.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { GivenRow, Project, RowSettings } from "../../../src/core/project/project.ts";
import type { Row } from "../../../src/core/rows/rows.ts";
import { validatePlan } from "../../../src/core/validate-plan.ts";
import {
  at,
  createBlock,
  createKeepOut,
  createParcel,
  createProject,
  createShape,
  rectangle,
} from "../../support/create-project.ts";

/** The frame turns bearings by its convergence at the block's centre; a rectangle 40 m off the origin is square to within this. */
const nearly_m = 1e-3;

function plan(rows: Partial<RowSettings> = {}, change: Partial<Project> = {}): Plan {
  const result = createPlanner().plan(createProject({ blocks: [createBlock(rows)], ...change }));
  expect(validatePlan(result)).toEqual([]);
  return result;
}

function rowsOf(result: Plan): readonly Row[] {
  return result.rows?.rows ?? [];
}

/** x of the rows' starts, in their order. */
function across(result: Plan): readonly number[] {
  return rowsOf(result).map((row) => row.start[0]);
}

function stations(result: Plan, kind: "vines" | "linePosts", row = 0): readonly number[] {
  const positions = result.rows?.[kind];
  return [...(positions?.station_m.slice(positions.offsets[row], positions.offsets[row + 1]) ?? [])];
}

function codes(result: Plan): readonly string[] {
  return result.findings.map((finding) => finding.code).filter((code) => code.startsWith("rows/"));
}

describe("rows on a rectangle 60 m wide and 120 m deep, 3 m setback, 8 m headland", () => {
  it("are centred: floor(54 / 2.5) + 1 = 22 of them, the leftover on both sides", () => {
    const result = plan();
    expect(rowsOf(result)).toHaveLength(22);
    expect(across(result)[0]).toBeCloseTo(3 + (54 - 21 * 2.5) / 2, 3);
    expect(across(result).at(-1)).toBeCloseTo(57 - (54 - 21 * 2.5) / 2, 3);
  });

  it("reach to the last millimetre when asked", () => {
    for (const row of rowsOf(plan({ rowEnd: "all" }))) expect(Math.abs(row.length_m - 104)).toBeLessThan(nearly_m);
  });

  it("end at whole vine spacings by default: 1 + 51 x 2 + 1 m of 104", () => {
    const result = plan({ vineSpacing_m: 2.5 });
    for (const row of rowsOf(result)) {
      expect(row.length_m).toBeCloseTo(2 + 40 * 2.5, 9);
      expect(row.vines).toBe(41);
      expect(row.startLeftover_m).toBeCloseTo(1, 2);
      expect(row.endLeftover_m).toBeCloseTo(1, 2);
    }
  });

  it("give up the leftover at the end they are trimmed at", () => {
    const row = rowsOf(plan({ vineSpacing_m: 2.5, trim: "end" }))[0];
    expect(row?.startLeftover_m).toBeCloseTo(0, 9);
    expect(row?.endLeftover_m).toBeCloseTo(2, 2);
  });

  it("end at whole bays when asked: 40 vines are 10 bays of 4", () => {
    const row = rowsOf(plan({ vineSpacing_m: 2.5, rowEnd: "bays" }))[0];
    expect(row?.vines).toBe(40);
    expect(row?.linePosts).toBe(9);
  });

  it("start on the left at the near end, so that standing there the other rows are on the right", () => {
    const [first] = rowsOf(plan());
    expect(first?.start[0]).toBeLessThan(30);
    expect(first?.start[1]).toBeLessThan(Number(first?.end[1]));
  });

  it("start on the right at the far end when numbering begins there", () => {
    const [first] = rowsOf(plan({ firstSide: "right" }));
    expect(first?.id).toBe("1");
    expect(first?.start[0]).toBeGreaterThan(30);
    expect(first?.start[1]).toBeGreaterThan(Number(first?.end[1]));
  });

  it("sit at a distance from the first side when asked", () => {
    expect(across(plan({ rowOne: { kind: "from-side", distance_m: 4 } }))[0]).toBeCloseTo(4, 2);
    const right = across(plan({ rowOne: { kind: "from-side", distance_m: 4 }, firstSide: "right" }));
    expect(right[0]).toBeCloseTo(56, 2);
  });

  it("pass through a given point when asked", () => {
    const result = across(plan({ rowOne: { kind: "through", point: at([31.1, 50]) } }));
    expect(result.some((x) => Math.abs(x - 31.1) < nearly_m)).toBe(true);
  });

  it("hold the most row when asked: as many rows as the centred ones", () => {
    expect(rowsOf(plan({ rowOne: { kind: "most-row" } }))).toHaveLength(22);
  });

  it("hold the most row when asked, also where only one position holds a row more", () => {
    const exact = { rowSpacing_m: 54 / 27 - 1e-5 } as const;
    expect(rowsOf(plan(exact))).toHaveLength(28);
    expect(rowsOf(plan({ ...exact, rowOne: { kind: "most-row" } }))).toHaveLength(28);
  });

  it("know which edge cut them", () => {
    const [row] = rowsOf(plan());
    expect([row?.startCut, row?.endCut]).toEqual([
      { kind: "edge", feature: "parcel", edge: 1, name: null },
      { kind: "edge", feature: "parcel", edge: 3, name: null },
    ]);
  });

  it("are shorter by the anchors when distances count to the anchor", () => {
    const row = rowsOf(plan({ rowEnd: "all", distancesTo: "anchor", anchorOut_m: 1.5 }))[0];
    expect(Math.abs(Number(row?.length_m) - 101)).toBeLessThan(nearly_m);
  });

  it("are numbered from the west a hair either side of north, and from the north a hair either side of east", () => {
    for (const bearing_deg of [179.999, 0, 0.001]) {
      expect(across(plan({ bearing: { kind: "given", bearing_deg } }))[0]).toBeLessThan(30);
    }
    for (const bearing_deg of [89.999, 90, 90.001]) {
      expect(rowsOf(plan({ bearing: { kind: "given", bearing_deg } }))[0]?.start[1]).toBeGreaterThan(60);
    }
  });

  it("run the same lines at bearing 30 and 210", () => {
    const turned = (bearing_deg: number) => rowsOf(plan({ bearing: { kind: "given", bearing_deg } }));
    expect(turned(210)).toEqual(turned(30));
  });

  it("take their bearing from the longest edge", () => {
    const block = plan({ bearing: { kind: "edge", edge: "longest" } }).rows?.blocks[0];
    expect(block?.gridBearing_deg).toBeCloseTo(0, 6);
  });

  it("take their bearing from the longest edge wherever the outline begins", () => {
    const corners = [
      [0, 0],
      [30, 0],
      [60, 0],
      [60, 50],
      [0, 50],
    ] as const;
    for (let first = 0; first < corners.length; first++) {
      const ring = [...corners.slice(first), ...corners.slice(0, first)];
      const result = plan({ bearing: { kind: "edge", edge: "longest" } }, { parcels: [createParcel([ring])] });
      expect(result.rows?.blocks[0]?.gridBearing_deg).toBeCloseTo(90, 6);
    }
  });

  it("take the longest part of a drawn edge that bends", () => {
    const edges = [
      { key: "road", line: [at([0, 0]), at([60, 0]), at([60, 120])], setback_m: null, tapedLength_m: null, name: null },
    ];
    const block = plan({ bearing: { kind: "edge", edge: "road" } }, { edges }).rows?.blocks[0];
    expect(Math.sin((Number(block?.gridBearing_deg) * Math.PI) / 180)).toBeCloseTo(0, 6);
  });

  it("take their bearing from a drawn edge, and say when it is not there", () => {
    const edges = [{ key: "road", line: [at([0, 0]), at([60, 0])], setback_m: null, tapedLength_m: null, name: null }];
    const byRoad = plan({ bearing: { kind: "edge", edge: "road" } }, { edges });
    expect(byRoad.rows?.blocks[0]?.gridBearing_deg).toBeCloseTo(90, 6);
    expect(codes(plan({ bearing: { kind: "edge", edge: "rail" } }, { edges }))).toContain("rows/bearing-edge-missing");
  });

  it("take the best bearing of the sweep, along the long side here", () => {
    const block = plan({ bearing: { kind: "best" } }).rows?.blocks[0];
    expect(block?.bearing_deg).toBe(0);
  });

  it("keep out of locked bearings, and say when all are locked", () => {
    const lockedBearings = [{ from_deg: 170, to_deg: 10 }];
    expect(plan({ bearing: { kind: "best" }, lockedBearings }).rows?.blocks[0]?.bearing_deg).toBeGreaterThan(10);
    const all = plan({ bearing: { kind: "best" }, lockedBearings: [{ from_deg: 0, to_deg: 180 }] });
    expect(codes(all)).toContain("rows/all-bearings-locked");
  });

  it("is one in a strip that is only just wide enough", () => {
    expect(rowsOf(plan({}, { parcels: [createParcel([rectangle(6.1, 120)])] }))).toHaveLength(1);
  });

  it("are none in ground that is too narrow, and the plan says so", () => {
    const result = plan({}, { parcels: [createParcel([rectangle(60, 30)])] });
    expect(rowsOf(result)).toEqual([]);
    expect(codes(result)).toEqual(["rows/none"]);
  });
});

describe("a row and an obstacle", () => {
  const oak = createKeepOut({ points: [[30, 60]] }, { distance_m: 5 });

  it("a row split by an oak becomes 14a and 14b, each with two ends of its own", () => {
    const result = plan({}, { keepOuts: [oak] });
    const split = rowsOf(result).filter((row) => /[ab]$/.test(row.id));
    expect(split.map((row) => row.id)).toEqual(["10a", "10b", "11a", "11b", "12a", "12b", "13a", "13b"]);
    expect(split[0]?.endCut).toEqual({ kind: "obstacle", feature: "oak", edge: null, name: "oak" });
    expect(split[1]?.startCut?.feature).toBe("oak");
  });

  it("runs past a rock with its wires, and vines in the gap are skipped", () => {
    const rock = createKeepOut({ points: [[30, 60]] }, { key: "rock", distance_m: 2, wiresPass: true });
    const result = plan({ rowOne: { kind: "through", point: at([30, 60]) } }, { keepOuts: [rock] });
    const whole = plan({ rowOne: { kind: "through", point: at([30, 60]) } });
    const nearest = rowsOf(result).findIndex((row) => Math.abs(row.start[0] - 30) < nearly_m);
    expect(rowsOf(result).map((row) => row.id)).toEqual(rowsOf(whole).map((row) => row.id));
    expect(rowsOf(result)[nearest]?.vines).toBe(Number(rowsOf(whole)[nearest]?.vines) - 2);
    expect(rowsOf(result)[nearest]?.length_m).toBe(rowsOf(whole)[nearest]?.length_m);
  });

  it("never has an end post in a gap: the row ends beyond it instead", () => {
    for (const rowEnd of ["all", "vines", "bays"] as const) {
      for (let y = 8; y < 14; y += 0.31) {
        const rock = createKeepOut({ points: [[30.2, y]] }, { key: "rock", distance_m: 1, wiresPass: true });
        const result = plan({ rowEnd, rowOne: { kind: "through", point: at([30, 60]) } }, { keepOuts: [rock] });
        const { rows } = result.rows ?? { rows: [] };
        for (const { start, end } of rows) {
          for (const post of [start, end]) expect(Math.hypot(post[0] - 30.2, post[1] - y)).toBeGreaterThan(1 - 1e-6);
        }
      }
    }
  });

  it("ends at a rock that is too wide to carry wires past", () => {
    const rock = createKeepOut(
      { points: [[30, 60]] },
      { key: "rock", distance_m: 2, wiresPass: true, largestGap_m: 3 },
    );
    const result = plan({ rowOne: { kind: "through", point: at([30, 60]) } }, { keepOuts: [rock] });
    expect(rowsOf(result).filter((row) => row.id.endsWith("a"))).toHaveLength(1);
  });

  it("keeps out of a closed area even without a distance", () => {
    const pond = createKeepOut({ areas: [[rectangle(20, 20, [20, 50])]] }, { key: "pond", distance_m: 0 });
    const split = rowsOf(plan({ rowEnd: "all" }, { keepOuts: [pond] })).filter((row) => row.id.endsWith("a"));
    expect(split).toHaveLength(8);
    for (const row of split) expect(row.end[1]).toBeCloseTo(50, 2);
  });

  it("is broken by a cross alley, which stays open over its whole width", () => {
    const alley = {
      key: "alley",
      name: "alley",
      shape: createShape({
        lines: [
          [
            [-5, 60],
            [65, 60],
          ],
        ],
      }),
      width_m: 6,
    };
    const rows = rowsOf(plan({ rowEnd: "all" }, { crossAlleys: [alley] }));
    expect(rows).toHaveLength(44);
    expect(Number(rows[1]?.start[1]) - Number(rows[0]?.end[1])).toBeCloseTo(6, 6);
  });
});

describe("short pieces", () => {
  // The oak stands near the south end, so that the pieces south of it are 7 m and 8 m long.
  const oak = createKeepOut({ points: [[30, 20]] }, { distance_m: 5 });

  it("are left out and said", () => {
    const result = plan({}, { keepOuts: [oak] });
    expect(rowsOf(result)).toHaveLength(22);
    expect(codes(result)).toEqual(["rows/short-pieces"]);
    expect(result.rows?.blocks[0]?.shortPieces).toBe(4);
  });

  it("are kept where somebody marked a place", () => {
    const result = plan({}, { keepOuts: [oak], keptPlaces: [{ key: "keep", at: at([29, 11]) }] });
    expect(rowsOf(result)).toHaveLength(23);
    expect(result.rows?.blocks[0]?.shortPieces).toBe(3);
  });

  it("may be judged by their vines", () => {
    const three = plan({ minRow: { kind: "vines", vines: 3 } }, { keepOuts: [oak] });
    expect(rowsOf(three)).toHaveLength(26);
    expect(rowsOf(plan({ minRow: { kind: "vines", vines: 10 } }, { keepOuts: [oak] }))).toHaveLength(22);
  });

  it("judged by their vines are judged as they are laid", () => {
    const corner = {
      parcels: [
        createParcel([
          [
            [0, 0],
            [120, 0],
            [0, 90],
          ],
        ]),
      ],
    };
    for (const change of [{ rowEnd: "bays" }, { vines: "aligned" }] as const) {
      const rows = rowsOf(plan({ ...change, minRow: { kind: "vines", vines: 10 } }, corner));
      expect(Math.min(...rows.map((row) => row.vines))).toBeGreaterThanOrEqual(10);
    }
  });
});

describe("vines and posts along a row", () => {
  it("vines begin at the end gap, posts stand half-way between two vines in bays of four", () => {
    const result = plan({ vineSpacing_m: 2.5 });
    expect(stations(result, "vines").slice(0, 3)).toEqual([1, 3.5, 6]);
    for (const post of stations(result, "linePosts")) expect(((post - 1) / 2.5) % 1).toBeCloseTo(0.5, 9);
  });

  it("bays in the middle are whole; what is missing makes the end bays shorter, never longer", () => {
    const result = plan({ vineSpacing_m: 2.5 });
    const posts = stations(result, "linePosts");
    const vines = stations(result, "vines");
    const inBays = [...posts, Infinity].map(
      (post, i) => vines.filter((vine) => vine < post && vine > (posts[i - 1] ?? -1)).length,
    );
    expect(inBays.reduce((sum, count) => sum + count, 0)).toBe(41);
    expect(inBays.slice(1, -1).every((count) => count === 4)).toBe(true);
    expect(Math.max(...inBays)).toBe(4);
  });

  it("aligned vines of neighbouring rows stand abreast", () => {
    const slanted = createParcel([
      [
        [0, 0],
        [60, 20],
        [60, 120],
        [0, 120],
      ],
    ]);
    const result = plan({ vines: "aligned", vineSpacing_m: 2.5 }, { parcels: [slanted] });
    const { vines } = result.rows ?? { vines: null };
    const first = Number(vines?.xy[1]);
    expect(
      Math.max(
        ...[...(vines?.xy ?? [])]
          .filter((_, i) => i % 2 === 1)
          .map((y) => Math.abs((y - first) / 2.5 - Math.round((y - first) / 2.5))),
      ),
    ).toBeLessThan(1e-3);
  });

  it("equal bays are as many as come nearest to the bay asked for", () => {
    const posts = stations(plan({ bays: "equal", rowEnd: "all" }), "linePosts");
    expect(posts).toHaveLength(Math.round(104 / 8) - 1);
    expect(Number(posts[1]) - Number(posts[0])).toBeCloseTo(104 / 13, 4);
  });

  it("a line post that would stand in a gap moves beside it", () => {
    const through = { rowOne: { kind: "through", point: at([30, 60]) } } as const;
    const rock = createKeepOut({ points: [[30, 60]] }, { key: "rock", distance_m: 2.5, wiresPass: true });
    const result = plan(through, { keepOuts: [rock] });
    const row = rowsOf(result).findIndex(({ start }) => Math.abs(start[0] - 30) < nearly_m);
    const from = Number(rowsOf(result)[row]?.start[1]);
    expect(stations(result, "linePosts", row).filter((post) => Math.abs(from + post - 60) < 2.5)).toEqual([]);
    expect(stations(result, "linePosts", row).length).toBe(stations(plan(through), "linePosts", row).length);
  });
});

describe("rows that stand already", () => {
  const standing = (change: Partial<GivenRow>): GivenRow => ({
    key: "old",
    block: null,
    row: null,
    ends: null,
    tapedLength_m: null,
    ...change,
  });
  const posts = [at([20.3, 10]), at([20.1, 100])] as const;

  it("replace the computed row they lie on, with its number", () => {
    const before = rowsOf(plan());
    const result = plan({}, { givenRows: [standing({ ends: posts })] });
    const row = rowsOf(result).find((one) => one.given === "old");
    expect(rowsOf(result)).toHaveLength(before.length);
    expect(row?.length_m).toBeCloseTo(Math.hypot(0.2, 90), 6);
    // Lines lie at 3.75 + 2.5 n; the posts are at 20.2, nearest to 21.25, the eighth.
    expect(row?.id).toBe("8");
    expect(row?.startCut).toBeNull();
  });

  it("are as long as the tape says", () => {
    const result = plan({}, { givenRows: [standing({ ends: posts, tapedLength_m: 90.35 })] });
    expect(rowsOf(result).find((one) => one.given === "old")?.length_m).toBe(90.35);
    expect(codes(result)).toEqual([]);
  });

  it("are spoken of when tape and map differ", () => {
    expect(codes(plan({}, { givenRows: [standing({ ends: posts, tapedLength_m: 80 })] }))).toEqual([
      "rows/tape-differs",
    ]);
  });

  it("may be a taped length for a number", () => {
    const result = plan({}, { givenRows: [standing({ row: "3", tapedLength_m: 91.35 })] });
    const row = rowsOf(result).find((one) => one.id === "3");
    expect(row?.length_m).toBe(91.35);
    expect(
      Math.hypot(Number(row?.end[0]) - Number(row?.start[0]), Number(row?.end[1]) - Number(row?.start[1])),
    ).toBeCloseTo(91.35, 6);
  });

  it("are spoken of when a length by number is far from the map", () => {
    const result = plan({}, { givenRows: [standing({ row: "3", tapedLength_m: 500 })] });
    expect(codes(result)).toEqual(["rows/tape-differs"]);
    expect(rowsOf(result).find((row) => row.id === "3")?.endCut).toBeNull();
  });

  it("are spoken of when one row is given twice", () => {
    const twice = [91.35, 91.4].map((tapedLength_m, i) => standing({ key: `tape ${i}`, row: "3", tapedLength_m }));
    const planned = { vineSpacing_m: 2.5, headland_m: 14 };
    expect(codes(plan(planned, { givenRows: twice }))).toEqual(["rows/given-twice"]);
  });

  it("are spoken of when there is no such number", () => {
    expect(codes(plan({}, { givenRows: [standing({ row: "99", tapedLength_m: 91 })] }))).toEqual([
      "rows/given-row-unknown",
    ]);
  });

  it("share a number when two of them stand one behind the other on one line", () => {
    const south = standing({ key: "south", row: "8a", ends: [at([20.2, 10]), at([20.2, 50])] });
    const north = standing({ key: "north", row: "8b", ends: [at([20.2, 60]), at([20.2, 100])] });
    for (const givenRows of [
      [south, north],
      [north, south],
    ]) {
      const result = plan({}, { givenRows });
      expect(rowsOf(result)).toHaveLength(23);
      expect(rowsOf(result).filter((row) => row.given !== null)).toMatchObject([
        { id: "8a", given: "south" },
        { id: "8b", given: "north" },
      ]);
      expect(codes(result)).toEqual([]);
    }
  });

  it("are spoken of when they stand where the plan has another number", () => {
    expect(codes(plan({}, { givenRows: [standing({ row: "2", ends: posts })] }))).toEqual(["rows/given-row-elsewhere"]);
  });

  it("are added where no computed row is", () => {
    const outside = [at([-3, 10]), at([-3, 60])] as const;
    const result = plan({}, { givenRows: [standing({ ends: outside })] });
    expect(rowsOf(result)).toHaveLength(23);
    expect(rowsOf(result)[0]?.given).toBe("old");
    expect(codes(result)).toEqual(["rows/given-row-outside"]);
  });
});

describe("several blocks", () => {
  it("number their rows each from 1 and carry the block in the id", () => {
    const blockAreas = [{ key: "a", block: "south", polygons: [[rectangle(60, 50).map((point) => at(point))]] }];
    const blocks = [
      createBlock({}, { id: "south" }),
      createBlock({ bearing: { kind: "given", bearing_deg: 90 } }, { id: "north" }),
    ];
    const result = plan({}, { blocks, blockAreas });
    expect(rowsOf(result)[0]?.id).toBe("south-1");
    expect(rowsOf(result).find((row) => row.block === "north")?.id).toBe("north-1");
    expect(result.rows?.blocks.map((block) => block.count)).toEqual([22, Math.floor((117 - 51.25) / 2.5) + 1]);
  });
});
