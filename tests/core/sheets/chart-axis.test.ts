import { expect, test } from "vitest";
import { chartAxis } from "../../../src/core/sheets/chart-axis.ts";

const texts = (axis: ReturnType<typeof chartAxis>) => [axis.unit, ...axis.ticks.map(({ text }) => text)];

test("an axis stands on round numbers of the reader's unit", () => {
  expect(texts(chartAxis("pressure", 0, 400, "metric", 5))).toEqual(["kPa", "0", "100", "200", "300", "400"]);
  expect(texts(chartAxis("pressure", 0, 400, "us", 5))).toEqual(["psi", "0", "20", "40", "60"]);
  expect(texts(chartAxis("pressure", 0, 400, "metric-bar", 5))).toEqual(["bar", "0", "1", "2", "3", "4"]);
  expect(texts(chartAxis("pressure", 0, 400, "metric-head", 5))).toEqual(["m", "0", "10", "20", "30", "40", "50"]);
});

test("its unit is the one its largest number is written in", () => {
  expect(texts(chartAxis("flow", 0, 3400, "metric", 4))).toEqual(["m³/h", "0", "1", "2", "3", "4"]);
  expect(texts(chartAxis("flow", 0, 340, "metric", 4))).toEqual(["L/h", "0", "100", "200", "300", "400"]);
  expect(texts(chartAxis("flow", 0, 3.4, "us", 4))).toEqual(["gal/h", "0.0", "0.5", "1.0"]);
});

test("it spans what is shown and gives it back in SI", () => {
  const axis = chartAxis("pressure", -20, 350, "us", 6);
  expect(axis.from).toBeLessThanOrEqual(-20);
  expect(axis.to).toBeGreaterThanOrEqual(350);
  expect(axis.ticks[0]?.value).toBeCloseTo(axis.from, 9);
  expect(axis.ticks.at(-1)?.value).toBeCloseTo(axis.to, 9);
});

test("nothing to span is one step", () => {
  expect(texts(chartAxis("flow", 0, 0, "metric", 4)).length).toBe(3);
});
