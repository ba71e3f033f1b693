import { bestFill, byWorth } from "./best-fill.ts";
import { dust_m, type PackingJob } from "./packing.ts";

/** What fractional coils would cost at least, and what a piece of each length is worth in that. */
export interface LinearBound {
  readonly least: number;
  readonly value: Float64Array;
}

interface Column {
  readonly cost: number;
  readonly rows: Float64Array;
}

/**
 * The linear program of the cutting-stock problem by column generation (Gilmore and Gomory): rows are the lengths and the coils on hand,
 * columns are ways to fill a coil, found by a knapsack. The bound is proven at every step (Farley), also where the search is cut short:
 * worth of all pieces, scaled so that no fill is worth more than its coil costs, less what coils on hand are worth. Stops as soon as the
 * bound says what is asked for.
 */
export function linearBound(
  job: PackingJob,
  enough: (least: number) => boolean,
  rounds: number,
  stepsEach: number,
): LinearBound {
  const { taken_m, count, onHand_m, sizes } = job;
  const m = taken_m.length;
  const coils = [...new Set(onHand_m)].map((usable_m) => ({
    usable_m,
    count: onHand_m.filter((each) => each === usable_m).length,
  }));
  const size = m + coils.length;
  const basis = firstBasis(job, coils.length);
  const inverse = new Float64Array(size * size);
  const solution = new Float64Array(size);
  for (let r = 0; r < size; r++) {
    const own = Number(basis[r]?.rows[r]);
    inverse[r * size + r] = 1 / own;
    solution[r] = (r < m ? Number(count[r]) : Number(coils[r - m]?.count)) / own;
  }
  let least = 0;
  let bestValue = new Float64Array(m);
  for (let round = 0; round < rounds; round++) {
    const price = new Float64Array(size);
    for (let r = 0; r < size; r++) {
      const cost = Number(basis[r]?.cost);
      if (cost === 0) continue;
      for (let c = 0; c < size; c++) price[c] = Number(price[c]) + cost * Number(inverse[r * size + c]);
    }
    const surplus = price.findIndex((each, i) => i < m && each < -1e-10);
    const value = price.slice(0, m).map((each) => Math.max(0, each));
    const order = byWorth(taken_m, value);
    let entering: Column | null = null;
    let gain = 1e-9;
    let scale = 0;
    let fills = 0;
    for (const { usable_m, cost } of sizes) {
      const fill = bestFill(taken_m, value, order, count, usable_m, stepsEach);
      scale = Math.max(scale, fill.most / cost);
      if (fill.value - cost > gain * cost) {
        gain = fill.value / cost - 1;
        entering = { cost, rows: column(fill.count, size, null) };
      }
    }
    for (const [k, coil] of coils.entries()) {
      const fill = bestFill(taken_m, value, order, count, coil.usable_m, stepsEach);
      fills += coil.count * fill.most;
      const reduced = fill.value + Number(price[m + k]);
      if (reduced > 1e-9 && reduced > gain) {
        gain = reduced;
        entering = { cost: 0, rows: column(fill.count, size, m + k) };
      }
    }
    let worth = -fills;
    for (let i = 0; i < m; i++) worth += Number(value[i]) * Number(count[i]);
    const bound = scale > 0 ? worth / scale : 0;
    if (bound > least) {
      least = bound;
      bestValue = value;
    }
    if (enough(least)) break;
    if (surplus !== -1 && entering === null) entering = { cost: 0, rows: unit(size, surplus, -1) };
    const free = coils.findIndex((_, k) => Number(price[m + k]) > 1e-10);
    if (free !== -1 && entering === null) entering = { cost: 0, rows: unit(size, m + free, 1) };
    if (entering === null) break;
    pivot(entering, basis, inverse, solution, size);
  }
  return { least, value: bestValue };
}

/** For every length the coil of the lowest cost a piece, filled with that length alone; for coils on hand that they stay unused. */
function firstBasis({ taken_m, count, sizes }: PackingJob, onHand: number): Column[] {
  const size = taken_m.length + onHand;
  const basis: Column[] = [];
  for (let i = 0; i < taken_m.length; i++) {
    let best: { readonly cost: number; readonly fits: number } | null = null;
    for (const { usable_m, cost } of sizes) {
      const fits = Math.min(Number(count[i]), Math.floor((usable_m + dust_m) / Number(taken_m[i])));
      if (fits > 0 && (best === null || cost / fits < best.cost / best.fits)) best = { cost, fits };
    }
    if (best === null) throw new Error("every piece fits into some coil");
    basis.push({ cost: best.cost, rows: unit(size, i, best.fits) });
  }
  for (let k = 0; k < onHand; k++) basis.push({ cost: 0, rows: unit(size, taken_m.length + k, 1) });
  return basis;
}

function unit(size: number, at: number, value: number): Float64Array {
  const rows = new Float64Array(size);
  rows[at] = value;
  return rows;
}

function column(count: Int32Array, size: number, onHandRow: number | null): Float64Array {
  const rows = new Float64Array(size);
  rows.set(count);
  if (onHandRow !== null) rows[onHandRow] = 1;
  return rows;
}

/** Takes a column into the basis in place of the one it drives to nothing first. */
function pivot(entering: Column, basis: Column[], inverse: Float64Array, solution: Float64Array, size: number): void {
  const direction = new Float64Array(size);
  for (let r = 0; r < size; r++) {
    let sum = 0;
    for (let c = 0; c < size; c++) {
      const row = Number(entering.rows[c]);
      if (row !== 0) sum += Number(inverse[r * size + c]) * row;
    }
    direction[r] = sum;
  }
  let leaving = -1;
  let least = Infinity;
  for (let r = 0; r < size; r++) {
    if (Number(direction[r]) <= 1e-9) continue;
    const ratio = Math.max(0, Number(solution[r])) / Number(direction[r]);
    if (ratio < least - 1e-12) [least, leaving] = [ratio, r];
  }
  if (leaving === -1) return;
  const own = Number(direction[leaving]);
  for (let c = 0; c < size; c++) inverse[leaving * size + c] = Number(inverse[leaving * size + c]) / own;
  for (let r = 0; r < size; r++) {
    const factor = Number(direction[r]);
    if (r === leaving || factor === 0) continue;
    for (let c = 0; c < size; c++) {
      inverse[r * size + c] = Number(inverse[r * size + c]) - factor * Number(inverse[leaving * size + c]);
    }
    solution[r] = Number(solution[r]) - factor * least;
  }
  solution[leaving] = least;
  basis[leaving] = entering;
}
