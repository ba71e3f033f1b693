import { expect, test } from "vitest";
import { totalHead, totalHeadAccount } from "../../../src/core/drip/total-head.ts";
import { waterRows } from "../../../src/core/drip/water-rows.ts";
import { usualHeadWork } from "../../../src/core/project/water-defaults.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

const kpa_pm = 9.80665;
const job = createWateringJob({
  rows: 8,
  vines: 50,
  lineRise_ratio: 0.05,
  water: { tankLevel_m: 25, headWorks: [usualHeadWork("filter")] },
});
const watering = waterRows(job);
const heads = (watering?.sets ?? []).map((set) => ({
  set,
  head: watering === null ? null : totalHead(job, watering, set),
}));

test("what the head works, the pipes and the climb take is all that goes between gauge and tee", () => {
  expect(heads.length).toBeGreaterThan(0);
  for (const { head } of heads) {
    if (head === null) throw new Error("no tee");
    const { gauge_m, headWorks_m, pipes_m, rise_m, tee_m } = head;
    expect(gauge_m - headWorks_m - pipes_m - rise_m).toBeCloseTo(tee_m, 9);
    expect(gauge_m).toBeCloseTo(25, 9);
    expect(headWorks_m).toBeCloseTo(60 / kpa_pm, 6);
    expect(pipes_m).toBeGreaterThan(0);
    expect(totalHeadAccount(head).value).toBeCloseTo(tee_m * kpa_pm, 9);
  }
});

test("it is told for the row that has least to spare, which lies highest here", () => {
  for (const { set, head } of heads) {
    expect(head?.lateral).toBe(set.sparest);
    expect((head?.tee_m ?? 0) - (head?.needed_m ?? 0)).toBeCloseTo(set.spare_m, 0);
  }
  expect(heads.some(({ head }) => head?.lateral === 7)).toBe(true);
});
