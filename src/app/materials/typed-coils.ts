/** "3 × 1000 ft" is three coils of 1000 ft, "640 ft" one; what the length is worth is for the core to read. */
export function typedCoils(typed: string): { readonly number: number; readonly length: string } {
  const [, number, length] = /^\s*(\d{1,6})\s*[x×*]\s*(.+)$/i.exec(typed) ?? [];
  return number === undefined || length === undefined
    ? { number: 1, length: typed.trim() }
    : { number: Number(number), length: length.trim() };
}
