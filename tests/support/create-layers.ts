import { type HandOverChoice, usualChoice } from "../../src/core/exchange/choice.ts";
import type { HandOverJob } from "../../src/core/exchange/format.ts";
import type { Layer, LayerFeature, LayerGeometry, LayerKind, Place } from "../../src/core/exchange/layers/layer.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { type CoordinateSystem, lonLatSystem } from "../../src/core/systems/coordinate-system.ts";
import { at, createProject } from "./create-project.ts";
import { writtenAt } from "./handed-over.ts";

type Point = readonly [x_m: number, y_m: number, height_m?: number];

/** Places in metres from the test origin. */
export function placesAt(points: readonly Point[]): readonly Place[] {
  return points.map(([x, y, height_m]) => ({ at: at([x, y]), height_m: height_m ?? null }));
}

/** A layer of features that each have a name of their own, a length and a yes. */
export function createLayer(
  kind: LayerKind,
  features: readonly { readonly name: string; readonly geometry: LayerGeometry; readonly remark?: string | null }[],
): Layer {
  const made: readonly LayerFeature[] = features.map(({ name, geometry, remark = null }, i) => ({
    id: `${kind}-${i + 1}`,
    parts: { kind, code: "X", block: null, row: null, number: i + 1, own: name },
    geometry,
    values: [kind, remark, i + 1, 12.345 * (i + 1), i % 2 === 0 ? true : null],
  }));
  return {
    kind,
    shape: features[0]?.geometry.shape ?? "point",
    columns: [
      { name: "role", type: "text" },
      { name: "remark", type: "text" },
      { name: "number", type: "whole" },
      { name: "groundLength_m", type: "number", decimals: 3 },
      { name: "sketch", type: "yes" },
    ],
    count: made.length,
    features: () => made,
    named: () => made,
  };
}

/** What a format is asked to write, from layers made by hand; features are called by their own names. */
export function createJob(
  layers: readonly Layer[],
  change: { readonly choice?: Partial<HandOverChoice>; readonly system?: CoordinateSystem } = {},
): HandOverJob {
  return {
    plan: createPlanner().plan(createProject()),
    choice: { ...usualChoice, ...change.choice },
    layers,
    lists: [],
    documents: [],
    names: { of: ({ id, parts }) => parts.own ?? id, changed: [] },
    system: change.system ?? lonLatSystem,
    writtenAt,
  };
}
