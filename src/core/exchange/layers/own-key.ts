import type { FeatureKey } from "../../project/project.ts";

/** The id that a person gave to a feature; null for one that is only called by its place in the file. */
export function ownKey(key: FeatureKey): string | null {
  return /^#\d+$/.test(key) ? null : key;
}
