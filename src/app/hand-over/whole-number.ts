/** A whole number above zero as it was typed; null for nothing typed, undefined for what is none. */
export function wholeNumber(typed: string): number | null | undefined {
  const bare = typed.trim().replace(/(?<=\d),(?=\d{3})/g, "");
  if (bare === "") return null;
  return /^[1-9]\d{0,6}$/.test(bare) ? Number(bare) : undefined;
}
