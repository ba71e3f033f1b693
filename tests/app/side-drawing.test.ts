import { expect, test } from "vitest";
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

test("the list names everything in the row in the order it is met", () => {
  const side = createSide();
  const lines = stationsOf(side);
  const anchors = 2;
  expect(lines).toHaveLength(side.posts.length + side.vines.length + anchors);
  const stations = lines.map(({ station_m }) => station_m);
  expect(stations).toEqual([...stations].sort((a, b) => a - b));
  expect(lines[0]?.what).toBe("anchor, start of the row");
  expect(lines[0]?.station_m).toBeLessThan(0);
  expect(lines[1]?.what).toBe("end post, start of the row, water comes in");
  expect(lines[2]?.what).toBe("vine 1, stake, emitter");
  expect(lines.at(-2)?.what).toBe("end post, end of the row");
  expect(lines.at(-1)?.what).toBe("anchor, end of the row");
});

test("lengths to buy by are whole metres or feet, and never coarser than ten metres", () => {
  expect(wholeLength(1386.4, "metric")).toBe("1,386 m");
  expect(wholeLength(37_132, "metric")).toBe("37.13 km");
  expect(wholeLength(1386.4, "us")).toBe("4,549 ft");
  expect(wholeLength(37_132, "us")).toBe("23.07 mi");
});
