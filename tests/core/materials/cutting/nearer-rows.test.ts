import { expect, it } from "vitest";
import { nearerRows } from "../../../../src/core/materials/cutting/nearer-rows.ts";

it("two coils exchange runs of unlike length that both have room for, so that each serves rows near each other", () => {
  // Run 5 lies in the coil of the first rows, run 1 in the coil of the last.
  const taken_m = [50, 52, 50, 50, 50, 50];
  const loads = (room_m: number) => [
    { runs: [0, 2, 5], room_m },
    { runs: [1, 3, 4], room_m: 0 },
  ];
  expect(nearerRows(loads(2), taken_m)).toEqual([
    [0, 1, 2],
    [3, 4, 5],
  ]);
  // Without room for the longer run only runs of one length change places.
  expect(nearerRows(loads(1), taken_m)[0]).not.toContain(1);
});
