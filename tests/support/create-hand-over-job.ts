import { usualChoice } from "../../src/core/exchange/choice.ts";
import type { HandOverJob } from "../../src/core/exchange/format.ts";
import type {
  Layer,
  LayerFeature,
  LayerGeometry,
  NameParts,
  Place,
  Value,
} from "../../src/core/exchange/layers/layer.ts";
import { named } from "../../src/core/exchange/layers/named.ts";
import { namesOf } from "../../src/core/exchange/naming.ts";
import { lonLat } from "../../src/core/plane/coordinate.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { lonLatSystem } from "../../src/core/systems/coordinate-system.ts";
import { createProject } from "./create-project.ts";
import { writtenAt } from "./handed-over.ts";

/** A place by its degrees, with a height if one is given. */
export function placeOf(lon_deg: number, lat_deg: number, height_m: number | null = null): Place {
  return { at: lonLat(lon_deg, lat_deg), height_m };
}

/** A thing of a layer that is made by hand; its own name is kept, as that of a mark is. */
export function createLayerFeature(
  id: string,
  own: string | null,
  geometry: LayerGeometry,
  values: readonly Value[] = [],
  parts: Partial<NameParts> = {},
): LayerFeature {
  return {
    id,
    parts: { kind: "mark", code: "M", block: null, row: null, number: null, own, ...parts },
    geometry,
    values,
  };
}

/** A layer made by hand: of any kind, with the features that are given. */
export function createLayer(
  change: Pick<Layer, "kind" | "shape"> & Partial<Layer>,
  features: readonly LayerFeature[],
): Layer {
  return named({ columns: [], count: features.length, features: () => features, ...change });
}

/** What a format is given to write: layers of a plan that is invented, names as they are. */
export function createHandOverJob(layers: readonly Layer[], change: Partial<HandOverJob> = {}): HandOverJob {
  return {
    plan: createPlanner().plan(createProject({ name: "Marbach & Söhne <oben>" })),
    choice: usualChoice,
    layers,
    lists: [],
    documents: [],
    names: namesOf(layers, { pattern: "{id}", longest: null, letters: "any" }),
    system: lonLatSystem,
    writtenAt,
    ...change,
  };
}
