import type { Layer } from "./layer.ts";

/** A layer whose features are named as they are made: for those with few. */
export function named(layer: Omit<Layer, "named">): Layer {
  return { ...layer, named: layer.features };
}
