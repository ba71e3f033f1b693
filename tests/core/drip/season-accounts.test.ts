import { describe, expect, test } from "vitest";
import { cropAccount, referenceAccount } from "../../../src/core/drip/reference-accounts.ts";
import { seasonOf } from "../../../src/core/drip/season/season-of.ts";
import {
  allHoursAccount,
  blockDayAccount,
  firstWateringAccount,
  fullNeedAccount,
  setHoursAccount,
  vineWeekAccount,
  yearAccount,
} from "../../../src/core/drip/season-accounts.ts";
import type { Monthly, SeasonSettings } from "../../../src/core/project/water-settings.ts";
import { text } from "../../../src/core/units.ts";
import { createWaterSet } from "../../support/create-water-set.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

/* Every number of the season is what its account makes of the numbers it tells. */

/** Invented. */
const reference_mmpd: Monthly = [1, 1.5, 2.5, 4, 5, 6, 6.5, 6, 4.5, 3, 1.5, 1];
const lowest_c: Monthly = [-2, -1, 2, 5, 9, 13, 15, 15, 11, 7, 2, -1];
const highest_c: Monthly = [5, 7, 12, 16, 21, 26, 30, 29, 24, 17, 10, 6];
const rain_mm: Monthly = [60, 50, 50, 40, 40, 20, 10, 10, 30, 50, 70, 70];

const cases: Readonly<Record<string, Partial<SeasonSettings>>> = {
  "entered evapotranspiration": { reference_mmpd },
  "rain, shade and salt": { reference_mmpd, rain_mm, shaded_ratio: 0.35, leaching_ratio: 0.1 },
  "temperatures alone": { lowest_c, highest_c },
  "temperatures by eq. 52": { lowest_c, highest_c, method: "hargreaves" },
  "a season over the turn of the year": { reference_mmpd: [...reference_mmpd].reverse(), stages: [9.5, 12, 2.5, 5] },
};

const dry = { blocks: [null, null], sets: [] };
const near = (expected: number) => 1e-9 * Math.max(1, Math.abs(expected));

function expectNear(got: number | null, expected: number): void {
  expect(Math.abs(Number(got) - expected)).toBeLessThanOrEqual(near(expected));
}

describe.each(Object.entries(cases))("%s", (_, season) => {
  const job = createWateringJob({ rows: 2, blocks: 2, season, dripOfOthers: { emitterFlow_lph: 4 } });
  const seasons = seasonOf(job, dry) ?? [];

  test("evapotranspiration, coefficient and full need of every month", () => {
    for (const month of seasons[0]?.months ?? []) {
      expectNear(referenceAccount(job, month.month).value, month.reference_mmpd);
      expectNear(cropAccount(job.season, month.month).value, month.crop);
      const full_mm = fullNeedAccount(job, month).value;
      const needed = vineWeekAccount(job, dry, 0, month.month, "peak").inputs.find(({ name }) =>
        name.startsWith("Full"),
      );
      expectNear(full_mm, Number(needed?.number));
    }
  });

  test("water of a vine, of the block, and the hours of a set", () => {
    seasons.forEach(({ months }, block) => {
      for (const month of months) {
        expectNear(vineWeekAccount(job, dry, block, month.month, "usual").value, month.usual_lpw);
        expectNear(vineWeekAccount(job, dry, block, month.month, "peak").value, month.peak_lpw);
        expectNear(vineWeekAccount(job, dry, block, month.month, "young").value, month.young_lpw);
        expectNear(setHoursAccount(job, dry, block, month, "usual").value, month.usual_h);
        expectNear(setHoursAccount(job, dry, block, month, "peak").value, month.peak_h);
        expectNear(blockDayAccount(job, dry, block, month, "usual").value, month.usual_lpd);
        expectNear(blockDayAccount(job, dry, block, month, "peak").value, month.peak_lpd);
      }
    });
    expect(seasons).toHaveLength(2);
  });

  test("the year and the first watering", () => {
    for (const each of seasons) {
      expectNear(yearAccount(each, "usual").value, each.usual_l);
      expectNear(yearAccount(each, "peak").value, each.full_l);
      expectNear(firstWateringAccount(job).value, Number(each.firstWatering));
    }
    expect(seasons[0]?.firstWatering).not.toBeNull();
  });
});

test("all sets one after another are told by the hours of each", () => {
  const job = createWateringJob({
    rows: 2,
    blocks: 2,
    season: { reference_mmpd },
    dripOfOthers: { emitterFlow_lph: 1 },
  });
  const sets = [createWaterSet({ laterals: [0, 1, 2] }), createWaterSet({ laterals: [3] })];
  const watering = { blocks: [null, null], sets };
  const seasons = seasonOf(job, watering) ?? [];
  for (const of of ["usual", "peak"] as const) {
    const month = seasons[0]?.months[6];
    const value = allHoursAccount(job, watering, seasons, 7, of).value;
    expectNear(value, Number(of === "usual" ? month?.usualAll_h : month?.all_h));
    expect(Number(value)).toBeGreaterThan(0);
  }
});

test("a soil that lasts is told in words, and evapotranspiration that is not known as not known", () => {
  const job = createWateringJob({ season: { reference_mmpd, soil_mmpm: 500, roots_m: 5, depletion_ratio: 1 } });
  expect(seasonOf(job, dry)?.[0]?.firstWatering).toBeNull();
  expect(firstWateringAccount(job).value).toBeNull();
  expect(text(firstWateringAccount(job).formula, "metric")).toContain("Never");
  expect(text(referenceAccount(createWateringJob(), 7).formula, "metric")).toBe("Not known yet.");
});
