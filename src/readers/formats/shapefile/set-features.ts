import type { Geometry } from "geojson";
import type { Finding } from "../../../core/finding.ts";
import { failure, type Outcome, success } from "../../../core/outcome.ts";
import { systemOfWkt } from "../../../core/systems/system-of-wkt.ts";
import { brokenFile, lettersDiffer } from "../../file-findings.ts";
import { stopped } from "../../findings.ts";
import { mostPlaces, mostRecords, mostValues, tooMuchInside } from "../../most-found.ts";
import { nameColumn } from "../../name-column.ts";
import { positionsIn, type UnplacedLayer } from "../../placing.ts";
import type { FoundFeature, ReadingFollowed } from "../../reading.ts";
import { type DbaseTable, dbaseTable } from "./dbase-table.ts";
import { columnsLeftOut, indexUnfit, lettersTaken, shapesLeftOut, tableUnfit, withoutTable } from "./findings.ts";
import type { ShapeSet } from "./sets.ts";
import { shapeOf } from "./shape.ts";
import { shapeFile } from "./shape-file.ts";

/** One shapefile in the numbers of the file. */
export interface SetFeatures extends UnplacedLayer {
  readonly features: readonly FoundFeature[];
}

const title = "ESRI shapefile";
const recordsBetweenLooks = 2000;

/** What was read of a file so far; several shapefiles in one archive count together. */
export interface ReadSoFar {
  records: number;
  places: number;
  values: number;
}

/** Shapes with the values of their lines. Findings: `readers/broken-file`, `readers/too-much-inside`, and those of findings.ts. */
export function setFeatures(
  set: ShapeSet,
  soFar: ReadSoFar,
  { progress, signal }: ReadingFollowed,
): Outcome<SetFeatures> {
  const called = `${set.name}.shp`;
  const file = shapeFile(set.shp, set.shx);
  if (typeof file === "string") return failure([brokenFile(called, title, file)]);
  soFar.records += file.records.length;
  if (soFar.records > mostRecords) return failure([tooMuchInside(called)]);
  const { table, findings } = tableOf(set, file.records.length);
  const features: FoundFeature[] = [];
  const geometries: Geometry[] = [];
  const left = new Map<string, { count: number; first: string }>();
  const nameIs = table === null ? "" : (table.columns[nameColumn(table.columns)] ?? "");
  for (const [i, record] of file.records.entries()) {
    if (i % recordsBetweenLooks === 0) {
      if (signal?.aborted === true) return failure([stopped(called)]);
      progress?.(i / file.records.length);
    }
    const line = table === null ? [] : table.line(i);
    // A line marked as deleted is gone for whoever made the file.
    if (line === null) continue;
    const shape = shapeOf(file.view, record);
    if (typeof shape === "string" || shape === null) {
      const why = shape ?? "they are empty";
      const before = left.get(why) ?? { count: 0, first: `number ${i + 1}` };
      left.set(why, { ...before, count: before.count + 1 });
      continue;
    }
    for (const _ of positionsIn(shape)) soFar.places++;
    soFar.values += line.length;
    if (soFar.places > mostPlaces || soFar.values > mostValues) return failure([tooMuchInside(called)]);
    const name = line.find(([column]) => column === nameIs)?.[1];
    features.push({
      name: name === undefined ? null : String(name),
      layer: set.name,
      geometry: shape,
      values: line.filter(([column]) => column !== nameIs),
    });
    geometries.push(shape);
  }
  return success({ name: called, stated: set.prj === null ? null : systemOfWkt(set.prj), geometries, features }, [
    ...(file.isIndexUnfit ? [indexUnfit(called)] : []),
    ...findings,
    ...[...left].map(([why, { count, first }]) => shapesLeftOut(called, count, why, first)),
  ]);
}

/** The table when it fits the shapes, with what is to be said of it. */
function tableOf(
  { name, dbf, cpg }: ShapeSet,
  shapes: number,
): { readonly table: DbaseTable | null; readonly findings: readonly Finding[] } {
  const called = `${name}.shp`;
  if (dbf === null) return { table: null, findings: [withoutTable(called)] };
  const table = dbaseTable(dbf, cpg);
  if (typeof table === "string") return { table: null, findings: [tableUnfit(called, table)] };
  if (table.count !== shapes) {
    const why = `it has ${table.count} lines, and there are ${shapes} shapes`;
    return { table: null, findings: [tableUnfit(called, why)] };
  }
  const { letters, example } = table;
  const isDoubtful = example !== null && !letters.isStated;
  const doubt =
    cpg === null
      ? lettersTaken(called, letters.name, example ?? "")
      : lettersDiffer(`${name}.dbf`, cpg.trim().slice(0, 30), letters.name);
  return {
    table,
    findings: [
      ...(isDoubtful ? [doubt] : []),
      ...(table.leftOut.length > 0 ? [columnsLeftOut(called, table.leftOut)] : []),
    ],
  };
}
