import type { Pack } from "./material-line.ts";

/** A package that an article is sold in. */
export interface PackageSize {
  /** Metres or pieces. */
  readonly size: number;
  /** What one covers of the need: its size, or for a coil what is left of it after its reserve. */
  readonly covers: number;
  readonly price: number | null;
  readonly mass_kg: number | null;
}

/** Steps that lengths are weighed in, m: finer than any need is known. */
const lengthStep_m = 0.01;
/** Sums carry rounding dust; a package is not bought for a billionth. */
const dust = 1e-9;
/** Steps that are tried one by one; past it the best package is taken first. */
const mostSteps = 2_000_000;

/**
 * The packages that cover a quantity: at the least price over the sizes that are priced, or, where none is, with the least too much and
 * then the fewest packages. Exact: every total from the quantity up to one largest package above it is weighed (a covering problem by
 * dynamic program). Large quantities take the package that gives most for its price first, which loses nothing: of as many other packages
 * as that one has steps, some make up a whole number of it. Largest size first; none for nothing, and none where no size covers anything.
 */
export function packagesFor(quantity: number, sizes: readonly PackageSize[], unit: "m" | "pieces"): readonly Pack[] {
  const step = unit === "m" ? lengthStep_m : 1;
  const priced = sizes.filter(({ price }) => price !== null);
  const offered = (priced.length > 0 ? priced : sizes)
    .map((size) => ({ size, steps: Math.floor(size.covers / step + dust), cost: size.price ?? 1 }))
    .filter(({ steps }) => steps > 0)
    .sort((a, b) => b.steps - a.steps || a.cost - b.cost);
  const wanted = Math.ceil(quantity / step - dust);
  if (wanted <= 0 || offered.length === 0) return [];
  const grain = offered.reduce((divisor, { steps }) => commonDivisor(divisor, steps), 0);
  const counts = cheapest(
    Math.ceil(wanted / grain),
    offered.map(({ steps, cost }) => ({ steps: steps / grain, cost })),
    priced.length > 0,
  );
  return offered.flatMap(({ size: { size, price, mass_kg } }, i) => {
    const count = counts[i] ?? 0;
    return count > 0 ? [{ size, count, price, mass_kg }] : [];
  });
}

interface Offer {
  readonly steps: number;
  readonly cost: number;
}

/** How many of each offer to take. */
function cheapest(wanted: number, offers: readonly Offer[], isPriced: boolean): readonly number[] {
  const best = offers.reduce((place, offer, i) => (worth(offer, offers[place]) ? i : place), 0);
  const bestSteps = offers[best]?.steps ?? 1;
  const largest = offers.reduce((most, { steps }) => Math.max(most, steps), 0);
  const weighed = Math.min(bestSteps * largest, mostSteps);
  const first = Math.max(0, Math.floor((wanted - weighed) / bestSteps));
  const rest = wanted - first * bestSteps;
  const counts = restBy(rest, largest, offers, isPriced);
  return counts.map((count, i) => (i === best ? count + first : count));
}

/** True when an offer gives more for its cost. */
function worth(offer: Offer, other: Offer | undefined): boolean {
  return other === undefined || offer.cost * other.steps < other.cost * offer.steps;
}

function restBy(wanted: number, largest: number, offers: readonly Offer[], isPriced: boolean): number[] {
  const end = wanted + largest - 1;
  const cost = new Float64Array(end + 1).fill(Infinity);
  const packages = new Int32Array(end + 1);
  const last = new Int16Array(end + 1).fill(-1);
  cost[0] = 0;
  for (let total = 1; total <= end; total++) {
    offers.forEach(({ steps, cost: own }, i) => {
      if (steps > total) return;
      const sum = (cost[total - steps] ?? Infinity) + own;
      const many = (packages[total - steps] ?? 0) + 1;
      const now = cost[total] ?? Infinity;
      if (!isLess(sum, now) && (isLess(now, sum) || many >= (packages[total] ?? 0))) return;
      cost[total] = sum;
      packages[total] = many;
      last[total] = i;
    });
  }
  let chosen = -1;
  for (let total = wanted; total <= end; total++) {
    const sum = cost[total] ?? Infinity;
    if (sum === Infinity) continue;
    if (chosen >= 0 && (!isPriced || !isLess(sum, cost[chosen] ?? Infinity))) continue;
    chosen = total;
    if (!isPriced) break;
  }
  const counts = offers.map(() => 0);
  for (let total = chosen; total > 0; ) {
    const i = last[total] ?? 0;
    counts[i] = (counts[i] ?? 0) + 1;
    total -= offers[i]?.steps ?? total;
  }
  return counts;
}

function isLess(a: number, b: number): boolean {
  return a < b - dust * Math.max(1, Math.abs(a));
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
