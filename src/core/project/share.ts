/** The earlier object when the later one holds the same: plain data, compared member by member down to numbers and texts. */
export function shared<T>(earlier: T, later: T): T {
  return isEqual(earlier, later) ? earlier : later;
}

/** A list with each entry that holds the same as an earlier one replaced by it; the earlier list itself when all are. */
export function sharedList<T>(earlier: readonly T[], later: readonly T[]): readonly T[] {
  const list = later.map((entry, i) => {
    const same = earlier[i];
    if (same !== undefined && isEqual(same, entry)) return same;
    return earlier.find((each) => isEqual(each, entry)) ?? entry;
  });
  return list.length === earlier.length && list.every((entry, i) => entry === earlier[i]) ? earlier : list;
}

function isEqual(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (Array.isArray(one)) return Array.isArray(other) && isEqualList(one, other);
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(other)) return false;
  const left = Object.entries(one);
  const right = new Map<string, unknown>(Object.entries(other));
  return (
    left.length === right.size && left.every(([name, value]) => right.has(name) && isEqual(value, right.get(name)))
  );
}

/** Outlines are lists of lists of thousands of places: a loop over them is all they need. */
function isEqualList(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let i = 0; i < one.length; i++) if (!isEqual(one[i], other[i])) return false;
  return true;
}
