import { featureKeys } from "../identity.ts";
import { isJsonObject } from "./json-value.ts";
import type { FeatureKey, Json, JsonObject } from "./project.ts";

/**
 * The entries of a list of features without those of some keys. The others keep their keys: one that was called by its place in the
 * file, and would now be called by another, gets the key it had as its id. Settings and selections that name it go on meaning it. An
 * entry that is no feature can have no id; nothing can mean it.
 */
export function withoutEntries(entries: readonly Json[], gone: ReadonlySet<FeatureKey>): readonly Json[] {
  const keys = featureKeys(entries);
  const stay = entries.flatMap((entry, i) => {
    const key = keys[i] ?? `#${i}`;
    return gone.has(key) ? [] : [{ entry, key }];
  });
  let kept: readonly Json[] = stay.map(({ entry }) => entry);
  // An id that is given can be one that another was called by, so it is looked again; each round settles one more at least.
  for (let round = 0; round <= stay.length; round++) {
    const now = featureKeys(kept);
    if (stay.every(({ entry, key }, i) => now[i] === key || !isJsonObject(entry))) return kept;
    kept = kept.map((entry, i) => {
      const key = stay[i]?.key;
      return key === undefined || now[i] === key || !isJsonObject(entry) ? entry : withId(entry, key);
    });
  }
  return kept;
}

/** The feature with an id, which stands where GeoJSON writes it. */
function withId(feature: JsonObject, id: string): JsonObject {
  const { type, id: _, ...rest } = feature;
  return { ...(type === undefined ? {} : { type }), id, ...rest };
}
