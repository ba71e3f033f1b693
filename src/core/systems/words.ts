/** The words of a proj4 text: "+proj=utm +zone=10 +south" gives proj → utm, zone → 10, south → "". */
export type Words = ReadonlyMap<string, string>;

/** The words of a proj4 text by name; of a word that stands twice the last one holds, as in proj4. */
export function wordsOf(definition: string): Words {
  const words = new Map<string, string>();
  for (const [, name = "", value = ""] of definition.matchAll(/\+([A-Za-z_]\w*)(?:=(\S+))?/g)) {
    words.set(name.toLowerCase(), value);
  }
  return words;
}

/** A word as a number; `otherwise` where it is missing or no number. */
export function numberOf(words: Words, names: readonly string[], otherwise: number): number {
  for (const name of names) {
    const number = Number(words.get(name) ?? "none");
    if (Number.isFinite(number) && words.get(name) !== "") return number;
  }
  return otherwise;
}
