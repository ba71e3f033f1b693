import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PipeLine } from "../../../src/core/drip/watering.ts";
import { pipeSizes } from "../../../src/core/hydraulics/pipe-sizes.ts";
import { legLengths_m, type Route } from "../../../src/core/mainline/route.ts";
import type { PipeSettings } from "../../../src/core/project/project.ts";
import { depthAccount, pipeVolumeAccount, widthAccount } from "../../../src/core/trench/earth-accounts.ts";
import { laidAccount, sticksAccount, thrustAccount, trappedAccount } from "../../../src/core/trench/line-accounts.ts";
import { markInWords } from "../../../src/core/trench/mark-in-words.ts";
import { pipesAlong } from "../../../src/core/trench/pipes-along.ts";
import { trenchMarks } from "../../../src/core/trench/trench-marks.ts";
import { abreast_m } from "../../../src/core/trench/trench-width.ts";
import { text } from "../../../src/core/units.ts";
import { createRoute } from "../../support/create-route.ts";
import { createRows } from "../../support/create-rows.ts";
import { createTrench } from "../../support/create-trench.ts";

function pipeOf(size: string): PipeSettings {
  const known = pipeSizes.find((each) => each.size === size);
  if (known === undefined) throw new Error(`no pipe ${size}`);
  const { outside_mm, inside_mm, stick_m, joint } = known;
  return { size, outside_mm, inside_mm, stick_m, joint };
}

const [wide, middle, narrow] = [pipeOf("pvc-pn10-63mm"), pipeOf("pvc-pn10-50mm"), pipeOf("pvc-pn10-32mm")];
const rows = createRows(...Array.from({ length: 5 }, () => ({ length_m: 60, vines: 30 })));

/** Past five rows 3 m apart: point 0 is the source, point i + 1 the tee of row i. */
const straight = createRoute(
  [{ x: -10, y: -2.5 }, ...Array.from({ length: 5 }, (_, row) => ({ x: 3 * row, y: -2.5, row }))],
  5,
);

/** A pipe along legs that follow each other, with tees at those of its points that are told. */
function pipeLine(route: Route, line: number, pipe: PipeSettings, points: readonly number[], tees = points): PipeLine {
  const legs_m = legLengths_m(route);
  return { line, pipe, points, tees, length_m: points.reduce((sum_m, point) => sum_m + Number(legs_m[point]), 0) };
}

function counts(sketch: Parameters<typeof createTrench>[0]): Record<string, number> {
  const { parts } = createTrench({ rows, route: straight, ...sketch }).dug;
  return Object.fromEntries(parts.map(({ article, quantity }) => [article, quantity]));
}

const tapering = [
  pipeLine(straight, 0, wide, [1, 2]),
  pipeLine(straight, 0, middle, [3, 4]),
  pipeLine(straight, 0, narrow, [5]),
];

describe("a line that gets narrower on its way", () => {
  const { dug, project, main } = createTrench({ rows, route: straight, pipes: tapering });
  const parts = Object.fromEntries(dug.parts.map(({ article, quantity }) => [article, quantity]));

  test("counted by hand: sticks of each size, a reducer at each change, tees and cap by the pipe they are on", () => {
    // 13 m of 63 mm, 6 m of 50 mm, 3 m of 32 mm; sticks of 6 m.
    expect(parts).toMatchObject({
      "main-pipe-pvc-pn10-63mm": 3,
      "main-pipe-pvc-pn10-50mm": 1,
      "main-pipe-pvc-pn10-32mm": 1,
      "reducer-pvc-pn10-63mm-pvc-pn10-50mm": 1,
      "reducer-pvc-pn10-50mm-pvc-pn10-32mm": 1,
      "row-tee-pvc-pn10-63mm": 2,
      "row-tee-pvc-pn10-50mm": 2,
      "row-tee-pvc-pn10-32mm": 1,
      "main-valve-pvc-pn10-63mm": 1,
      "pipe-cap-pvc-pn10-32mm": 1,
      "valve-tee-pvc-pn10-32mm": 1,
    });
    expect(Object.keys(parts).some((article) => article.startsWith("branch-tee"))).toBe(false);
  });

  test("twenty-one joints: 2 between sticks, 2 a row tee, 2 a reducer, 2 of each valve and valve tee, 1 of the cap", () => {
    expect(dug.parts.find(({ kind }) => kind === "cement")?.purpose).toMatch(/^for 21 joints;/);
  });

  test("the trench is as deep and as wide as its thickest pipe wants it", () => {
    expect(dug.thickest_mm).toBe(63);
    expect(dug.abreast_mm).toEqual([63]);
    expect(dug.earth.deepest_m).toBeCloseTo(project.trench.cover_m + 0.063, 9);
    expect(
      createTrench({ rows, route: straight, pipes: tapering, trench: { tool: "hand" } }).dug.earth.width_m,
    ).toBeCloseTo(0.363, 9);
  });

  test("what lies where is told from station to station, on the way and in words", () => {
    expect(
      pipesAlong(dug, 0).map(({ from_m, to_m, pipes }) => [from_m, to_m, pipes.map(({ pipe }) => pipe.size)]),
    ).toEqual([
      [0, 13, ["pvc-pn10-63mm"]],
      [13, 19, ["pvc-pn10-50mm"]],
      [19, 22, ["pvc-pn10-32mm"]],
    ]);
    const told = (trenchMarks(dug, main, rows.rows)[0] ?? []).filter(({ kind }) => kind === "pipes");
    expect(told.map((mark) => text(markInWords(mark), "metric"))).toEqual([
      "from here on PVC 10 bar, 63 mm",
      "from here on PVC 10 bar, 50 mm",
      "from here on PVC 10 bar, 32 mm",
    ]);
  });

  test("every number of it comes about as its account says", () => {
    const settings = project.trench;
    expect(widthAccount(dug, settings).value).toBeCloseTo(dug.earth.width_m, 9);
    expect(depthAccount(dug, settings).value).toBeCloseTo(dug.earth.deepest_m, 9);
    expect(pipeVolumeAccount(dug).value).toBeCloseTo(dug.earth.pipe_m3, 12);
    for (const pipe of [wide, middle, narrow]) {
      expect(sticksAccount(dug, pipe).value).toBe(parts[`main-pipe-${pipe.size}`]);
      const laid_m = dug.pipes.find((laid) => laid.pipe.size === pipe.size)?.length_m;
      expect(laidAccount(dug, pipe).value).toBeCloseTo(laid_m ?? Number.NaN, 9);
    }
    for (const thrust of dug.thrusts) expect(thrustAccount(thrust, settings).value).toBeCloseTo(thrust.force_n, 6);
  });
});

describe("a valve and a line of its own for each set", () => {
  /** The main to row 1's tee feeds both sets: the first goes on from its end, the second runs on beside nothing. */
  const pipes = [
    pipeLine(straight, 0, wide, [1, 2], []),
    pipeLine(straight, 1, narrow, [3], [3]),
    pipeLine(straight, 2, narrow, [3, 4, 5], [4, 5]),
  ];
  const { dug, main } = createTrench({ rows, route: straight, pipes });
  const parts = Object.fromEntries(dug.parts.map(({ article, quantity }) => [article, quantity]));

  test("where the main ends one line goes straight on and the others leave by a tee", () => {
    expect(parts["branch-tee-pvc-pn10-63mm"]).toBe(1);
    expect(parts["reducer-pvc-pn10-63mm-pvc-pn10-32mm"]).toBe(2);
    expect(parts["pipe-cap-pvc-pn10-32mm"]).toBe(2);
    expect(parts["pipe-cap-pvc-pn10-63mm"]).toBeUndefined();
    // The second leaves by its tee and turns to lie beside the first.
    expect(parts["elbow-90-pvc-pn10-32mm"]).toBe(1);
  });

  test("each line is cut by itself, and gets its own air at its far end", () => {
    expect(dug.pipes.map(({ line, length_m, sticks }) => [line, Math.round(length_m), sticks])).toEqual([
      [0, 13, 3],
      [1, 3, 1],
      [2, 9, 2],
    ]);
    expect(parts["air-valve"]).toBe(2);
  });

  test("rows are tapped off the line that waters them", () => {
    // Rows 1 and 2 have no set: they are on the main.
    expect(parts["row-tee-pvc-pn10-63mm"]).toBe(2);
    expect(parts["row-tee-pvc-pn10-32mm"]).toBe(3);
  });

  test("the valves of the sets are met where their lines begin, and pipes side by side are told with their sets", () => {
    const marks = trenchMarks(dug, main, rows.rows)[0] ?? [];
    expect(marks.flatMap((mark) => (mark.kind === "valve" ? [[mark.set, mark.station_m]] : []))).toEqual([
      [1, 13],
      [2, 13],
    ]);
    const told = marks.flatMap((mark) => (mark.kind === "pipes" ? [text(markInWords(mark), "metric")] : []));
    expect(told[1]).toBe("from here on PVC 10 bar, 32 mm (set 1) beside PVC 10 bar, 32 mm (set 2)");
  });
});

describe("valves at the source with parallel pipes", () => {
  const pipes = [
    pipeLine(straight, 1, middle, [1, 2], [1, 2]),
    pipeLine(straight, 2, middle, [1, 2, 3], [3]),
    pipeLine(straight, 3, narrow, [1, 2, 3, 4, 5], [4, 5]),
  ];

  test("they lie side by side with 50 mm between, common practice, no source, and the trench is as wide as they take", () => {
    const { dug, findings } = createTrench({ rows, route: straight, pipes, trench: { tool: "hand" } });
    expect(abreast_m([50, 50, 32])).toBeCloseTo(0.132 + 0.1, 12);
    expect(dug.earth.width_m).toBeCloseTo(0.232 + 0.3, 9);
    expect(widthAccount(dug, { width_m: null, tool: "hand" }).value).toBeCloseTo(dug.earth.width_m, 9);
    expect(findings.map(({ code }) => code)).not.toContain("trench/too-narrow");
    const tight = createTrench({ rows, route: straight, pipes, trench: { tool: "hand", width_m: 0.4 } });
    const told = tight.findings.find(({ code }) => code === "trench/too-narrow");
    expect(text(told?.message ?? [], "metric")).toMatch(/3 pipes side by side/);
  });

  test("the pipes of three sets part at the source: two tees, three caps, three air valves, one main valve", () => {
    expect(counts({ pipes })).toMatchObject({
      "branch-tee-pvc-pn10-50mm": 2,
      "main-valve-pvc-pn10-50mm": 1,
      "reducer-pvc-pn10-50mm-pvc-pn10-32mm": 1,
      "pipe-cap-pvc-pn10-50mm": 2,
      "pipe-cap-pvc-pn10-32mm": 1,
      "air-valve": 3,
      "row-tee-pvc-pn10-50mm": 3,
      "row-tee-pvc-pn10-32mm": 2,
    });
  });

  test("each pipe gets a drain of its own where all dip, and one where it ends on the way down", () => {
    const falling = [
      [-40, -60, 10],
      [60, -60, 5],
      [60, 60, 5],
      [-40, 60, 10],
    ] as const;
    const { dug } = createTrench({ rows, route: straight, pipes, heights: falling });
    expect(dug.lows.map(({ station_m, fitted }) => [Math.round(station_m), fitted])).toEqual([
      [13, 1],
      [16, 1],
      [22, 1],
    ]);
    // Open, the trench runs on past the ends of the first two.
    expect(dug.lows.map(({ pond_m }) => pond_m > 0)).toEqual([false, false, true]);
    expect(dug.parts.find(({ kind }) => kind === "drain-valve")?.quantity).toBe(3);
    expect(dug.parts.some(({ kind }) => kind === "pipe-cap")).toBe(false);
    const hollow = [
      [-40, -60, 10],
      [-5, -60, 5],
      [60, -60, 10],
      [60, 60, 10],
      [-5, 60, 5],
      [-40, 60, 10],
    ] as const;
    const sagging = createTrench({ rows, route: straight, pipes, heights: hollow }).dug;
    const [deep] = sagging.lows.filter(({ isFitted }) => isFitted);
    expect(deep?.fitted).toBe(3);
    for (const low of sagging.lows) expect(trappedAccount(low).value).toBeCloseTo(low.trapped_l, 9);
  });
});

test("water that stays in a hollow is that of the bores that lie in it", () => {
  const hollow = [
    [-40, -60, 10],
    [3, -60, 5],
    [60, -60, 10],
    [60, 60, 10],
    [3, 60, 5],
    [-40, 60, 10],
  ] as const;
  const held_l = (pipes: readonly PipeLine[]) =>
    createTrench({ rows, route: straight, pipes, heights: hollow }).dug.lows.reduce(
      (sum_l, { trapped_l }) => sum_l + trapped_l,
      0,
    );
  const all = (pipe: PipeSettings) => held_l([pipeLine(straight, 0, pipe, [1, 2, 3, 4, 5])]);
  expect(held_l(tapering)).toBeGreaterThan(all(narrow));
  expect(held_l(tapering)).toBeLessThan(all(wide));
  expect(all(wide) / all(narrow)).toBeCloseTo((wide.inside_mm / narrow.inside_mm) ** 2, 9);
});

test("a gasketed pipe is blocked where it is pushed, a cemented one beside it is not", () => {
  const gasketed = pipeOf("pvc-pn10-90mm");
  const { dug, findings } = createTrench({
    rows,
    route: straight,
    pipes: [pipeLine(straight, 0, gasketed, [1, 2]), pipeLine(straight, 0, middle, [3, 4, 5])],
  });
  // The valve is blocked; the end is of cemented pipe.
  expect(dug.thrusts.filter(({ isBlocked }) => isBlocked).map(({ at }) => at)).toEqual(["valve"]);
  expect(dug.parts.find(({ kind }) => kind === "thrust-block")?.quantity).toBe(1);
  const codes = findings.map(({ code }) => code);
  expect(codes).toContain("trench/thrust-blocks");
  expect(codes).toContain("trench/solvent-cement");
});

test("a branch that no set needs goes on with the pipe before it", () => {
  const forked = createRoute(
    [
      { x: -10, y: -2.5 },
      ...Array.from({ length: 5 }, (_, row) => ({ x: 3 * row, y: -2.5, row })),
      { x: 3, y: -20, upstream: 2 },
    ],
    5,
  );
  const { dug } = createTrench({ rows, route: forked, pipes: [pipeLine(forked, 0, middle, [1, 2, 3, 4, 5])] });
  expect(dug.pipes.map(({ pipe, length_m }) => [pipe.size, Math.round(length_m)])).toEqual([
    ["pvc-pn10-50mm", 31],
    ["pvc-pn10-50mm", 9],
  ]);
});

test("chosen pipes of the one size that is set give the same trench, list and earth", () => {
  const usual = createTrench({ rows, route: straight });
  const pipes = [pipeLine(straight, 0, usual.project.trench.pipe, [1, 2, 3, 4, 5])];
  const chosen = createTrench({ rows, route: straight, pipes });
  expect({ ...chosen.dug, isSized: false }).toEqual(usual.dug);
  expect(chosen.findings).toEqual(usual.findings);
});

/** Trees of a route with some lines over them, every line a connected part that begins at the source or on line 0. */
const laid = fc
  .tuple(
    fc.array(fc.tuple(fc.nat({ max: 30 }), fc.integer({ min: -20, max: 20 })), { minLength: 2, maxLength: 14 }),
    fc.array(fc.tuple(fc.nat({ max: 30 }), fc.constantFrom(wide, middle, narrow)), { maxLength: 4 }),
  )
  .map(([nodes, ends]) => {
    const route = createRoute(
      nodes.map(([hang, y], i) => ({
        x: i * 9,
        y,
        upstream: i === 0 ? -1 : hang % i,
        row: i > 0 && i < 6 ? i - 1 : -1,
      })),
      5,
    );
    const way = (to: number): number[] => (to <= 0 ? [] : [...way(Number(route.upstream[to])), to]);
    const pipes = ends.flatMap(([end, pipe], i) => {
      const points = way(end % nodes.length);
      return points.length === 0 ? [] : [pipeLine(route, i + 1, pipe, points)];
    });
    return { route, pipes };
  });

test("whatever lies in it, all pipe that is chosen is laid, as many runs end as begin, and nothing is bought short", () => {
  fc.assert(
    fc.property(laid, ({ route, pipes }) => {
      const { dug } = createTrench({ rows, route, pipes });
      for (const { line, pipe, length_m } of pipes) {
        const laid_m = dug.pipes
          .filter((each) => each.line === line && each.pipe.size === pipe.size)
          .reduce((sum_m, each) => sum_m + each.length_m, 0);
        expect(laid_m).toBeGreaterThanOrEqual(length_m - 1e-6);
      }
      for (const { pipe, sticks, length_m, waste_m } of dug.pipes) {
        expect(sticks * pipe.stick_m).toBeCloseTo(length_m + waste_m, 6);
        expect(waste_m).toBeGreaterThanOrEqual(-1e-9);
      }
      const spans_m = dug.profiles.reduce((sum_m, { station_m }) => sum_m + (station_m.at(-1) ?? 0), 0);
      const laid_m = dug.pipes.reduce(
        (sum_m, { spans }) => spans.reduce((own_m, { from_m, to_m }) => own_m + to_m - from_m, sum_m),
        0,
      );
      expect(laid_m).toBeGreaterThanOrEqual(spans_m - 1e-6);
      expect(dug.earth.backfill_m3 + dug.earth.pipe_m3 + dug.earth.bedding_m3).toBeCloseTo(dug.earth.cut_m3, 9);
      expect(pipeVolumeAccount(dug).value).toBeCloseTo(dug.earth.pipe_m3, 9);
      const many = (kind: string) =>
        dug.parts.filter((part) => part.kind === kind).reduce((sum, { quantity }) => sum + quantity, 0);
      const ends = dug.thrusts.filter(({ at }) => at === "end").reduce((sum, { count }) => sum + count, 0);
      // Every tee makes one end more; one more is there to begin with.
      expect(ends).toBe(many("branch-tee") + 1);
      expect(many("row-tee")).toBe([...route.row].filter((row) => row >= 0).length);
    }),
    { seed: 77, numRuns: 60 },
  );
});
