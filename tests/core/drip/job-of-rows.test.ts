import fc from "fast-check";
import { expect, test } from "vitest";
import { drip as dripOf } from "../../../src/core/drip/drip.ts";
import { wateringJob } from "../../../src/core/drip/job-of-rows.ts";
import { elevationOf } from "../../../src/core/ground/elevation.ts";
import type { Mainline } from "../../../src/core/mainline/water-end.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { Block, Project } from "../../../src/core/project/project.ts";
import type { DripSettings } from "../../../src/core/project/water-settings.ts";
import type { Rows } from "../../../src/core/rows/rows.ts";
import { trellis } from "../../../src/core/trellis/lay-trellis.ts";
import { at, createDripSettings, createProject, testFrame } from "../../support/create-project.ts";
import { routePastStarts } from "../../support/create-route.ts";
import { createBlock, createRows } from "../../support/create-rows.ts";

const { ground: laid } = createPlanner().plan({ ...createProject(), sources: [] });

interface Sketch {
  readonly rows?: Rows;
  readonly drip?: Partial<DripSettings>;
  readonly block?: Partial<Block>;
  readonly heights?: readonly (readonly [x_m: number, y_m: number, height_m: number])[];
  readonly project?: Partial<Project>;
  readonly waterEnd?: "start" | "end";
  readonly isWithoutRoute?: boolean;
}

/** Rows due north with vines every 2 m from 1 m on, drip wire at 0.45 m, the main line 2.5 m before their starts; the source is 10 m west of it. */
function jobOf({ rows = createRows({ length_m: 22, vines: 11 }), ...sketch }: Sketch = {}) {
  const drip = createDripSettings({ emitterOffset_m: 0.1, ...sketch.drip });
  const project = createProject({
    sources: [{ key: "well", name: "Well", at: at([-10, -2.5]) }],
    blocks: [createBlock({ drip, ...sketch.block })],
    ...sketch.project,
  });
  if (laid === null) throw new Error("the test ground is not laid");
  const spots = (sketch.heights ?? []).map(([x, y, height_m], i) => ({
    key: `spot-${i}`,
    name: null,
    at: at([x, y]),
    height_m,
  }));
  const ground = { ...laid, elevation: elevationOf(spots, testFrame).elevation };
  const structure = trellis(rows, ground.elevation, project.blocks);
  if (!structure.ok) throw new Error("the trellis is not laid");
  const waterEnd = rows.rows.map(() => sketch.waterEnd ?? "start");
  const route = { ...routePastStarts(rows, 2.5), waterEnd };
  const main: Mainline = { waterEnd, job: null, route: sketch.isWithoutRoute ? null : route };
  return wateringJob(rows, main, ground, structure.value, project);
}

/** From the ground to the middle of a pipe of 50 mm. */
const under_m = createProject().trench.cover_m + 0.025;

/** The ground rises by a tenth towards the north from 100 m at the tees, over a field that is wide enough for all rows here. */
const rising = [-200, 200].flatMap((x) => [-50, 150].map((y) => [x, y, 100 + 0.1 * y] as const));

test("one emitter a vine sits before its trunk as the water comes, on level ground", () => {
  const { laterals } = jobOf();
  expect([...laterals.at_m].map((each) => Number(each.toFixed(9)))).toEqual([
    0.9, 2.9, 4.9, 6.9, 8.9, 10.9, 12.9, 14.9, 16.9, 18.9, 20.9,
  ]);
  expect([...laterals.offsets]).toEqual([0, 11]);
  expect(laterals.hose_m[0]).toBeCloseTo(21.6, 9);
});

test("with the water at the other end the emitters are counted from there", () => {
  const rows = createRows({ length_m: 100, vines: 3 });
  const near = { ...rows, vines: { ...rows.vines, station_m: Float64Array.of(1, 3, 6) } };
  const { laterals } = jobOf({ rows: near, waterEnd: "end", drip: { emitterOffset_m: 0 } });
  expect([...laterals.at_m]).toEqual([94, 97, 99]);
  expect(laterals.hose_m[0]).toBeCloseTo(99.6, 9);
});

test("two emitters a vine sit on either side of its trunk", () => {
  const rows = createRows({ length_m: 10, vines: 2 });
  const { laterals } = jobOf({ rows, drip: { emittersPerVine: 2, emitterOffset_m: 0.3 } });
  expect([...laterals.at_m].map((each) => Number(each.toFixed(9)))).toEqual([0.7, 1.3, 8.7, 9.3]);
});

test("an emitter is uphill of its trunk, whichever way the water comes", () => {
  const rows = createRows({ length_m: 22, vines: 11 });
  const stretch = Math.hypot(1, 0.1);
  const sloped = { ...rows, rows: rows.rows.map((row) => ({ ...row, groundLength_m: 22 * stretch })) };
  const up = jobOf({ rows: sloped, heights: rising });
  expect(up.laterals.at_m[0]).toBeCloseTo(1 * stretch + 0.1, 6);
  const down = jobOf({ rows: sloped, heights: rising, waterEnd: "end" });
  expect(down.laterals.at_m[0]).toBeCloseTo(1 * stretch - 0.1, 6);
});

test("heights follow the ground with the drip wire on top, and the pipe lies in the ground", () => {
  const job = jobOf({ heights: rising, drip: { emitterOffset_m: 0, overrun_m: 0 } });
  const { laterals, line, source } = job;
  expect(source.isLevel).toBe(false);
  expect(source.height_m).toBeCloseTo(99.75, 3);
  expect(laterals.height_m[0]).toBeCloseTo(100.1 + 0.45, 3);
  expect(laterals.height_m[10]).toBeCloseTo(102.1 + 0.45, 3);
  expect(laterals.tailHeight_m[0]).toBeCloseTo(102.1 + 0.45, 3);
  expect(line?.height_m[1]).toBeCloseTo(99.75 - under_m, 3);
});

test("the hose is longer by its slack, and its emitters are as much farther along it", () => {
  const { laterals } = jobOf({ drip: { slack_ratio: 0.01, emitterOffset_m: 0 } });
  expect(laterals.hose_m[0]).toBeCloseTo(21.6 * 1.01, 9);
  expect(laterals.at_m[10]).toBeCloseTo(21 * 1.01, 9);
});

test("built-in emitters stand all along the hose, from half a spacing on, whatever the vines", () => {
  const { laterals } = jobOf({ drip: { emitterPlacing: "in-line", emitterSpacing_m: 0.5, emittersPerVine: 3 } });
  expect(laterals.at_m).toHaveLength(43);
  expect([laterals.at_m[0], laterals.at_m[1], laterals.at_m[42]]).toEqual([0.25, 0.75, 21.25]);
});

test("the riser is what the trench digs for it: the lead, the cover and the climb to the drip wire", () => {
  const { laterals, line } = jobOf();
  expect(laterals.riser_m[0]).toBeCloseTo(2.5 + under_m + 0.45, 9);
  expect(laterals.point[0]).toBe(1);
  expect([...(line?.length_m ?? [])]).toEqual([0, 10]);
});

test("without heights all ground is as high as the gauge, and it is said that it is not known", () => {
  const { source, laterals, line } = jobOf({ project: { water: { ...createProject().water, height_m: 250 } } });
  expect(source).toMatchObject({ height_m: 250, isLevel: true });
  expect(laterals.height_m[0]).toBeCloseTo(250.45, 9);
  expect(line?.height_m[1]).toBeCloseTo(250 - under_m, 9);
});

test("ground past the heights that are known counts as high as the gauge", () => {
  const strip = [-200, 200].flatMap((x) => [-50, 10].map((y) => [x, y, 100] as const));
  const { source, laterals } = jobOf({ heights: strip });
  expect(source.isLevel).toBe(true);
  expect(laterals.height_m[10]).toBeCloseTo(100.45, 6);
});

test("rows without vines have no lateral, and rows that no trench gets to have no point", () => {
  const rows = createRows({ length_m: 22, vines: 11 }, { length_m: 22 }, { length_m: 22, vines: 11 });
  const { laterals } = jobOf({ rows, isWithoutRoute: true });
  expect([...laterals.row]).toEqual([0, 2]);
  expect([...laterals.point]).toEqual([-1, -1]);
});

test("rows of one variety on one rootstock have one number, rows that nobody names too", () => {
  const planted = (fromRow: number, toRow: number, variety: string) => {
    return { fromRow, toRow, variety, rootstock: null, spare_ratio: 0 };
  };
  const rows = createRows(...Array.from({ length: 5 }, () => ({ length_m: 22, vines: 11 })));
  const { laterals } = jobOf({ rows, block: { plantings: [planted(1, 2, "red"), planted(4, 4, "white")] } });
  expect([...laterals.variety]).toEqual([0, 0, 1, 2, 1]);
  expect([...laterals.line]).toEqual([1, 2, 3, 4, 5]);
});

test("a compensating emitter holds its flow from the least of its range on, a plain one has none", () => {
  const kpa_pm = 9.80665;
  const compensating = jobOf({ drip: { emitterKind: "compensating", emitterLeast_kpa: 5 * kpa_pm } });
  expect(compensating.blocks[0]?.emitter.from_m).toBeCloseTo(5, 9);
  const plain = jobOf({ drip: { emitterKind: "plain", emitterFlow_lph: 3.6, emitterPressure_kpa: 10 * kpa_pm } });
  expect(plain.blocks[0]?.emitter).toMatchObject({ nominal_lps: 0.001, from_m: null });
  expect(plain.blocks[0]?.emitter.nominalHead_m).toBeCloseTo(10, 9);
});

test("pipes narrower than the riser are not chosen from", () => {
  const family = { ...createProject().sets, family: "pvc-40" } as const;
  const narrowest = (riserInside_mm: number) =>
    jobOf({ drip: { riserInside_mm }, project: { sets: family } }).sizes[0]?.size;
  expect([15, 20.574, 26, 500].map(narrowest)).toEqual(["pvc-40-0.5in", "pvc-40-0.75in", "pvc-40-1in", "pvc-40-4in"]);
});

test("emitters stand in order on their hose, as many as are bought, whatever rows and settings", () => {
  const settings = fc.record({
    emitterPlacing: fc.constantFrom("on-line" as const, "in-line" as const),
    emittersPerVine: fc.integer({ min: 0, max: 4 }),
    emitterOffset_m: fc.double({ min: 0, max: 2, noNaN: true }),
    emitterSpacing_m: fc.double({ min: 0.1, max: 3, noNaN: true }),
    overrun_m: fc.double({ min: 0, max: 3, noNaN: true }),
    slack_ratio: fc.double({ min: 0, max: 0.05, noNaN: true }),
  });
  const sketches = fc.array(
    fc.record({ length_m: fc.double({ min: 3, max: 200, noNaN: true }), vines: fc.integer({ min: 0, max: 60 }) }),
    { minLength: 1, maxLength: 4 },
  );
  fc.assert(
    fc.property(settings, sketches, fc.constantFrom("start" as const, "end" as const), (drip, some, waterEnd) => {
      const rows = createRows(...some);
      const { laterals } = jobOf({ rows, drip, waterEnd });
      const bought = dripOf(rows, { waterEnd: some.map(() => waterEnd) }, [
        createBlock({ drip: createDripSettings(drip) }),
      ]);
      expect(laterals.at_m).toHaveLength(bought.emitters);
      [...laterals.row].forEach((row, i) => {
        const at_m = [...laterals.at_m.subarray(laterals.offsets[i], laterals.offsets[i + 1])];
        expect(at_m).toHaveLength(bought.rows[row]?.emitters ?? -1);
        expect(laterals.hose_m[i]).toBe(bought.rows[row]?.lateral_m);
        expect(at_m).toEqual([...at_m].sort((a, b) => a - b));
        expect(at_m.every((each) => each >= 0 && each <= (laterals.hose_m[i] ?? 0))).toBe(true);
      });
    }),
    { seed: 43, numRuns: 60 },
  );
});
