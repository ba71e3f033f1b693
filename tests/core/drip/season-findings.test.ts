import { expect, test } from "vitest";
import { seasonFindings } from "../../../src/core/drip/season-findings.ts";
import type { Finding } from "../../../src/core/finding.ts";
import type { Monthly, SeasonSettings } from "../../../src/core/project/water-settings.ts";
import { text } from "../../../src/core/units.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

const everyMonth = (value: number): Monthly => Array.from({ length: 12 }, () => value);
/** Invented. */
const reference_mmpd: Monthly = [1, 1.5, 2.5, 4, 5, 6, 6.5, 6, 4.5, 3, 1.5, 1];

function found(season: Partial<SeasonSettings>, latitude_deg = 42): readonly Finding[] {
  const job = createWateringJob({ season });
  return seasonFindings({ ...job, source: { ...job.source, latitude_deg } });
}

function codes(season: Partial<SeasonSettings>, latitude_deg?: number): readonly string[] {
  return found(season, latitude_deg).map(({ code }) => code);
}

test("an ordinary season has nothing to be said of it", () => {
  expect(codes({ reference_mmpd })).toEqual([]);
  expect(codes({ lowest_c: everyMonth(8), highest_c: everyMonth(22) })).toEqual([]);
});

test("a season that is not known is asked for once the water is known, or when half of it is", () => {
  expect(codes({})).toEqual(["drip/season-not-known"]);
  const unknown = createWateringJob({ water: { kind: "unknown" } });
  expect(seasonFindings(unknown)).toEqual([]);
  const half = createWateringJob({ water: { kind: "unknown" }, season: { lowest_c: everyMonth(8) } });
  expect(seasonFindings(half).map(({ code }) => code)).toEqual(["drip/season-not-known"]);
});

test("a month's evapotranspiration in place of a day's is suspected", () => {
  const [finding] = found({ reference_mmpd: reference_mmpd.map((each) => each * 30) });
  expect(finding?.code).toBe("drip/reference-unlikely");
  expect(text(finding?.message ?? [], "metric")).toContain("195 mm a day in July");
  expect(text(finding?.remedy ?? [], "metric")).toContain("divide it by the days");
});

test("inches without their unit are suspected", () => {
  const [finding] = found({ reference_mmpd: reference_mmpd.map((each) => each / 25.4) });
  expect(finding?.code).toBe("drip/reference-unlikely");
  expect(text(finding?.remedy ?? [], "us")).toContain("inches without their unit");
});

test("temperatures that are swapped or in Fahrenheit are told", () => {
  const low = everyMonth(8).map((each, i) => (i === 2 ? 25 : each));
  const [crossed] = found({ lowest_c: low, highest_c: everyMonth(22) });
  expect(crossed?.code).toBe("drip/temperatures-crossed");
  expect(text(crossed?.message ?? [], "metric")).toContain("in March");
  expect(codes({ lowest_c: everyMonth(8), highest_c: everyMonth(58) })).toEqual(["drip/temperatures-unlikely"]);
});

test("stages out of order, and those of the other half of the earth, are told", () => {
  expect(codes({ reference_mmpd, stages: [8, 4, 11, 6] })).toEqual(["drip/stages-unordered"]);
  expect(codes({ reference_mmpd }, -34)).toEqual(["drip/stages-of-other-half"]);
  expect(codes({ reference_mmpd, stages: [9.5, 12, 2.5, 5] }, -34)).toEqual([]);
  expect(codes({ reference_mmpd, stages: [9.5, 12, 2.5, 5] }, 34)).toEqual(["drip/stages-of-other-half"]);
  expect(codes({ reference_mmpd, stages: [9.5, 12, 2.5, 5] }, 10)).toEqual([]);
});

test("more usually than at peak, and shade that says less than bud break, are told", () => {
  expect(codes({ reference_mmpd, usualShare_ratio: 0.8, peakShare_ratio: 0.5 })).toEqual(["drip/shares-crossed"]);
  expect(codes({ reference_mmpd, shaded_ratio: 0.1 })).toEqual(["drip/shade-and-coefficient"]);
});

test("without a row with vines there is no season", () => {
  expect(seasonFindings(createWateringJob({ rows: 0 }))).toEqual([]);
});
