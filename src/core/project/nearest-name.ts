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

/** Letters to change, add or drop to make one word of the other (Levenshtein 1966). */
function typingSteps(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, i) => i);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const swap = (row[j - 1] ?? 0) + (from[i - 1] === to[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[to.length] ?? 0;
}
