import type { CoordinateSystem } from "../../../systems/coordinate-system.ts";
import { esriWkt } from "../../../systems/esri-wkt.ts";
import { featuresAChunk, type HandOverJob } from "../../format.ts";
import type { Layer } from "../../layers/layer.ts";
import { namedColumns } from "../../named-columns.ts";
import type { ZipEntry } from "../../zip.ts";
import { columnNames } from "./column-names.ts";
import { dbfBytes, type Table, tableGathered } from "./dbase.ts";
import { hasHeights, shpBytes, shxBytes } from "./shape-bytes.ts";
import { type Shapes, shapesGathered } from "./shapes.ts";

interface Gathered {
  readonly shapes: Shapes;
  readonly table: Table;
}

/** Texts that are told in full where the table had to cut them. */
const mostTold = 1000;

/**
 * The files of one layer: .shp, .shx, .dbf, .cpg and, where the system can be written, .prj. The layer is gone through once; what came of it
 * that has to be said is put into `notes` meanwhile.
 */
export function layerSet(layer: Layer, job: HandOverJob, notes: string[]): readonly ZipEntry[] {
  let gathered: Gathered | null = null;
  function* once(): Generator<Uint8Array, Gathered> {
    gathered ??= yield* gather(layer, job, notes);
    return gathered;
  }
  const named = (ending: string, chunks: ZipEntry["chunks"]): ZipEntry => ({ name: `${layer.kind}.${ending}`, chunks });
  const wkt = wktOf(job.system);
  return [
    named("shp", function* () {
      yield* shpBytes((yield* once()).shapes);
    }),
    named("shx", function* () {
      yield* shxBytes((yield* once()).shapes);
    }),
    named("dbf", function* () {
      const { table } = yield* once();
      const names = columnNames(table.columns.map(({ name }) => name));
      yield* dbfBytes(table, names, job.writtenAt.slice(0, 10));
      gathered = null;
    }),
    named("cpg", () => ["UTF-8"]),
    ...(wkt === null ? [] : [named("prj", () => [wkt])]),
  ];
}

/** The local plane is a projection with its own origin: written out, every GIS finds its place. */
export function wktOf(system: CoordinateSystem): string | null {
  return esriWkt(system.kind === "local" ? { ...system, kind: "projected" } : system);
}

function* gather(layer: Layer, { names, system }: HandOverJob, notes: string[]): Generator<Uint8Array, Gathered> {
  const { columns, valuesOf } = namedColumns(layer, names);
  let id = "";
  let cut = 0;
  const shapes = shapesGathered(layer.shape, system);
  const table = tableGathered(columns, (text, { name }) => {
    if (cut++ < mostTold) notes.push(`${layer.kind}, ${id}: ${name} is cut; in full it is ${JSON.stringify(text)}.`);
  });
  let count = 0;
  for (const feature of layer.features()) {
    ({ id } = feature);
    shapes.add(feature.geometry);
    table.add(valuesOf(feature));
    if (++count % featuresAChunk === 0) yield new Uint8Array(0);
  }
  if (cut > mostTold) notes.push(`${layer.kind}: ${cut - mostTold} more texts are cut.`);
  const all = shapes.all();
  if (all.withHeight > 0 && !hasHeights(all)) {
    notes.push(
      `${layer.kind}: heights are known at ${all.withHeight} of ${all.xyz.length / 3} places only, so they are left out.`,
    );
  }
  return { shapes: all, table: table.all() };
}
