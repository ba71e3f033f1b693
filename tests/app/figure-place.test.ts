import { expect, test } from "vitest";
import { besideOf } from "../../src/app/figure/place-beside.ts";

const phone = { width: 390, height: 844 };
const box = { width: 344, height: 200 };

test("an account stands under its number where there is room", () => {
  expect(besideOf({ left: 100, top: 300, width: 60, height: 24 }, box, phone)).toEqual({ left: 8, top: 330 });
});

test("near the bottom it stands over it", () => {
  expect(besideOf({ left: 300, top: 800, width: 60, height: 24 }, box, phone)).toEqual({ left: 38, top: 594 });
});

test("in a low window it stays within, even if it lies on its number", () => {
  const low = { width: 640, height: 220 };
  const place = besideOf({ left: 300, top: 100, width: 60, height: 24 }, box, low);
  expect(place.top).toBeGreaterThanOrEqual(8);
  expect(place.top + box.height).toBeLessThanOrEqual(low.height - 8);
});
