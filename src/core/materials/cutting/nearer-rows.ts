import { middle } from "./order-of-work.ts";
import { dust_m } from "./packing.ts";

/** A coil as it will be cut: its runs, in the order of the rows, and what it could still give. */
export interface Load {
  readonly runs: readonly number[];
  readonly room_m: number;
}

/** Runs up to which exchanging is tried, and how often: more is no longer quick. */
const mostRuns = 400;
const rounds = 4;

/**
 * The same coils with runs of unlike length exchanged between two of them where both still hold what they get and each run comes nearer to
 * the middle of the rows that its coil serves: so that walking is short. No coil is added or emptied.
 */
export function nearerRows(loads: readonly Load[], taken_m: readonly number[]): readonly (readonly number[])[] {
  const coils = loads.map(({ runs, room_m }) => ({ runs: [...runs], room_m }));
  if (taken_m.length > mostRuns) return coils.map(({ runs }) => runs);
  for (let round = 0; round < rounds; round++) {
    const middles = coils.map(({ runs }) => middle(runs));
    let isChanged = false;
    for (const [x, one] of coils.entries()) {
      for (const [y, other] of coils.entries()) {
        if (y <= x) continue;
        for (let i = 0; i < one.runs.length; i++) {
          for (let j = 0; j < other.runs.length; j++) {
            const [a, b] = [Number(one.runs[i]), Number(other.runs[j])];
            const [here, there] = [Number(middles[x]), Number(middles[y])];
            const gain = Math.abs(a - here) + Math.abs(b - there) - Math.abs(b - here) - Math.abs(a - there);
            const more_m = Number(taken_m[b]) - Number(taken_m[a]);
            if (gain <= 1e-9 || more_m > one.room_m + dust_m || -more_m > other.room_m + dust_m) continue;
            one.runs[i] = b;
            other.runs[j] = a;
            one.room_m -= more_m;
            other.room_m += more_m;
            isChanged = true;
          }
        }
      }
    }
    if (!isChanged) break;
  }
  return coils.map(({ runs }) => runs.sort((a, b) => a - b));
}
