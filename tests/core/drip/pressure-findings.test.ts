import { expect, it } from "vitest";
import { pressureFindings } from "../../../src/core/drip/pressure-findings.ts";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import type { WateringJob } from "../../../src/core/drip/watering-job.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { text } from "../../../src/core/units.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

function findings(job: WateringJob) {
  const watering = waterRows(job);
  if (watering === null) throw new Error("it is worked out");
  const placeOf = (point: number) => lonLat(1, point);
  return pressureFindings(job, watering, { placeOf, rowOf: (lateral) => String(lateral + 1) });
}

const sdr26 = (level_m: number, temperature_c: number, closing_s: number): WateringJob => {
  const job = createWateringJob({
    main_m: 300,
    water: { tankLevel_m: level_m, temperature_c, closing_h: closing_s / 3600 },
    sets: { pattern: "valve-a-set", sizing: "as-set" },
    drip: { hoseMost_kpa: 5000, emitterMost_kpa: 5000 },
  });
  return {
    ...job,
    pipe: { ...job.pipe, size: "pvc-sdr26-1in", outside_mm: 33.401, inside_mm: 29.6926, joint: "solvent" },
  };
};

it("nothing is said where everything stands what it has to", () => {
  expect(findings(sdr26(20, 20, 5))).toEqual([]);
});

it("drip/pipe-over-pressure: pipe under more than its rating, warmer water sooner; names the regulator that helps", () => {
  const [told, ...others] = findings(sdr26(100, 40, 20));
  expect(others).toEqual([]);
  expect(told?.code).toBe("drip/pipe-over-pressure");
  expect(told?.severity).toBe("warning");
  // All of it lies level: its first point with a pipe counts.
  expect(told?.at).toEqual(lonLat(1, 1));
  expect(text(told?.message ?? [], "metric")).toMatch(
    /^PVC SDR 26 \(Class 160\), 1 in has to stand 980.* when every valve is closed, and stands .* \(1,103.* when cold\)\.$/,
  );
  expect(text(told?.remedy ?? [], "metric")).toMatch(/regulator of at most 6\d\d/);
  expect(findings(sdr26(100, 20, 20))).toEqual([]);
});

it("drip/surge-over-pressure: says over what time a valve must close", () => {
  const [told] = findings(sdr26(105, 20, 0.2));
  expect(told?.code).toBe("drip/surge-over-pressure");
  expect(text(told?.remedy ?? [], "metric")).toMatch(/^Close valves over [\d.]+ s or more/);
});

it("drip/hose-over-pressure: hose and emitters of the row that stands worst, and what regulator keeps both rows and hose well", () => {
  const job = createWateringJob({ water: { tankLevel_m: 60 }, drip: { hoseMost_kpa: 300, emitterMost_kpa: 350 } });
  const [told, ...others] = findings(job);
  expect(others).toEqual([]);
  expect(told?.code).toBe("drip/hose-over-pressure");
  expect(text(told?.message ?? [], "metric")).toMatch(/^Hose and emitters of row \d have to stand 5\d\d/);
  expect(text(told?.remedy ?? [], "metric")).toMatch(
    /^Put a regulator at every set's valve: from 99 kPa on .* 300 kPa is the most/,
  );
});

it("drip/emitter-over-pressure: hose stands it, emitters do not; gone with a regulator as advised", () => {
  const drip = { hoseMost_kpa: 700, emitterMost_kpa: 350 };
  const [told, ...others] = findings(createWateringJob({ water: { tankLevel_m: 60 }, drip }));
  expect(others).toEqual([]);
  expect(told?.code).toBe("drip/emitter-over-pressure");
  const regulated = createWateringJob({ water: { tankLevel_m: 60 }, drip, sets: { regulator_kpa: 200 } });
  expect(findings(regulated)).toEqual([]);
});

it("a regulator is no remedy where a row runs down further than its emitters stand", () => {
  const drip = { hoseMost_kpa: 150, emitterMost_kpa: 150 };
  const [told] = findings(createWateringJob({ vines: 100, rise_ratio: -0.1, water: { tankLevel_m: 30 }, drip }));
  expect(text(told?.remedy ?? [], "metric")).toMatch(/alone is not enough/);
});

it("drip/pipe-rating-not-known: pipe of the person's own", () => {
  const job = sdr26(20, 20, 5);
  const [told, ...others] = findings({ ...job, pipe: { ...job.pipe, size: "old black pipe" } });
  expect(others).toEqual([]);
  expect(told?.code).toBe("drip/pipe-rating-not-known");
  expect(told?.severity).toBe("note");
});
