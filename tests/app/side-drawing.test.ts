import { expect, test } from "vitest";
import { sideScale } from "../../src/app/side-view/side-scale.ts";
import { stationsOf } from "../../src/app/side-view/stations.ts";
import { wholeLength } from "../../src/app/strip/whole-length.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { type RowSide, rowSide } from "../../src/core/sheets/row-side.ts";
import { readSample } from "../support/sample-plans.ts";

function createSide(row = "5"): RowSide {
  const side = rowSide(createPlanner().plan(readSample("acre-with-notch")), row);
  if (!side) throw new Error(`there is no row ${row}`);
  return side;
}

test("at 1:50 a metre is 1/50 of a metre on a screen of 96 pixels an inch, along and up alike", () => {
  const { x, y, raised } = sideScale(createSide(), 50, 800);
  const metre_px = 96 / 0.0254 / 50;
  expect(x(1) - x(0)).toBeCloseTo(metre_px, 9);
  expect(y(0) - y(1)).toBeCloseTo(metre_px, 9);
  expect(raised).toBeCloseTo(1, 9);
});

test("the whole row fits its room, and how much heights are raised is told", () => {
  const side = createSide();
  const { x, y, width, raised } = sideScale(side, "whole", 800);
  expect(width).toBeCloseTo(800, 6);
  expect(x(side.length_m)).toBeLessThan(800);
  expect(raised).toBeCloseTo((y(0) - y(1)) / (x(1) - x(0)), 9);
});

test("the list names everything in the row in the order it is met", () => {
  const side = createSide();
  const lines = stationsOf(side);
  expect(lines).toHaveLength(side.posts.length + side.vines.length);
  const stations = lines.map(({ station_m }) => station_m);
  expect(stations).toEqual([...stations].sort((a, b) => a - b));
  expect(lines[0]?.what).toBe("end post, start of the row, water comes in");
  expect(lines[1]?.what).toBe("vine 1, stake, emitter");
  expect(lines.at(-1)?.what).toBe("end post, end of the row");
});

test("lengths to buy by are whole metres or feet, and never coarser than ten metres", () => {
  expect(wholeLength(1386.4, "metric")).toBe("1,386 m");
  expect(wholeLength(37_132, "metric")).toBe("37.13 km");
  expect(wholeLength(1386.4, "us")).toBe("4,549 ft");
  expect(wholeLength(37_132, "us")).toBe("23.07 mi");
});
