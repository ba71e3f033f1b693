/**
 * What the pipes below a place cost by the head that is there: heads ascending, costs falling, as parallel arrays. At a head between two it costs
 * what it does at the lower one.
 */
export interface CostFront {
  readonly head_m: Float64Array;
  readonly cost: Float64Array;
  /** Something was left out to keep it short: here, or in what it was made of. */
  readonly isThinned: boolean;
}

export const emptyFront: CostFront = { head_m: new Float64Array(), cost: new Float64Array(), isThinned: false };

/** The front of a place with no pipe below that is to have a head: nothing to pay from there on. */
export function openFront(wanted_m: number): CostFront {
  return { head_m: Float64Array.of(wanted_m), cost: Float64Array.of(0), isThinned: false };
}

/** A pipe before a place: what it loses, what it costs. */
export interface Step {
  readonly loss_m: number;
  readonly cost: number;
}

/** What is of no use before a pipe: heads above the highest, and cost + worth × head above what it may come to. */
export interface Limit {
  readonly highest_m: number;
  readonly worth: number;
  readonly most: number;
}

/**
 * The lower of two fronts at every head, the second one seen from before a pipe, without what is of no use. Of more than `most` heads the cheapest of
 * each of so many equal cells stays, heads as they are: never wrong, and a little dearer than need be.
 */
export function lowerFront(a: CostFront, b: CostFront, before: Step, limit: Limit, most: number): CostFront {
  const head_m = new Float64Array(a.head_m.length + b.head_m.length);
  const cost = new Float64Array(head_m.length);
  let n = 0;
  let least = Infinity;
  let i = 0;
  let k = 0;
  while (i < a.head_m.length || k < b.head_m.length) {
    const a_m = i < a.head_m.length ? Number(a.head_m[i]) : Infinity;
    const b_m = k < b.head_m.length ? Number(b.head_m[k]) + before.loss_m : Infinity;
    const isA = a_m <= b_m;
    const at_m = isA ? a_m : b_m;
    if (at_m > limit.highest_m) break;
    const of = isA ? Number(a.cost[i]) : Number(b.cost[k]) + before.cost;
    if (isA) i++;
    else k++;
    if (of >= least || of + limit.worth * at_m > limit.most) continue;
    if (n > 0 && head_m[n - 1] === at_m) n--;
    head_m[n] = at_m;
    cost[n] = of;
    least = of;
    n++;
  }
  return thinned(head_m, cost, n, most, a.isThinned || b.isThinned);
}

/** Two fronts of one place together: the sum of their costs at every head at which both are served. */
export function frontSum(a: CostFront, b: CostFront, most: number): CostFront {
  const head_m = new Float64Array(a.head_m.length + b.head_m.length);
  const cost = new Float64Array(head_m.length);
  let n = 0;
  let i = 0;
  let k = 0;
  while (i < a.head_m.length || k < b.head_m.length) {
    const a_m = i < a.head_m.length ? Number(a.head_m[i]) : Infinity;
    const b_m = k < b.head_m.length ? Number(b.head_m[k]) : Infinity;
    const at_m = Math.min(a_m, b_m);
    if (a_m === at_m) i++;
    if (b_m === at_m) k++;
    if (i === 0 || k === 0) continue;
    head_m[n] = at_m;
    cost[n] = Number(a.cost[i - 1]) + Number(b.cost[k - 1]);
    n++;
  }
  return thinned(head_m, cost, n, most, a.isThinned || b.isThinned);
}

/** The front of a place that is to have a head itself. */
export function frontFrom(front: CostFront, wanted_m: number): CostFront {
  if (!(Number(front.head_m[0]) < wanted_m)) return front;
  const from = indexAt(front, wanted_m);
  const head_m = front.head_m.slice(from);
  head_m[0] = wanted_m;
  return { head_m, cost: front.cost.subarray(from), isThinned: front.isThinned };
}

/** Index of the last head that is not above; -1 where all are. */
export function indexAt({ head_m }: CostFront, at_m: number): number {
  let low = 0;
  let high = head_m.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (Number(head_m[middle]) <= at_m) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

function thinned(
  head_m: Float64Array,
  cost: Float64Array,
  count: number,
  most: number,
  wasThinned: boolean,
): CostFront {
  if (count <= most) return { head_m: head_m.slice(0, count), cost: cost.slice(0, count), isThinned: wasThinned };
  const from_m = Number(head_m[0]);
  const perCell = (most - 1) / (Number(head_m[count - 1]) - from_m);
  let cell = 0;
  let kept = 1;
  // The first one stays: with less head nothing works.
  for (let i = 1; i < count; i++) {
    const own = 1 + Math.floor((Number(head_m[i]) - from_m) * perCell);
    if (own !== cell) kept++;
    cell = own;
    head_m[kept - 1] = Number(head_m[i]);
    cost[kept - 1] = Number(cost[i]);
  }
  return { head_m: head_m.slice(0, kept), cost: cost.slice(0, kept), isThinned: true };
}
