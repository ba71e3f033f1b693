import type { LineIntervals } from "./lines.ts";
import { snap_m } from "./tolerance.ts";

/** Intervals built line by line. */
interface Draft {
  readonly start: Int32Array;
  readonly u: Float64Array;
  readonly cause: Int32Array;
  n: number;
}

function draft(lineCount: number, room: number): Draft {
  return { start: new Int32Array(lineCount + 1), u: new Float64Array(2 * room), cause: new Int32Array(2 * room), n: 0 };
}

function add(to: Draft, from_m: number, to_m: number, fromCause: number, toCause: number): void {
  if (to_m - from_m <= snap_m) return;
  to.u[2 * to.n] = from_m;
  to.u[2 * to.n + 1] = to_m;
  to.cause[2 * to.n] = fromCause;
  to.cause[2 * to.n + 1] = toCause;
  to.n++;
}

function finished({ start, u, cause, n }: Draft): LineIntervals {
  return { start, u: u.subarray(0, 2 * n), cause: cause.subarray(0, 2 * n) };
}

function lineCount(of: LineIntervals): number {
  return of.start.length - 1;
}

/** What of `whole` lies outside `cuts`; a piece that ends at a cut takes the cut's cause there. Pieces under a micrometre go. */
export function subtracted(whole: LineIntervals, cuts: LineIntervals): LineIntervals {
  const count = lineCount(whole);
  const left = draft(count, whole.u.length / 2 + cuts.u.length / 2);
  for (let i = 0; i < count; i++) {
    const cutEnd = Number(cuts.start[i + 1]);
    let c = Number(cuts.start[i]);
    for (let k = Number(whole.start[i]); k < Number(whole.start[i + 1]); k++) {
      let from = Number(whole.u[2 * k]);
      let fromCause = Number(whole.cause[2 * k]);
      const to = Number(whole.u[2 * k + 1]);
      while (c < cutEnd && Number(cuts.u[2 * c + 1]) <= from) c++;
      let n = c;
      while (n < cutEnd && Number(cuts.u[2 * n]) < to) {
        add(left, from, Number(cuts.u[2 * n]), fromCause, Number(cuts.cause[2 * n]));
        from = Number(cuts.u[2 * n + 1]);
        fromCause = Number(cuts.cause[2 * n + 1]);
        n++;
      }
      add(left, from, to, fromCause, Number(whole.cause[2 * k + 1]));
    }
    left.start[i + 1] = left.n;
  }
  return finished(left);
}

/** What lies in both; where the ends coincide the second's cause stands. */
export function intersected(a: LineIntervals, b: LineIntervals): LineIntervals {
  const count = lineCount(a);
  const both = draft(count, a.u.length / 2 + b.u.length / 2);
  for (let i = 0; i < count; i++) {
    let p = Number(a.start[i]);
    let q = Number(b.start[i]);
    while (p < Number(a.start[i + 1]) && q < Number(b.start[i + 1])) {
      const aFrom = Number(a.u[2 * p]);
      const aTo = Number(a.u[2 * p + 1]);
      const bFrom = Number(b.u[2 * q]);
      const bTo = Number(b.u[2 * q + 1]);
      add(
        both,
        Math.max(aFrom, bFrom),
        Math.min(aTo, bTo),
        Number(aFrom > bFrom ? a.cause[2 * p] : b.cause[2 * q]),
        Number(aTo < bTo ? a.cause[2 * p + 1] : b.cause[2 * q + 1]),
      );
      if (aTo < bTo) p++;
      else q++;
    }
    both.start[i + 1] = both.n;
  }
  return finished(both);
}

/** Every interval shorter by `by_m` at both ends; those that vanish go. */
export function shortened(whole: LineIntervals, by_m: number): LineIntervals {
  if (by_m === 0) return whole;
  const count = lineCount(whole);
  const rest = draft(count, whole.u.length / 2);
  for (let i = 0; i < count; i++) {
    for (let k = Number(whole.start[i]); k < Number(whole.start[i + 1]); k++) {
      add(
        rest,
        Number(whole.u[2 * k]) + by_m,
        Number(whole.u[2 * k + 1]) - by_m,
        Number(whole.cause[2 * k]),
        Number(whole.cause[2 * k + 1]),
      );
    }
    rest.start[i + 1] = rest.n;
  }
  return finished(rest);
}

/** The same intervals with each cause looked up in a table. */
export function withCauses(of: LineIntervals, table: Int32Array): LineIntervals {
  return { start: of.start, u: of.u, cause: of.cause.map((cause) => Number(table[cause])) };
}

/** No interval on any of the lines. */
export function nothing(lineCount: number): LineIntervals {
  return { start: new Int32Array(lineCount + 1), u: new Float64Array(0), cause: new Int32Array(0) };
}
