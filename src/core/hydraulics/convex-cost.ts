/**
 * A lower bound of what pipes below a place cost by the head that is there, as if a pipe could be of two sizes: convex, straight between corners.
 * Nothing is served below `from_m`; from there on each metre of head saves the rate of its stretch, rates falling, none past the last.
 */
export interface ConvexCost {
  readonly from_m: number;
  readonly cost: number;
  readonly width_m: Float64Array;
  readonly rate: Float64Array;
}

const none = new Float64Array();

/** Of a place with no pipe below that is to have a head. */
export function openCost(wanted_m: number): ConvexCost {
  return { from_m: wanted_m, cost: 0, width_m: none, rate: none };
}

/** Seen from before a pipe, whose own way of saving by losing more head is convex too: stretches of both, the ones that save most first. */
export function costBefore(below: ConvexCost, pipe: ConvexCost): ConvexCost {
  if (below.from_m === -Infinity) {
    const cheapest = pipe.width_m.reduce((cost, each_m, i) => cost - each_m * Number(pipe.rate[i]), pipe.cost);
    return { ...openCost(-Infinity), cost: below.cost + cheapest };
  }
  const n = below.rate.length + pipe.rate.length;
  const width_m = new Float64Array(n);
  const rate = new Float64Array(n);
  let i = 0;
  let k = 0;
  for (let at = 0; at < n; at++) {
    const isPipe = i >= below.rate.length || (k < pipe.rate.length && Number(pipe.rate[k]) >= Number(below.rate[i]));
    width_m[at] = Number(isPipe ? pipe.width_m[k] : below.width_m[i]);
    rate[at] = Number(isPipe ? pipe.rate[k] : below.rate[i]);
    if (isPipe) k++;
    else i++;
  }
  return { from_m: below.from_m + pipe.from_m, cost: below.cost + pipe.cost, width_m, rate };
}

/** Of two branches from one place: both costs at the same head. */
export function costTogether(one: ConvexCost, other: ConvexCost): ConvexCost {
  const from_m = Math.max(one.from_m, other.from_m);
  const a = costFrom(one, from_m);
  const b = costFrom(other, from_m);
  const width_m: number[] = [];
  const rate: number[] = [];
  let i = 0;
  let k = 0;
  let aLeft_m = a.width_m[0] ?? Infinity;
  let bLeft_m = b.width_m[0] ?? Infinity;
  while (i < a.rate.length || k < b.rate.length) {
    const each_m = Math.min(aLeft_m, bLeft_m);
    width_m.push(each_m);
    rate.push((a.rate[i] ?? 0) + (b.rate[k] ?? 0));
    aLeft_m -= each_m;
    bLeft_m -= each_m;
    if (aLeft_m <= 0) aLeft_m = a.width_m[++i] ?? Infinity;
    if (bLeft_m <= 0) bLeft_m = b.width_m[++k] ?? Infinity;
  }
  return { from_m, cost: a.cost + b.cost, width_m: Float64Array.from(width_m), rate: Float64Array.from(rate) };
}

/** Of a place that is to have a head itself. */
export function costFrom(of: ConvexCost, wanted_m: number): ConvexCost {
  if (wanted_m <= of.from_m) return of;
  let left_m = wanted_m - of.from_m;
  let cost = of.cost;
  let first = 0;
  while (first < of.rate.length && left_m >= Number(of.width_m[first])) {
    cost -= Number(of.width_m[first]) * Number(of.rate[first]);
    left_m -= Number(of.width_m[first]);
    first++;
  }
  const width_m = of.width_m.slice(first);
  if (first < of.rate.length) {
    cost -= left_m * Number(of.rate[first]);
    width_m[0] = Number(width_m[0]) - left_m;
  }
  return { from_m: wanted_m, cost, width_m, rate: of.rate.subarray(first) };
}

/** How a head is shared between a pipe and what is below it. */
export interface Share {
  /** Lost in the pipe beyond the least it can lose. */
  readonly pipe_m: number;
  /** What a metre less would cost, and what a metre more would save. */
  readonly less: number;
  readonly more: number;
}

/** The share of a pipe in a head at its upstream end: stretches are taken as in `costBefore`. */
export function shareOf(below: ConvexCost, pipe: ConvexCost, head_m: number): Share {
  if (below.from_m === -Infinity)
    return { pipe_m: pipe.width_m.reduce((sum_m, each_m) => sum_m + each_m, 0), less: 0, more: 0 };
  let left_m = head_m - below.from_m - pipe.from_m;
  let pipe_m = 0;
  let less = Infinity;
  let i = 0;
  let k = 0;
  while (i < below.rate.length || k < pipe.rate.length) {
    const isPipe = i >= below.rate.length || (k < pipe.rate.length && Number(pipe.rate[k]) >= Number(below.rate[i]));
    const each_m = Number(isPipe ? pipe.width_m[k] : below.width_m[i]);
    const rate = Number(isPipe ? pipe.rate[k] : below.rate[i]);
    if (left_m <= dust_m) return { pipe_m, less, more: rate };
    if (isPipe) pipe_m += Math.min(left_m, each_m);
    if (left_m < each_m - dust_m) return { pipe_m, less: rate, more: rate };
    left_m -= each_m;
    less = rate;
    if (isPipe) k++;
    else i++;
  }
  return { pipe_m, less: left_m > dust_m ? 0 : less, more: 0 };
}

const dust_m = 1e-10;
