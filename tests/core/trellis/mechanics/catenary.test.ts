import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { catenary, sag_m } from "../../../../src/core/trellis/mechanics/sag.ts";
import { steelExpansion_perK, steelModulus_pa, wireArea_m2 } from "../../../../src/core/trellis/mechanics/steel.ts";
import { changedTension_n } from "../../../../src/core/trellis/mechanics/stretch.ts";

/*
 * The elastic catenary, solved another way than the core does: no parabola and no closed form, but the wire added up piece by piece from
 * its lowest point (Simpson's rule over its unstretched length), and lengths and tensions found by the secant method. A piece ds at
 * tension T and vertical part V reaches H ds (1 / EA + 1 / T) across and V ds (1 / EA + 1 / T) down; statics and Hooke's law.
 */
interface Hung {
  readonly across_m: number;
  readonly sag_m: number;
}

const pieces = 400;

function hung(pull_n: number, unstretched_m: number, weight_npm: number, stiffness_n: number): Hung {
  const half_m = unstretched_m / 2;
  const step_m = half_m / pieces;
  let across_m = 0;
  let down_m = 0;
  for (let i = 0; i <= pieces; i++) {
    const share = ((i === 0 || i === pieces ? 1 : i % 2 === 1 ? 4 : 2) * step_m) / 3;
    const vertical_n = weight_npm * i * step_m;
    const perNewton = share * (1 / stiffness_n + 1 / Math.hypot(pull_n, vertical_n));
    across_m += pull_n * perNewton;
    down_m += vertical_n * perNewton;
  }
  return { across_m: 2 * across_m, sag_m: down_m };
}

function secant(miss: (x: number) => number, first: number, second: number): number {
  let [a, b] = [first, second];
  let [missA, missB] = [miss(a), miss(b)];
  for (let i = 0; i < 60 && Math.abs(missB) > 1e-12; i++) {
    const next = b - (missB * (b - a)) / (missB - missA);
    [a, missA] = [b, missB];
    b = Math.max(next, b / 4);
    missB = miss(b);
    if (missA === missB) break;
  }
  return b;
}

interface Case {
  readonly diameter_mm: number;
  readonly span_m: number;
  readonly tension_n: number;
  readonly before_npm: number;
  readonly after_npm: number;
  readonly warming_k: number;
}

/** Tension and sag after the change, of the exact wire. Weights are per metre of unstretched wire. */
function exact(each: Case): Hung & { readonly tension_n: number } {
  const stiffness_n = steelModulus_pa * wireArea_m2(each.diameter_mm);
  const cold_m = secant(
    (length_m) => hung(each.tension_n, length_m, each.before_npm, stiffness_n).across_m - each.span_m,
    each.span_m,
    each.span_m * 1.001,
  );
  const warm_m = cold_m * (1 + steelExpansion_perK * each.warming_k);
  const tension_n = secant(
    (pull_n) => hung(pull_n, warm_m, each.after_npm, stiffness_n).across_m - each.span_m,
    each.tension_n,
    each.tension_n * 1.01,
  );
  return { ...hung(tension_n, warm_m, each.after_npm, stiffness_n), tension_n };
}

const wireBay = fc.record({
  diameter_mm: fc.double({ min: 1.6, max: 4, noNaN: true }),
  span_m: fc.double({ min: 4, max: 10, noNaN: true }),
  tension_n: fc.double({ min: 300, max: 1500, noNaN: true }),
  before_npm: fc.double({ min: 0.2, max: 4, noNaN: true }),
  after_npm: fc.double({ min: 0.2, max: 40, noNaN: true }),
  warming_k: fc.integer({ min: -40, max: 40 }),
});
/** Sag over span up to which a trellis wire is judged here; a wire that hangs lower is none that anyone keeps. */
const flat_ratio = 0.04;
/** The parabola's own error at that sag: 8/3 r2 of the span and what it does to the tension. */
const near_ratio = 0.01;

describe("tension and sag against the elastic catenary added up piece by piece", () => {
  test("a bay that takes on load and changes its temperature ends at the same tension and sag", () => {
    let judged = 0;
    fc.assert(
      fc.property(wireBay, (each) => {
        const truth = exact(each);
        const area_m2 = wireArea_m2(each.diameter_mm);
        const from = { tension_n: each.tension_n, weight_npm: each.before_npm };
        const told_n = changedTension_n(from, each.after_npm, each.span_m, area_m2, each.warming_k);
        if (truth.sag_m / each.span_m > flat_ratio) return;
        judged++;
        expect(Math.abs(told_n / truth.tension_n - 1)).toBeLessThan(near_ratio);
        expect(Math.abs(sag_m(each.after_npm, each.span_m, told_n) / truth.sag_m - 1)).toBeLessThan(near_ratio);
      }),
      { seed: 220711, numRuns: 400 },
    );
    expect(judged).toBeGreaterThan(300);
  });

  test("the catenary of a stiff wire is the wire added up", () => {
    fc.assert(
      fc.property(wireBay, ({ span_m, tension_n, after_npm }) => {
        const told = catenary(after_npm, span_m, tension_n);
        const stiff_n = 1e15;
        const summed = hung(tension_n, told.length_m, after_npm, stiff_n);
        expect(Math.abs(summed.across_m / span_m - 1)).toBeLessThan(1e-9);
        expect(Math.abs(summed.sag_m / told.sag_m - 1)).toBeLessThan(1e-6);
      }),
      { seed: 220715, numRuns: 200 },
    );
  });

  test("load and cold never slacken a wire, warmth never tightens it", () => {
    fc.assert(
      fc.property(wireBay, ({ diameter_mm, span_m, tension_n, before_npm, after_npm, warming_k }) => {
        const change = (weight_npm: number, kelvin: number) =>
          changedTension_n({ tension_n, weight_npm: before_npm }, weight_npm, span_m, wireArea_m2(diameter_mm), kelvin);
        const digits_n = 1e-5;
        expect(change(before_npm, 0)).toBeCloseTo(tension_n, 4);
        expect(change(before_npm, Math.abs(warming_k))).toBeLessThanOrEqual(tension_n + digits_n);
        expect(change(before_npm, -Math.abs(warming_k))).toBeGreaterThanOrEqual(tension_n - digits_n);
        expect(change(before_npm + after_npm, 0)).toBeGreaterThanOrEqual(tension_n - digits_n);
      }),
      { seed: 220713, numRuns: 200 },
    );
  });
});
