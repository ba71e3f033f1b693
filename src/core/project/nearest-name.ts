/**
 * The known name that a mistyped one is nearest to, or null when none is near: at most a third of its letters differ.
 * Case, spaces, dashes and underscores do not count: "row_spacing" is nearest to "rowSpacing".
 */
export function nearestName(typed: string, known: readonly string[]): string | null {
  const bare = lettersOf(typed);
  if (bare.length > 40) return null;
  let best: string | null = null;
  let least = Math.floor(bare.length / 3) + 1;
  for (const name of known) {
    const steps = typingSteps(bare, lettersOf(name));
    if (steps < least) {
      least = steps;
      best = name;
    }
  }
  return best;
}

function lettersOf(name: string): string {
  return name.toLowerCase().replace(/[\s_-]/g, "");
}

/** Letters to change, add, drop or swap with their neighbour to make one word of the other (optimal string alignment). */
function typingSteps(from: string, to: string): number {
  let beforeLast: readonly number[] = [];
  let last: readonly number[] = Array.from({ length: to.length + 1 }, (_, i) => i);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const changed = (last[j - 1] ?? 0) + (from[i - 1] === to[j - 1] ? 0 : 1);
      const isSwap = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      const swapped = isSwap ? (beforeLast[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min(changed, swapped, (last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1));
    }
    beforeLast = last;
    last = row;
  }
  return last[to.length] ?? 0;
}
