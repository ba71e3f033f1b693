export const rowNumbersWanted = 'it must be row numbers such as "1-12", the smaller first';

/** Row numbers as they are written, "1-12" or "7", first and last inclusive; null when they are none. */
export function rowNumbers(written: string): { readonly fromRow: number; readonly toRow: number } | null {
  const [, from, to = from] = /^\s*(\d{1,5})\s*(?:[-–]\s*(\d{1,5})\s*)?$/.exec(written) ?? [];
  if (from === undefined || Number(from) < 1 || Number(to) < Number(from)) return null;
  return { fromRow: Number(from), toRow: Number(to) };
}
