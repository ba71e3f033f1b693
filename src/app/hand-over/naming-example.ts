import type { HandOverChoice } from "../../core/exchange/choice.ts";
import type { Format } from "../../core/exchange/format.ts";
import { type Layer, layerKinds } from "../../core/exchange/layers/layer.ts";
import type { LayerJob } from "../../core/exchange/layers/layer-job.ts";
import { layerOf } from "../../core/exchange/layers/layers.ts";
import { namesOf } from "../../core/exchange/naming.ts";
import type { Plan } from "../../core/plan.ts";

/** The pattern that holds while none is typed. */
export function usualPattern({ project }: Plan, { naming }: Format): string {
  return project.blocks.length < 2 ? naming.one : naming.several;
}

const mostKinds = 3;

/** "R1, R1E01, R1V01": what the first of each kind that goes out is called; null when nothing does. */
export function namingExample(plan: Plan, format: Format, choice: HandOverChoice): string | null {
  const job: LayerJob = {
    plan,
    rows: null,
    pegBeyond_m: choice.pegBeyond_m,
    baseline: null,
    hasHeights: false,
    heightAt: () => null,
  };
  const layers = layerKinds
    .filter((kind) => choice.of.includes(kind) && format.holds.includes(kind))
    .map((kind) => firstOnly(layerOf[kind](job)))
    .filter(({ count }) => count > 0)
    .slice(0, mostKinds);
  const names = namesOf(layers, {
    pattern: choice.naming ?? usualPattern(plan, format),
    longest: choice.nameLength ?? format.nameLength,
    letters: format.letters,
  });
  const shown = layers.flatMap((layer) => Array.from(layer.features(), (feature) => names.of(feature)));
  return shown.length === 0 ? null : `such as ${shown.join(", ")}`;
}

/** A layer of its first feature alone. */
function firstOnly(layer: Layer): Layer {
  const [first] = layer.features();
  const features = first === undefined ? [] : [first];
  return { ...layer, count: features.length, features: () => features, named: () => features };
}
