/** The column that says what features are called, by its own name; -1 where none does. */
export function nameColumn(columns: readonly string[]): number {
  const lower = columns.map((name) => name.toLowerCase());
  for (const is of [
    exactly("name"),
    exactly("label"),
    exactly("title"),
    (name: string) => /(^|_)name$|^name_/.test(name),
  ]) {
    const found = lower.findIndex(is);
    if (found >= 0) return found;
  }
  return -1;
}

function exactly(wished: string) {
  return (name: string): boolean => name === wished;
}
