import { expect, test } from "vitest";
import { drip } from "../../../src/core/drip/drip.ts";
import { createDripSettings } from "../../support/create-project.ts";
import { createBlock, createRows } from "../../support/create-rows.ts";

const length_digits = 9;

test("the lateral runs from the end post at the water end past the last vine by the overrun", () => {
  const rows = createRows({ length_m: 100, vines: 50 });
  expect(drip(rows, { waterEnd: ["start"] }, [createBlock()]).rows[0]?.lateral_m).toBeCloseTo(99.6, length_digits);
  expect(drip(rows, { waterEnd: ["end"] }, [createBlock()]).rows[0]?.lateral_m).toBeCloseTo(99.6, length_digits);
});

test("vines that stand nearer one end make the lateral depend on the water end", () => {
  const level = createRows({ length_m: 100, vines: 3 });
  const rows = { ...level, vines: { ...level.vines, station_m: Float64Array.of(1, 3, 5) } };
  expect(drip(rows, { waterEnd: ["start"] }, [createBlock()]).rows[0]?.lateral_m).toBeCloseTo(5.6, length_digits);
  expect(drip(rows, { waterEnd: ["end"] }, [createBlock()]).rows[0]?.lateral_m).toBeCloseTo(99.6, length_digits);
});

test("on a slope the hose follows the ground", () => {
  const rows = createRows({ length_m: 100, groundLength_m: 102, vines: 50 });
  expect(drip(rows, { waterEnd: ["start"] }, [createBlock()]).rows[0]?.lateral_m).toBeCloseTo(
    99 * 1.02 + 0.6,
    length_digits,
  );
});

test("a row without vines has no hose, no clips and no emitters", () => {
  const result = drip(createRows({ length_m: 30 }), { waterEnd: ["start"] }, [createBlock()]);
  expect(result.rows).toEqual([{ waterEnd: "start", lateral_m: 0, emitters: 0, hoseClips: 0, flow_lph: 0 }]);
});

test("a single vine takes two hose clips, ten vines take eleven", () => {
  const rows = createRows({ length_m: 30, vines: 1 }, { length_m: 30, vines: 10 });
  const result = drip(rows, { waterEnd: ["start", "start"] }, [createBlock()]);
  expect(result.rows.map((row) => row.hoseClips)).toEqual([2, 11]);
});

test("two emitters of 1.5 L/h a vine give their flow for every row and for all", () => {
  const block = createBlock({ drip: createDripSettings({ emitterFlow_lph: 1.5, emittersPerVine: 2, overrun_m: 0 }) });
  const rows = createRows({ length_m: 30, vines: 10 }, { length_m: 30, vines: 4 });
  const result = drip(rows, { waterEnd: ["start", "start"] }, [block]);
  expect(result.rows.map((row) => [row.emitters, row.flow_lph])).toEqual([
    [20, 30],
    [8, 12],
  ]);
  expect([result.emitters, result.flow_lph]).toEqual([28, 42]);
  expect(result.lateral_m).toBeCloseTo(58, length_digits);
});

test("hose is longer by its slack, overrun and all", () => {
  const block = createBlock({ drip: createDripSettings({ overrun_m: 1, slack_ratio: 0.02 }) });
  const [row] = drip(createRows({ length_m: 101, vines: 50 }), { waterEnd: ["start"] }, [block]).rows;
  expect(row?.lateral_m).toBeCloseTo(101 * 1.02, length_digits);
});

test("built-in emitters are counted along the hose, whatever the vines", () => {
  const block = createBlock({
    drip: createDripSettings({ emitterPlacing: "in-line", emitterSpacing_m: 0.5, emitterFlow_lph: 2, overrun_m: 0 }),
  });
  const [row] = drip(createRows({ length_m: 21, vines: 2 }), { waterEnd: ["start"] }, [block]).rows;
  expect(row).toMatchObject({ emitters: 40, flow_lph: 80 });
});
