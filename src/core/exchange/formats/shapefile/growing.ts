/** Numbers whose count is not known beforehand, kept close together. */
export interface Growing<T> {
  /** The array with room for so many more; to be asked for again before each writing, because it may have been moved. */
  withRoom(more: number): T;
  /** How many are in it. */
  count(): number;
  /** Says how many there are after a writing. */
  counted(count: number): void;
  /** All so far. */
  all(): T;
}

/** A kind of typed array. */
interface Kind<T> {
  readonly create: (length: number) => T;
  readonly first: (kept: T, count: number) => T;
}

const bytes: Kind<Uint8Array> = {
  create: (length) => new Uint8Array(length),
  first: (kept, count) => kept.subarray(0, count),
};
const counts: Kind<Int32Array> = {
  create: (length) => new Int32Array(length),
  first: (kept, count) => kept.subarray(0, count),
};
const numbers: Kind<Float64Array> = {
  create: (length) => new Float64Array(length),
  first: (kept, count) => kept.subarray(0, count),
};

export const growingBytes = (): Growing<Uint8Array> => growing(bytes);
export const growingCounts = (): Growing<Int32Array> => growing(counts);
export const growingNumbers = (): Growing<Float64Array> => growing(numbers);

type Kept = Uint8Array | Int32Array | Float64Array;

function growing<T extends Kept>({ create, first }: Kind<T>): Growing<T> {
  let kept = create(4096);
  let count = 0;
  return {
    withRoom: (more) => {
      if (count + more <= kept.length) return kept;
      const larger = create(Math.ceil((count + more) * 1.5));
      larger.set(first(kept, count));
      kept = larger;
      return kept;
    },
    count: () => count,
    counted: (now) => {
      count = now;
    },
    all: () => first(kept, count),
  };
}
