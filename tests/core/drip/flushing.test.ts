import { expect, test } from "vitest";
import { flushable } from "../../../src/core/drip/flushing.ts";

/** Falls from 20 m by 1 m for every 0.1 L/s. */
const curve = { flow_lps: Float64Array.of(0, 2), head_m: Float64Array.of(20, 0) };
const set = { laterals: 10, flow_lps: 0.5, lost_m: 0, behind_m: 0, held_m: Infinity, needed_m: 12 };

test("as many laterals are flushed at once as the water gives without a tee falling short", () => {
  expect(flushable({ curve, most_lps: 2 }, set, 0.1)).toBe(3);
  expect(flushable({ curve, most_lps: 2 }, { ...set, needed_m: 14.5 }, 0.1)).toBe(0);
});

test("no more than the water may give at all, and no more than there are", () => {
  expect(flushable({ curve, most_lps: 0.65 }, set, 0.1)).toBe(1);
  expect(flushable({ curve, most_lps: 2 }, { ...set, laterals: 2 }, 0.1)).toBe(2);
});

test("what is lost on the way grows with the flush", () => {
  expect(flushable({ curve, most_lps: 2 }, { ...set, lost_m: 1.5 }, 0.1)).toBe(0);
  expect(flushable({ curve, most_lps: 2 }, { ...set, lost_m: 1.5, needed_m: 11 }, 0.1)).toBe(1);
});

test("behind a regulator it holds as long as there is more before it, and what is lost behind it grows", () => {
  const held = { ...set, held_m: 12.5, needed_m: 12 };
  expect(flushable({ curve, most_lps: 2 }, held, 0.1)).toBe(3);
  expect(flushable({ curve, most_lps: 2 }, { ...held, behind_m: 0.3 }, 0.1)).toBe(1);
  expect(flushable({ curve, most_lps: 2 }, { ...held, held_m: 12.1, behind_m: 0.1 }, 0.1)).toBe(0);
});
