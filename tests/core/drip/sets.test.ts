import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type SetUnit, setUnits } from "../../../src/core/drip/set-units.ts";
import { evenSets, leastSets } from "../../../src/core/drip/sets.ts";
import { createWateringJob } from "../../support/create-watering-job.ts";

const seed = 20261126;

function createUnits(flows_lps: readonly number[], more: (i: number) => Partial<SetUnit> = () => ({})): SetUnit[] {
  return flows_lps.map((flow_lps, i) => ({ laterals: [i], flow_lps, border: 0, pin: 0, ...more(i) }));
}

const needsOf = (count: number) => Array.from({ length: count }, () => ({ flow_lps: 1 }));

describe("what sets are made of", () => {
  it("keeps the pieces of a row line together", () => {
    const job = createWateringJob({ rows: 4 });
    const laterals = { ...job.laterals, line: Int32Array.from([1, 1, 2, 3]) };
    const units = setUnits({ ...job, laterals }, needsOf(4), 10);
    expect(units.map((unit) => unit.laterals)).toEqual([[0, 1], [2], [3]]);
  });

  it("parts the pieces of a line that is more than a set may take", () => {
    const job = createWateringJob({ rows: 3 });
    const laterals = { ...job.laterals, line: Int32Array.from([1, 1, 1]) };
    const units = setUnits({ ...job, laterals }, needsOf(3), 2);
    expect(units.map((unit) => unit.laterals)).toEqual([[0, 1], [2]]);
  });

  it("leaves out rows that no trench gets to", () => {
    const job = createWateringJob({ rows: 4, unreached: [1] });
    expect(setUnits(job, needsOf(4), 10).flatMap((unit) => unit.laterals)).toEqual([0, 2, 3]);
  });
});

describe("sets", () => {
  it("are the fewest, and even: four rows of 1 L/s at 2 L/s make two pairs", () => {
    const units = createUnits([1, 1, 1, 1]);
    expect(leastSets(units, 2)).toBe(2);
    expect(evenSets(units, 2, 2)).toEqual([
      [0, 1],
      [2, 3],
    ]);
  });

  it("of long and short rows are cut where they come out most even", () => {
    expect(evenSets(createUnits([1, 1, 2, 4, 4, 4]), 2, 9)).toEqual([
      [0, 1, 2, 3],
      [4, 5],
    ]);
  });

  it("do not cross from one block into another when they follow blocks", () => {
    const job = createWateringJob({ rows: 3, blocks: 2, sets: { follow: "blocks" } });
    const units = setUnits(job, needsOf(6), 100);
    expect(leastSets(units, 100)).toBe(2);
    expect(evenSets(units, 2, 100)).toEqual([
      [0, 1, 2],
      [3, 4, 5],
    ]);
    expect(evenSets(units, 1, 100)).toBeNull();
  });

  it("do not cross from one variety into another when they follow varieties", () => {
    const job = createWateringJob({ rows: 4, varieties: [7, 8, 8, 8], sets: { follow: "varieties" } });
    expect(evenSets(setUnits(job, needsOf(4), 100), 2, 100)).toEqual([[0], [1, 2, 3]]);
  });

  it("hold the rows that the person pinned", () => {
    const job = createWateringJob({ rows: 4, sets: { pins: [{ block: null, fromRow: 3, toRow: 4, set: 1 }] } });
    const units = setUnits(job, needsOf(4), 100);
    expect(evenSets(units, 2, 100)).toEqual([
      [2, 3],
      [0, 1],
    ]);
    expect(evenSets(units, 1, 100)).toEqual([[0, 1, 2, 3]]);
  });

  it("are at least as many as the highest number pinned", () => {
    const job = createWateringJob({ rows: 4, sets: { pins: [{ block: "1", fromRow: 1, toRow: 1, set: 3 }] } });
    expect(leastSets(setUnits(job, needsOf(4), 100), 100)).toBe(3);
  });

  it("take a row that is over the supply by itself alone", () => {
    expect(evenSets(createUnits([1, 5, 1]), 3, 2)).toEqual([[0], [1], [2]]);
    expect(evenSets(createUnits([1, 5, 1]), 2, 2)).toBeNull();
  });

  it("hold every row once, side by side, none over the supply, and never fewer than fit", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 14 }),
        fc.integer({ min: 9, max: 30 }),
        (flows, most) => {
          const units = createUnits(flows);
          const count = leastSets(units, most);
          const sets = evenSets(units, count, most);
          expect(sets?.flat()).toEqual(flows.map((_, i) => i));
          for (const set of sets ?? []) {
            expect(set.length).toBeGreaterThan(0);
            expect(set.reduce((sum, i) => sum + Number(flows[i]), 0)).toBeLessThanOrEqual(most);
          }
          expect(count === 1 || evenSets(units, count - 1, most) === null).toBe(true);
        },
      ),
      { seed, numRuns: 200 },
    );
  });

  it("are as even as any way to cut the rows", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 4, maxLength: 9 }), (flows) => {
        const sums = (evenSets(createUnits(flows), 3, 1000) ?? []).map((set) =>
          set.reduce((sum, i) => sum + Number(flows[i]), 0),
        );
        expect(squares(sums)).toBe(leastSquares(flows));
      }),
      { seed, numRuns: 200 },
    );
  });
});

function squares(sums: readonly number[]): number {
  return sums.reduce((sum, each) => sum + each ** 2, 0);
}

/** Three parts, tried all ways: the sum of squares is least where that of the distances from the mean is. */
function leastSquares(flows: readonly number[]): number {
  const of = (from: number, to: number) => flows.slice(from, to).reduce((sum, each) => sum + each, 0);
  let least = Infinity;
  for (let a = 1; a < flows.length - 1; a++) {
    for (let b = a + 1; b < flows.length; b++) {
      least = Math.min(least, squares([of(0, a), of(a, b), of(b, flows.length)]));
    }
  }
  return least;
}
