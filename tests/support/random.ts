/** A seeded source of random numbers in [0, 1): the mulberry32 generator (public domain, from memory), so that a printed seed brings a case back. */
export type Random = () => number;

export function createRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export function between(random: Random, low: number, high: number): number {
  return low + (high - low) * random();
}

/** A whole number from low to high, both included. */
export function wholeBetween(random: Random, low: number, high: number): number {
  return low + Math.floor((high - low + 1) * random());
}
