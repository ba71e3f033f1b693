import type { Lengths } from "./lengths.ts";
import type { PackedCoil } from "./packing.ts";

/** How often coils are ordered and pieces of one length exchanged: it settles at once or twice. */
const rounds = 4;

/**
 * Which run comes from which coil, as an order of work: coils in the order of the rows they serve, and pieces of one length handed out so
 * that a coil serves rows near each other. Runs are numbered in the order of the rows.
 */
export function ordered(
  coils: readonly PackedCoil[],
  lengths: Lengths,
): readonly { readonly coil: PackedCoil; readonly runs: readonly number[] }[] {
  let inOrder = coils.map((coil) => ({ coil, holds: lengthsIn(coil.count), runs: noRuns }));
  for (let round = 0; round < rounds; round++) {
    const next = lengths.pieces.map(() => 0);
    inOrder = inOrder
      .map((each) => {
        const runs = each.holds.flatMap(([i, count]) => {
          const from = Number(next[i]);
          next[i] = from + count;
          return lengths.pieces[i]?.slice(from, from + count) ?? [];
        });
        return { ...each, runs: runs.sort((a, b) => a - b) };
      })
      .sort((a, b) => middle(a.runs) - middle(b.runs) || Number(a.runs[0]) - Number(b.runs[0]));
  }
  return inOrder;
}

const noRuns: readonly number[] = [];

function lengthsIn(count: Int32Array): readonly (readonly [i: number, count: number])[] {
  const holds: (readonly [number, number])[] = [];
  for (let i = 0; i < count.length; i++) if (Number(count[i]) > 0) holds.push([i, Number(count[i])]);
  return holds;
}

/** Middle of the rows a coil serves, as places in the list of runs. */
export function middle(runs: readonly number[]): number {
  return runs.reduce((sum, run) => sum + run, 0) / Math.max(1, runs.length);
}
