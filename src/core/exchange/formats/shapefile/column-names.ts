/** Letters that a column name of a dBASE table has at most. */
const longest = 10;

/**
 * Names of columns for a dBASE table, in their order: at most ten of A-Z, a-z, 0-9 and _, unique without regard to case. Each word of a long
 * name is cut, the longest first, and the unit at its end is kept: "baselineOffset_m" is "baseOffs_m".
 */
export function columnNames(wished: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return wished.map((name) => {
    const letters = name
      .normalize("NFD")
      .replace(/\p{M}/gu, "")
      .replace(/[^A-Za-z0-9_]+/g, "_");
    const sound = /^[A-Za-z]/.test(letters) ? letters : `c${letters}`;
    for (let i = 1; ; i++) {
      const found = shortened(sound, i === 1 ? "" : `${i}`);
      if (taken.has(found.toLowerCase())) continue;
      taken.add(found.toLowerCase());
      return found;
    }
  });
}

function shortened(name: string, number: string): string {
  const unit = /_(m|m2|mm|deg)$/.exec(name)?.[0] ?? "";
  const end = `${number}${unit}`;
  const room = longest - end.length;
  const words = name.slice(0, name.length - unit.length).match(/[A-Z]*[^A-Z]+|[A-Z]+/g) ?? [];
  const kept = words.map((word) => word.length);
  for (let over = kept.reduce((sum, length) => sum + length, 0) - room; over > 0; over--) {
    const most = kept.lastIndexOf(Math.max(...kept));
    kept[most] = (kept[most] ?? 1) - 1;
  }
  return words.map((word, i) => word.slice(0, kept[i])).join("") + end;
}
