import { expect, test } from "vitest";
import { evennessOf } from "../../../src/core/drip/evenness.ts";
import { lateralFindings } from "../../../src/core/drip/lateral-findings.ts";
import { lateralNeeds } from "../../../src/core/drip/lateral-needs.ts";
import type { Watering, WaterSet } from "../../../src/core/drip/watering.ts";
import type { WateringJob } from "../../../src/core/drip/watering-job.ts";
import { emitterFlow_lps } from "../../../src/core/hydraulics/outlet-flow.ts";
import { text } from "../../../src/core/units.ts";
import { testFrame } from "../../support/create-project.ts";
import { createRows } from "../../support/create-rows.ts";
import { createWateringJob, type WateringSketch } from "../../support/create-watering-job.ts";

const kpa_pm = 9.80665;

/** One set of all laterals that runs with the same pressure head at every emitter of a lateral, in the order of the laterals. */
function watered(job: WateringJob, pressures_m: readonly number[], set: Partial<WaterSet> = {}): Watering {
  const { offsets, block } = job.laterals;
  const pressure_m = new Float64Array(job.laterals.at_m.length);
  const flow_lps = new Float64Array(pressure_m.length);
  pressures_m.forEach((each_m, lateral) => {
    const emitter = job.blocks[block[lateral] ?? 0]?.emitter;
    if (emitter === undefined) throw new Error("a lateral of no block");
    for (let i = offsets[lateral] ?? 0; i < (offsets[lateral + 1] ?? 0); i++) {
      pressure_m[i] = each_m;
      flow_lps[i] = emitterFlow_lps(emitter, each_m);
    }
  });
  const laterals = [...job.laterals.row.keys()];
  const whole: WaterSet = {
    name: "1",
    laterals,
    flow_lps: 1,
    gauge_m: 20,
    source_m: 15,
    spare_m: 1,
    sparest: 0,
    evenness: evennessOf(job, laterals, flow_lps),
    nodes: {
      upstream: Int32Array.of(-1),
      point: Int32Array.of(0),
      pipe: Int32Array.of(-1),
      lateral: Int32Array.of(-1),
      station_m: new Float64Array(1),
      height_m: new Float64Array(1),
      head_m: new Float64Array(1),
      flow_lps: new Float64Array(1),
      velocity_mps: new Float64Array(1),
    },
    fill_h: 0.1,
    flushable: 1,
    isSettled: true,
    ...set,
  };
  return {
    supply: null,
    laterals: lateralNeeds(job),
    sets: [whole],
    emitters: { pressure_m, flow_lps },
    pipes: [],
    blocks: [],
    highest: [],
    patterns: [],
    season: null,
    firstRun: [],
    parts: [],
    isShort: false,
  };
}

function findingsOf(sketch: WateringSketch, pressures_m: readonly number[] | null = null, set: Partial<WaterSet> = {}) {
  const job = createWateringJob({ rows: 2, vines: 10, ...sketch });
  const rows = createRows(...Array.from(job.laterals.row, () => ({ length_m: 30, vines: 10 })));
  const watering = pressures_m === null ? null : watered(job, pressures_m, set);
  return lateralFindings(job, watering, rows, { waterEnd: [] }, { frame: testFrame }).map((finding) => ({
    ...finding,
    sentence: text(finding.message, "metric"),
  }));
}

const codes = (findings: readonly { readonly code: string }[]) => findings.map(({ code }) => code);

test("rows that run evenly have nothing to say", () => {
  expect(findingsOf({}, [10, 10])).toEqual([]);
});

test("an emitter of less than half a gallon an hour wants a finer filter, one of half a gallon does not", () => {
  expect(codes(findingsOf({ drip: { emitterFlow_lph: 1.6 } }))).toEqual(["drip/fine-emitter"]);
  expect(codes(findingsOf({ drip: { emitterFlow_lph: 1.892705892 } }))).toEqual([]);
});

test("a nominal pressure above what the emitter stands is a mistake in the settings", () => {
  const findings = findingsOf({ drip: { emitterMost_kpa: 50 } });
  expect(codes(findings)).toEqual(["drip/emitter-range"]);
  expect(findings[0]?.sentence).toContain("more than the 50 kPa");
});

test("an evenness that emitters are not made for is told once, not of every set", () => {
  const findings = findingsOf({ drip: { emitterVariation_ratio: 0.1, evenness_ratio: 0.9 } }, [10, 8]);
  expect(codes(findings)).toEqual(["drip/evenness-out-of-reach"]);
  expect(findings[0]?.sentence).toContain("87.3 %");
});

test("a set whose rows have other pressures is uneven", () => {
  const findings = findingsOf({ drip: { evenness_ratio: 0.9 } }, [10, 6]);
  expect(codes(findings)).toEqual(["drip/set-uneven"]);
  expect(findings[0]?.sentence).toContain("Set 1 is 81.7 % even; 90 % is asked for.");
  expect(findings[0]?.at).not.toBeNull();
});

test("rows that are too long for their hose are uneven by themselves", () => {
  const findings = findingsOf({ vinesOfRow: { 1: 250 }, vineSpacing_m: 1, drip: { evenness_ratio: 0.9 } }, [10, 10]);
  expect(codes(findings)).toEqual(["drip/row-uneven"]);
  expect(findings[0]?.sentence).toContain("By itself row 2 is less even");
  expect(text(findings[0]?.reason ?? [], "metric")).toContain("a row of about 202 m keeps the evenness");
});

test("a set that is short of water is not told to be uneven as well", () => {
  expect(codes(findingsOf({ drip: { evenness_ratio: 0.9 } }, [10, 6], { spare_m: -2 }))).toEqual([]);
});

test("compensating emitters below their range are told with the rows they are in", () => {
  const drip = { emitterKind: "compensating", emitterExponent: 0, emitterLeast_kpa: 7 * kpa_pm } as const;
  const findings = findingsOf({ drip }, [9, 6.9]);
  expect(codes(findings)).toEqual(["drip/emitters-below-range"]);
  expect(findings[0]?.sentence).toContain("row 2");
  expect(codes(findingsOf({ drip }, [9, 7]))).toEqual([]);
});

test("emitters without water are told, and nothing else of their set", () => {
  const findings = findingsOf({}, [10, 0]);
  expect(codes(findings)).toEqual(["drip/emitters-dry"]);
  expect(findings[0]?.sentence).toBe("In set 1 10 emitters get no water, in row 2.");
});

test("a set that leaves no water to flush with says so, unless it is short anyway", () => {
  expect(codes(findingsOf({}, [10, 10], { flushable: 0 }))).toEqual(["drip/flush-none"]);
  expect(codes(findingsOf({}, [10, 10], { flushable: 0, spare_m: -1 }))).toEqual([]);
});

test("rows that no trench gets to are in no set", () => {
  const findings = findingsOf({ unreached: [1] }, [10, 10]);
  expect(codes(findings)).toEqual(["drip/rows-without-water"]);
  expect(codes(findingsOf({ unreached: [1], water: { kind: "unknown" } }))).toEqual([]);
});

test("heights that are not known are told while the water is known", () => {
  const job = createWateringJob({ rows: 1 });
  const level = { ...job, source: { ...job.source, isLevel: true } };
  const rows = createRows({ length_m: 30, vines: 10 });
  const of = (each: WateringJob) => codes(lateralFindings(each, null, rows, { waterEnd: [] }, { frame: testFrame }));
  expect(of(level)).toEqual(["drip/heights-unknown"]);
  expect(of({ ...level, water: { ...level.water, kind: "unknown" } })).toEqual([]);
});
