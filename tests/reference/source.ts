/**
 * Where a check's expected value comes from, so that a failure is judged rightly: a value that was read in a text or reproduces a
 * published one points at us, one from memory is itself suspected first.
 */
export type Source =
  /** Read in the text named. */
  | { readonly read: string }
  /** Worked out from definitions, and equal to the published value named. */
  | { readonly computedAsPublished: string }
  /** Worked out from definitions or with the library named; no published value to hold it against. */
  | { readonly computed: string }
  /** The text named, quoted from memory and not read. */
  | { readonly fromMemory: string };

/** Name of a check with its source, for the test's title. */
export function titled(id: string, source: Source): string {
  if ("read" in source) return `${id} (read: ${source.read})`;
  if ("computedAsPublished" in source) return `${id} (computed, as published: ${source.computedAsPublished})`;
  if ("computed" in source) return `${id} (computed: ${source.computed})`;
  return `${id} (from memory: ${source.fromMemory})`;
}
