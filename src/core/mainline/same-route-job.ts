import type { RouteJob } from "./route-job.ts";

/** Do two jobs ask for the same route? Told by what they hold, so that an edit taken back finds its route again. */
export function isSameRouteJob(one: RouteJob, other: RouteJob): boolean {
  return one === other || isSame(one, other);
}

function isSame(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (ArrayBuffer.isView(one) && ArrayBuffer.isView(other)) {
    return (
      isNumbers(one) && isNumbers(other) && one.length === other.length && one.every((each, i) => each === other[i])
    );
  }
  const [mine, theirs] = [Object.entries(one), Object.entries(other)];
  const by = new Map(theirs);
  return mine.length === theirs.length && mine.every(([name, value]) => by.has(name) && isSame(value, by.get(name)));
}

function isNumbers(view: ArrayBufferView): view is Float64Array | Int32Array | Uint8Array {
  return view instanceof Float64Array || view instanceof Int32Array || view instanceof Uint8Array;
}
