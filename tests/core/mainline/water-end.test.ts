import { expect, test } from "vitest";
import { nearerEnds } from "../../../src/core/mainline/water-end.ts";
import { lonLat, planePoint } from "../../../src/core/plane/coordinate.ts";
import { createFrame } from "../../../src/core/plane/frame.ts";
import { createRows } from "../../support/create-rows.ts";

const frame = createFrame(lonLat(-122.5, 38.3));
const rows = createRows({ length_m: 100 }, { length_m: 100 });

function sourceAt(x_m: number, y_m: number) {
  return { key: "well", name: null, at: frame.toLonLat(planePoint(x_m, y_m)) };
}

test("a well beyond the far ends of the rows makes those the water ends", () => {
  expect(nearerEnds(rows, frame, [sourceAt(1, 130)])).toEqual(["end", "end"]);
});

test("a well beside the starts makes those the water ends", () => {
  expect(nearerEnds(rows, frame, [sourceAt(-20, 10)])).toEqual(["start", "start"]);
});

test("without a known source every row takes its water at the start", () => {
  expect(nearerEnds(rows, frame, [])).toEqual(["start", "start"]);
});

test("of two sources each row takes the nearer one", () => {
  const apart = createRows({ length_m: 100 }, ...Array.from({ length: 40 }, () => ({ length_m: 100 })));
  const waterEnd = nearerEnds(apart, frame, [sourceAt(-10, -5), sourceAt(130, 105)]);
  expect(waterEnd[0]).toBe("start");
  expect(waterEnd[40]).toBe("end");
});
