/**
 * A key for each feature, unique in the file: its id as text, or "#3" for the fourth feature when it has no id
 * or an earlier feature has the same one. Ids are text or numbers in GeoJSON; anything else counts as none.
 */
export function featureKeys(features: readonly unknown[]): readonly string[] {
  const used = new Set<string>();
  return features.map((feature, i) => {
    const id = idOf(feature);
    let key = id !== null && id !== "" && !used.has(id) ? id : `#${i}`;
    while (used.has(key)) key = `${key}'`;
    used.add(key);
    return key;
  });
}

/** The feature's own id as text, or null. */
export function idOf(feature: unknown): string | null {
  if (typeof feature !== "object" || feature === null || !("id" in feature)) return null;
  const { id } = feature;
  if (typeof id === "string") return id;
  return typeof id === "number" ? String(id) : null;
}

/** Order in which people count: 2 before 10, 14 before 14a before 14b before 15. */
export function compareNatural(left: string, right: string): number {
  const a = left.match(parts) ?? [];
  const b = right.match(parts) ?? [];
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const [x = "", y = ""] = [a[i], b[i]];
    if (x === y) continue;
    const difference = Number(x) - Number(y);
    if (Number.isNaN(difference)) return x < y ? -1 : 1;
    if (difference !== 0) return difference;
  }
  return a.length - b.length || (left < right ? -1 : Number(left > right));
}

const parts = /\d+|\D+/g;

/** Do two pieces of plain data hold the same: objects member by member, lists and arrays of numbers entry by entry? */
export function holdTheSame(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (ArrayBuffer.isView(one) && ArrayBuffer.isView(other)) {
    return areNumbers(one) && areNumbers(other) && one.length === other.length && one.every((n, i) => n === other[i]);
  }
  const [mine, theirs] = [Object.entries(one), new Map(Object.entries(other))];
  return (
    mine.length === theirs.size &&
    mine.every(([name, value]) => theirs.has(name) && holdTheSame(value, theirs.get(name)))
  );
}

type Numbers = Float64Array | Int32Array | Uint32Array | Uint8Array;

function areNumbers(view: ArrayBufferView): view is Numbers {
  return [Float64Array, Int32Array, Uint32Array, Uint8Array].some((kind) => view instanceof kind);
}
