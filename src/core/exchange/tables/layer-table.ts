import { countOf } from "../about.ts";
import type { HandOverJob } from "../format.ts";
import type { Layer, LayerFeature, Place, Value } from "../layers/layer.ts";
import { placeColumns } from "./place-columns.ts";
import type { Table, TableColumn } from "./table.ts";

/** What a line of the table says of its feature, beside its own columns. */
interface Shaping {
  /** "a line each". */
  readonly told: string;
  readonly columns: readonly TableColumn[];
  readonly count: number;
  lines(feature: LayerFeature): Iterable<readonly Value[]>;
}

/**
 * A layer as a table: the name, the place, then the layer's own columns. Points have a line each, rows a line with both ends, other lines and
 * areas a line a corner, with its number, and in areas the number of the part and of the ring in it (1 is the outer one, others are holes).
 */
export function layerTable(job: HandOverJob, layer: Layer): Table {
  const shaping = shapingOf(job, layer);
  // A layer's own column of names would say the name a second time.
  const kept = layer.columns.flatMap((column, i) => (column.name === "name" ? [] : [{ column, i }]));
  const isWhole = kept.length === layer.columns.length;
  return {
    name: layer.kind,
    holds: `${countOf(layer)}, ${shaping.told}`,
    columns: [plainColumn("name", "text"), ...shaping.columns, ...kept.map(({ column }) => rounded(column))],
    count: shaping.count,
    *lines() {
      for (const feature of layer.features()) {
        const name = job.names.of(feature);
        const values = isWhole ? feature.values : kept.map(({ i }) => feature.values[i] ?? null);
        for (const places of shaping.lines(feature)) yield [name, ...places, ...values];
      }
    },
  };
}

function shapingOf(job: HandOverJob, layer: Layer): Shaping {
  const { kind, shape, count } = layer;
  const { columns, valuesOf } = placeColumns(job);
  if (shape === "point") {
    return {
      told: "a line each",
      columns: columns(),
      count,
      *lines({ geometry }) {
        if (geometry.shape === "point") yield valuesOf(geometry.place);
      },
    };
  }
  if (kind === "rows") {
    return {
      told: "a line each, with both ends",
      columns: [...columns("start"), ...columns("end")],
      count,
      *lines({ geometry }) {
        const places = geometry.shape === "line" ? geometry.places : [];
        const [start, end] = [places[0], places.at(-1)];
        if (start !== undefined && end !== undefined) yield [...valuesOf(start), ...valuesOf(end)];
      },
    };
  }
  const isArea = shape === "area";
  return {
    told: `a line a corner${isArea ? ", outer rings and holes" : ""}`,
    columns: [
      ...(isArea ? [plainColumn("part", "whole"), plainColumn("ring", "whole")] : []),
      plainColumn("corner", "whole"),
      ...columns(),
    ],
    count: cornersOf(layer),
    *lines({ geometry }) {
      for (const { part, ring, places } of pathsOf(geometry)) {
        const where = isArea ? [part, ring] : [];
        for (const [i, place] of places.entries()) yield [...where, i + 1, ...valuesOf(place)];
      }
    },
  };
}

function cornersOf(layer: Layer): number {
  let count = 0;
  for (const { geometry } of layer.features()) for (const { places } of pathsOf(geometry)) count += places.length;
  return count;
}

/** Every line or ring of a geometry, numbered from 1. */
function* pathsOf(
  geometry: LayerFeature["geometry"],
): Generator<{ readonly part: number; readonly ring: number; readonly places: readonly Place[] }> {
  switch (geometry.shape) {
    case "point":
      return;
    case "line":
      return yield { part: 1, ring: 1, places: geometry.places };
    case "area":
      for (const [i, rings] of geometry.polygons.entries()) {
        for (const [k, places] of rings.entries()) yield { part: i + 1, ring: k + 1, places };
      }
      return;
    default:
      return geometry satisfies never;
  }
}

function plainColumn(name: string, type: TableColumn["type"]): TableColumn {
  return { name, type, isFixed: false };
}

function rounded(column: Layer["columns"][number]): TableColumn {
  return { ...column, isFixed: false };
}
