/**
 * A function whose last result for each object is kept as long as the object itself, and given back while the other inputs are
 * the same. The objects are never changed, so the result cannot go stale.
 */
export function rememberedByObject<K extends object, A extends readonly (string | number | null)[], R>(
  compute: (key: K, ...inputs: A) => R,
): (key: K, ...inputs: A) => R {
  const last = new WeakMap<K, { readonly inputs: A; readonly result: R }>();
  return (key, ...inputs) => {
    const known = last.get(key);
    if (known?.inputs.every((input, i) => Object.is(input, inputs[i]))) return known.result;
    const result = compute(key, ...inputs);
    last.set(key, { inputs, result });
    return result;
  };
}
