import { describe, expect, it } from "vitest";
import { flatGround } from "../../src/core/ground/elevation.ts";
import { cutCoils } from "../../src/core/materials/cutting/cut-coils.ts";
import { si } from "../../src/core/project/si.ts";
import { trellis } from "../../src/core/trellis/lay-trellis.ts";
import { createWire } from "../support/create-project.ts";
import { createBlock, createRows } from "../support/create-rows.ts";
import { type Source, titled } from "./source.ts";

/* Calculation handbook 2.6: wire of a run and what coils give. Tie-off of 0.75 m: common practice, no source. */

const arithmetic: Source = { computed: "arithmetic; tie-off 0.75 m common practice" };
const feet = (count: number) => si("length", `${count} ft`);
const exact_m = 1e-9;
const sum_m = 1e-6;
const gripper = { kind: "gripper", allowance_m: 0.75 } as const;

/** Six wires of one article on flat ground between upright posts. */
function sixWires(...lengths_m: readonly number[]) {
  const wires = [createWire({ count: 6, tieOffStart: gripper, tieOffEnd: gripper })];
  const block = createBlock({ trellis: { ...createBlock().trellis, wires } });
  const outcome = trellis(createRows(...lengths_m.map((length_m) => ({ length_m }))), flatGround, [block]);
  if (!outcome.ok) throw new Error("the trellis is not laid");
  return outcome.value;
}

/** Cut without reserve, slop or joins, as the checks do. */
function cutFrom(coil_m: number, run_m: number, runs: number) {
  const { noJoins } = cutCoils({
    article: "wire-13ga",
    runs: Array.from({ length: runs }, (_, row) => ({ row, wire: 0, copy: 0, length_m: run_m, joinsAt_m: [] })),
    onHand_m: [],
    sizes: [{ length_m: coil_m, price: null, mass_kg: null }],
    tooHeavy: [],
    reserve_ratio: 0,
    reserve_m: 0,
    slop_m: 0,
    joinLength_m: 0,
    joinPrice: null,
  });
  if (noJoins === null) throw new Error("nothing can be cut");
  return noJoins;
}

describe("2.6 wire of a run", () => {
  it(titled("2-34 a row of 91.44 m takes 92.94 m a wire and 557.64 m for six", arithmetic), () => {
    const [row] = sixWires(91.44).rows;
    expect(Math.abs(Number(row?.runs[0]?.length_m) - 92.94)).toBeLessThan(exact_m);
    expect(Math.abs(Number(row?.wire_m.fruiting) - 557.64)).toBeLessThan(exact_m);
  });

  it(titled("2-35 rows of 91.44, 88.2, 85.0 and 40.3 m with six wires take 1865.64 m", arithmetic), () => {
    const { wire_m, wires } = sixWires(91.44, 88.2, 85, 40.3);
    expect(Math.abs(Number(wire_m.fruiting) - 1865.64)).toBeLessThan(sum_m);
    expect(wires.map(({ runs }) => runs)).toEqual([24]);
  });
});

describe("2.6 what a coil gives", () => {
  it(titled("2-36 a coil of 1219.2 m gives 13 runs of 92.94 m and 10.98 m are left", arithmetic), () => {
    const { coils, boughtCount } = cutFrom(1219.2, 92.94, 13);
    expect(boughtCount).toBe(1);
    expect(Math.abs(Number(coils[0]?.left_m) - 10.98)).toBeLessThan(sum_m);
    expect(cutFrom(1219.2, 92.94, 14).boughtCount).toBe(2);
  });

  it(titled("2-37 the same coil gives 3 runs of 311.5 m and 284.70 m are left", arithmetic), () => {
    const { coils, boughtCount } = cutFrom(1219.2, 311.5, 3);
    expect(boughtCount).toBe(1);
    expect(Math.abs(Number(coils[0]?.left_m) - 284.7)).toBeLessThan(sum_m);
    expect(cutFrom(1219.2, 311.5, 4).boughtCount).toBe(2);
  });

  it(
    titled("2-38 11 rows of 448 ft with two wires take 3 coils of 4000 ft, as their length alone says", {
      computed: "arithmetic; layout of a university extension article on trellis materials, as the handbook quotes it",
    }),
    () => {
      const { boughtCount, coils } = cutFrom(feet(4000), feet(448), 22);
      expect(Math.ceil((22 * 448) / 4000)).toBe(3);
      expect(boughtCount).toBe(3);
      expect(Math.max(...coils.map(({ cuts }) => cuts.length))).toBe(8);
    },
  );
});
