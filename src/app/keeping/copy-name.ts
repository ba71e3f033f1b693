/** The name of a copy: "North field (copy)", then "North field (copy 2)", never one that is taken. A copy of a copy counts on. */
export function copyName(name: string, taken: readonly string[]): string {
  const stem = name.replace(/ \(copy(?: \d+)?\)$/, "");
  const isTaken = new Set(taken);
  for (let i = 1; ; i++) {
    const candidate = i === 1 ? `${stem} (copy)` : `${stem} (copy ${i})`;
    if (!isTaken.has(candidate)) return candidate;
  }
}
