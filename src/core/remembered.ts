/**
 * A function that keeps its last result and gives it back while what it depends on is the same: the arguments themselves, or what
 * `dependsOn` takes from them (same objects, equal numbers or texts). Only the last result is kept: a planner follows one project
 * through its edits.
 */
export function remembered<A extends readonly unknown[], R>(
  compute: (...inputs: A) => R,
  dependsOn: (...inputs: A) => readonly unknown[] = (...inputs) => inputs,
): (...inputs: A) => R {
  let last: { readonly on: readonly unknown[]; readonly result: R } | null = null;
  return (...inputs) => {
    const on = dependsOn(...inputs);
    if (last?.on.length === on.length && last.on.every((one, i) => Object.is(one, on[i]))) return last.result;
    const result = compute(...inputs);
    last = { on, result };
    return result;
  };
}

/** One remembered function for each key, so that the blocks of a project do not push each other out. */
export function rememberedByKey<A extends readonly unknown[], R>(
  compute: (...inputs: A) => R,
  dependsOn?: (...inputs: A) => readonly unknown[],
): (key: string, ...inputs: A) => R {
  const byKey = new Map<string, (...inputs: A) => R>();
  return (key, ...inputs) => {
    const one = byKey.get(key) ?? remembered(compute, dependsOn);
    byKey.set(key, one);
    return one(...inputs);
  };
}
