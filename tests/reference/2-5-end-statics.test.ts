import { describe, expect, it } from "vitest";
import { si } from "../../src/core/project/si.ts";
import {
  bend_n,
  endPull,
  gradeChange_n,
  hBrace,
  strut,
  tiedPost,
  tiedPostLengths_m,
} from "../../src/core/trellis/mechanics/end-statics.ts";
import { freePostA_m, freePostDepth_m, heldPostDepth_m } from "../../src/core/trellis/mechanics/post-in-soil.ts";
import { inUnit } from "../../src/core/units.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook 2.5: loads on posts and end assemblies. */

const statics: Source = { computed: "statics" };
const code: Source = { computedAsPublished: "worked examples of International Building Code 1807.3.2" };
const codeComputed: Source = { computed: "International Building Code 1807.3.2.1" };

const force_n = 1e-3;
/** Pounds a square foot of strength for every foot of depth, Pa/m. */
const psfPerFoot_papm = (psf: number) => (psf * 4.4482216152605) / 0.3048 ** 3;
const feet = (length_m: number) => inUnit("length", length_m, "ft");

function near(value: number, expected: number, tolerance: number): void {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);
}

describe("2.5 end posts and their ties", () => {
  it.each([
    { tie_deg: 30, tie_n: 1154.701, uplift_n: 577.35 },
    { tie_deg: 45, tie_n: 1414.214, uplift_n: 1000 },
    { tie_deg: 60, tie_n: 2000, uplift_n: 1732.051 },
  ])("2-20 an upright post pulled by 1000 N, tied back at $tie_deg degrees (computed: statics)", (each) => {
    const held = tiedPost(1000, 90, each.tie_deg);
    near(held.tie_n, each.tie_n, force_n);
    near(held.uplift_n, each.uplift_n, force_n);
    near(held.thrust_n, each.uplift_n, force_n);
    near(held.drag_n, 1000, force_n);
  });

  it(titled("2-21 a post leaning at 60 degrees, tied back at 60", statics), () => {
    const held = tiedPost(1000, 60, 60);
    near(held.tie_n, 1000, force_n);
    near(held.thrust_n, 1000, force_n);
    near(held.uplift_n, 866.025, force_n);
    near(held.drag_n, 500, force_n);
  });

  it(titled("2-22 a post leaning at 70 degrees, tied back at 45", statics), () => {
    const held = tiedPost(1000, 70, 45);
    near(held.tie_n, 1036.836, force_n);
    near(held.thrust_n, 780.206, force_n);
    near(held.uplift_n, 733.154, force_n);
  });

  it(titled("2-23 and 2-24 where anchor, top and tie of a leaning post lie", statics), () => {
    const even = tiedPostLengths_m(1.83, 60, 60);
    near(even.footToAnchor_m, 2.1131, 1e-5);
    near(even.topOut_m, 1.05655, 1e-5);
    near(even.tie_m, 2.1131, 1e-5);
    const steep = tiedPostLengths_m(1.8, 70, 45);
    near(steep.footToAnchor_m, 2.45515, 1e-5);
    near(steep.post_m, 1.91552, 1e-5);
  });

  it(titled("2-25 six wires on an upright post, tied at 1.8 m and 45 degrees", statics), () => {
    const pulls = [
      { height_m: 0.9, tension_n: 1000 },
      { height_m: 1.2, tension_n: 2 * 445 },
      { height_m: 1.5, tension_n: 2 * 445 },
      { height_m: 1.8, tension_n: 445 },
    ];
    const { pull_n, moment_nm, equivalent_n } = endPull(pulls, 1.8);
    near(pull_n, 3225, force_n);
    near(moment_nm, 4104, force_n);
    near(equivalent_n, 2280, force_n);
    near(tiedPost(equivalent_n, 90, 45).tie_n, 3224.407, force_n);
    near(pull_n - equivalent_n, 945, force_n);
  });

  it(titled("2-26 an H-brace 1.5 m high and 2.4 m long", statics), () => {
    const brace = hBrace(1, 1.5, 2.4);
    near(brace.angle_deg, 32.00538, 1e-5);
    near(brace.diagonal_n, 1.179248, 1e-6);
    near(brace.uplift_n, 0.625, 1e-6);
    near(brace.diagonal_m, 2.830194, 1e-6);
    near(brace.rail_n, 1, 1e-12);
  });

  it(titled("2-27 an H-brace as long as it is high", statics), () => {
    near(hBrace(1, 1.5, 1.5).diagonal_n, Math.SQRT2, 1e-6);
    near(hBrace(1, 1.5, 1.5).uplift_n, 1, 1e-6);
  });

  it(titled("a strut is pressed by H / cos f and lifts the post by H tan f", statics), () => {
    near(strut(1000, 60).strut_n, 2000, force_n);
    near(strut(1000, 45).uplift_n, 1000, force_n);
  });
});

describe("2.5 posts in soil", () => {
  it(titled("2-28 a post held at the ground", code), () => {
    const moment_nm = si("force", "30000 lbf") * si("length", "3 ft");
    const depth_m = heldPostDepth_m(moment_nm, si("length", "4.5 ft"), psfPerFoot_papm(2 * 350));
    near(feet(depth_m), 4.95192, 1e-4);
    near(depth_m, 1.509345, 1e-5);
    const strength_pa = (psfPerFoot_papm(2 * 350) * depth_m) / 3;
    near(feet(freePostA_m(si("force", "30000 lbf"), si("length", "4.5 ft"), strength_pa)), 13.50126, 1e-4);
  });

  it(titled("2-29 the length A alone", code), () => {
    const strength_pa = psfPerFoot_papm(150) * si("length", "6 ft") * (1.33 / 3);
    near(feet(freePostA_m(si("force", "3000 lbf"), si("length", "1 ft"), strength_pa)), 17.594, 1e-3);
  });

  it.each([
    { id: "2-30", pull: "250 lbf", depth_ft: 6.293689, doubled_ft: 4.739526 },
    { id: "2-31", pull: "1000 lbf", depth_ft: 11.37832, doubled_ft: 8.426963 },
  ])("$id $pull at 4 ft on a free post of 6 in (computed: International Building Code 1807.3.2.1)", (each) => {
    const depth_ft = (psf: number) =>
      feet(freePostDepth_m(si("force", each.pull), si("length", "4 ft"), si("length", "6 in"), psfPerFoot_papm(psf)));
    near(depth_ft(150), each.depth_ft, 1e-4);
    near(depth_ft(300), each.doubled_ft, 1e-4);
  });

  it(titled("four times the pull needs 1.81 times the depth", codeComputed), () => {
    const depth_m = (pull_n: number) => freePostDepth_m(pull_n, 1.2192, 0.1524, psfPerFoot_papm(150));
    expect(depth_m(4448) / depth_m(1112)).toBeCloseTo(1.81, 2);
  });
});

describe("2.5 dips and bends", () => {
  it(titled("2-32 six wires of 1000 N from 5 % down to 5 % up", statics), () => {
    near(gradeChange_n(6000, -0.05, 0.05), 599.251, force_n);
    near(gradeChange_n(6000, 0.05, -0.05), -599.251, force_n);
  });

  it(titled("2-33 a bend of 5 degrees", statics), () => {
    near(bend_n(1000, 5), 87.23878, 1e-5);
  });
});
