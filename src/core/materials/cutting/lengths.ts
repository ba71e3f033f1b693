/** Pieces by length, longest first: what packing looks at, since pieces of one length can stand in for each other. */
export interface Lengths {
  /** What each takes off a coil, metres, descending. */
  readonly taken_m: Float64Array;
  readonly count: Int32Array;
  /** Which of the given pieces have this length. */
  readonly pieces: readonly (readonly number[])[];
}

/** Lengths closer than this are one. */
const same_m = 1e-9;

/** The pieces, each given by what it takes off a coil, told apart by length. */
export function lengthsOf(taken_m: readonly number[]): Lengths {
  const order = taken_m.map((_, i) => i).sort((a, b) => Number(taken_m[b]) - Number(taken_m[a]) || a - b);
  const groups: { readonly taken_m: number; readonly pieces: number[] }[] = [];
  for (const i of order) {
    const last = groups.at(-1);
    const length_m = Number(taken_m[i]);
    if (last !== undefined && last.taken_m - length_m < same_m) last.pieces.push(i);
    else groups.push({ taken_m: length_m, pieces: [i] });
  }
  return {
    taken_m: Float64Array.from(groups, (group) => group.taken_m),
    count: Int32Array.from(groups, (group) => group.pieces.length),
    pieces: groups.map((group) => group.pieces),
  };
}
