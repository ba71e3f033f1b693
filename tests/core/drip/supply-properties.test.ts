import * as fc from "fast-check";
import { expect, test } from "vitest";
import { supplyOf } from "../../../src/core/drip/supply.ts";
import type { Supply } from "../../../src/core/drip/watering.ts";
import { supplyHead_m } from "../../../src/core/hydraulics/read-supply.ts";
import { usualHeadWork } from "../../../src/core/project/water-defaults.ts";
import { headWorkKinds, type WaterSettings } from "../../../src/core/project/water-settings.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

const seed = 20_261;
const hair_m = 1e-9;

const pressure = fc.double({ min: 20, max: 900, noNaN: true });
const flowOf = fc.double({ min: 5, max: 20_000, noNaN: true });
const bucket = fc.record({
  volume_l: fc.double({ min: 1, max: 200, noNaN: true }),
  time_h: fc.double({ min: 1 / 3600, max: 0.2, noNaN: true }),
  pressure_kpa: fc.option(pressure, { nil: null }),
});
const work = fc
  .record({
    kind: fc.constantFrom(...headWorkKinds),
    loss_kpa: fc.double({ min: 0, max: 40, noNaN: true }),
    dirtyLoss_kpa: fc.double({ min: 0, max: 90, noNaN: true }),
    atFlow_lph: fc.option(flowOf, { nil: null }),
    outlet_kpa: fc.option(pressure, { nil: null }),
  })
  .map(({ outlet_kpa, ...each }) => {
    return { ...usualHeadWork(each.kind), ...each, outlet_kpa: each.kind === "regulator" ? outlet_kpa : null };
  });

/** Any water at all, with readings that need not agree with each other. */
const water: fc.Arbitrary<Partial<WaterSettings>> = fc.record({
  kind: fc.constantFrom("measured", "pump", "tank", "town"),
  staticPressure_kpa: fc.option(pressure, { nil: null }),
  tests: fc.array(bucket, { maxLength: 4 }),
  pump: fc.array(fc.record({ flow_lph: flowOf, pressure_kpa: pressure }), { maxLength: 5 }),
  tankLevel_m: fc.option(fc.double({ min: 0.5, max: 60, noNaN: true }), { nil: null }),
  limitFlow_lph: fc.option(flowOf, { nil: null }),
  others_lph: fc.double({ min: 0, max: 4000, noNaN: true }),
  headWorks: fc.array(work, { maxLength: 6 }),
});

function forEverySupply(check: (supply: Supply, of: Partial<WaterSettings>) => void): void {
  let known = 0;
  fc.assert(
    fc.property(water, (each) => {
      const supply = supplyOf(createWateringJob({ water: { tankLevel_m: null, ...each } }));
      if (supply === null) return;
      known++;
      check(supply, each);
    }),
    { seed, numRuns: 400 },
  );
  expect(known).toBeGreaterThan(200);
}

test("flows of every curve rise from none, and heads never rise", () => {
  forEverySupply(({ atGauge, dirty, clean }) => {
    for (const { flow_lps, head_m } of [atGauge, dirty, clean]) {
      expect(flow_lps[0]).toBe(0);
      const isFalling = flow_lps.every((flow, i) => {
        if (i === 0) return true;
        return flow > Number(flow_lps[i - 1]) && Number(head_m[i]) <= Number(head_m[i - 1]) + hair_m;
      });
      expect(isFalling).toBe(true);
    }
  });
});

test("behind the head works there is never more than at the gauge, and dirty never more than clean", () => {
  forEverySupply(({ atGauge, dirty, clean, most_lps }) => {
    for (const share of [0, 0.3, 0.71, 1]) {
      const flow_lps = share * Math.min(most_lps, 5);
      const [gauge_m, clean_m, dirty_m] = [atGauge, clean, dirty].map((curve) => supplyHead_m(curve, flow_lps));
      // Curves are chords of bent lines, each with points of its own.
      expect(Number(clean_m)).toBeLessThanOrEqual(Number(gauge_m) + 0.05);
      expect(Number(dirty_m)).toBeLessThanOrEqual(Number(clean_m) + 0.05);
    }
  });
});

test("what is known with nothing flowing is the most there is", () => {
  forEverySupply(({ atGauge, static_m }) => expect(Number(atGauge.head_m[0])).toBeLessThanOrEqual(static_m + hair_m));
});

test("the more others take, the less is left", () => {
  forEverySupply((supply, each) => {
    const more = supplyOf(
      createWateringJob({ water: { tankLevel_m: null, ...each, others_lph: (each.others_lph ?? 0) + 500 } }),
    );
    if (more === null) throw new Error("others took the water away altogether");
    expect(more.most_lps).toBeLessThanOrEqual(supply.most_lps);
    expect(Number(more.atGauge.head_m[0])).toBeLessThanOrEqual(Number(supply.atGauge.head_m[0]) + hair_m);
  });
});
