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
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const [left, right] = [Object.entries(one), Object.entries(other)];
  const others = new Map<string, unknown>(right);
  return (
    left.length === right.length && left.every(([name, value]) => others.has(name) && isEqual(value, others.get(name)))
  );
}
