import type { Column, Layer, LayerFeature, Value } from "./layers/layer.ts";
import type { Names } from "./naming.ts";

/** A layer as one table: what a feature is called, its stable id, then the layer's own columns. */
export interface NamedColumns {
  readonly columns: readonly Column[];
  /** The values of a feature, in the order of the columns. */
  valuesOf(feature: LayerFeature): readonly Value[];
}

/** The columns of a layer in a format whose files are tables. A `name` among its own is the name already: names of one's own are kept. */
export function namedColumns({ columns }: Layer, names: Names): NamedColumns {
  const isOther = columns.map(({ name }) => name !== "name" && name !== "id");
  return {
    columns: [{ name: "name", type: "text" }, { name: "id", type: "text" }, ...columns.filter((_, i) => isOther[i])],
    valuesOf: (feature) => [names.of(feature), feature.id, ...feature.values.filter((_, i) => isOther[i])],
  };
}
