import type { Geometry } from "geojson";
import type { Database } from "sql.js";
import type { Finding } from "../../core/finding.ts";
import { failure, type Outcome, success } from "../../core/outcome.ts";
import { type CoordinateSystem, systemOfCode } from "../../core/systems/coordinate-system.ts";
import { systemOfWkt } from "../../core/systems/system-of-wkt.ts";
import { breathe } from "../breathe.ts";
import { brokenFile, nothingFound } from "../file-findings.ts";
import { stopped } from "../findings.ts";
import { mostPlaces, mostRecords, mostValues, tooMuchInside } from "../most-found.ts";
import { nameColumn } from "../name-column.ts";
import { placeLayers, positionsIn, type UnplacedLayer } from "../placing.ts";
import type { FoundFeature, FoundFile, NamedBytes, Reader, ReadingAnswers, ReadingFollowed } from "../reading.ts";
import { openDatabase } from "../sqlite.ts";
import { layersLeftOut } from "./geopackage/findings.ts";
import { geometryOfBlob } from "./geopackage/geometry-of-blob.ts";
import { type LayerTable, layerTables, quoted, systemRow } from "./geopackage/tables.ts";
import { shapesLeftOut } from "./shapefile/findings.ts";

const title = "GeoPackage";
const recordsBetweenLooks = 2000;
/** A text or number of a cell longer than this is no value of a thing on the ground. */
const longestValue_letters = 10_000;

/** GeoPackage 1.0 to 1.3 (OGC 12-128r17): its layers of shapes. SQLite is loaded when such a file is opened. Findings: `readers/broken-file`, `readers/too-much-inside`, `readers/layers-left-out`, `readers/shapes-left-out`, those of the system. */
export const geoPackageReader: Reader = {
  title,
  endings: ["gpkg"],
  // SQLite has the whole file in memory, and a copy is made on the way there.
  most_bytes: 100e6,
  begins: (head) => head.startsWith("SQLite format 3\u0000"),
  read: async (file, answers, followed) => {
    const bytes = new Uint8Array(await file.slice(0, file.size).arrayBuffer());
    const why = whyNoDatabase(bytes);
    if (why !== null) return failure([brokenFile(file.name, title, why)]);
    const database = await openDatabase(bytes);
    try {
      // Definitions inside the file may call nothing that a caller has not chosen, and a damaged page is found out before it is used.
      database.run("PRAGMA trusted_schema = OFF");
      database.run("PRAGMA cell_size_check = ON");
      return await readLayers(file, database, answers, followed);
    } catch (problem) {
      return failure([brokenFile(file.name, title, problem instanceof Error ? problem.message : "it is damaged")]);
    } finally {
      database.close();
    }
  },
};

/** A database says how many pages it has; less is a part of one. */
function whyNoDatabase(bytes: Uint8Array): string | null {
  if (new TextDecoder("latin1").decode(bytes.subarray(0, 16)) !== "SQLite format 3\u0000")
    return "it does not begin like one";
  if (bytes.length < 100) return "it is cut off";
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const page_bytes = view.getUint16(16) === 1 ? 65_536 : view.getUint16(16);
  // The count of pages holds where both counters of changes are alike (SQLite file format, section 1.3.7).
  const isCounted = view.getUint32(24) === view.getUint32(92);
  return isCounted && view.getUint32(28) * page_bytes > bytes.length ? "it is cut off" : null;
}

interface ReadLayer extends UnplacedLayer {
  readonly features: readonly FoundFeature[];
}

async function readLayers(
  file: NamedBytes,
  database: Database,
  answers: ReadingAnswers,
  { progress, signal }: ReadingFollowed,
): Promise<Outcome<FoundFile>> {
  const { name } = file;
  const tables = layerTables(database);
  if (tables === null) return failure([brokenFile(name, title, "it is a database without layers of shapes")]);
  const findings: Finding[] = [];
  if (tables.leftOut.length > 0) findings.push(layersLeftOut(name, tables.leftOut, "they are no plain tables"));
  const layers: ReadLayer[] = [];
  const soFar = { records: 0, places: 0, values: 0 };
  for (const [i, table] of tables.layers.entries()) {
    const features: FoundFeature[] = [];
    const geometries: Geometry[] = [];
    const left = new Map<string, { count: number; first: string }>();
    for (const record of recordsOf(database, table)) {
      if (soFar.records++ % recordsBetweenLooks === 0) {
        progress?.(i / tables.layers.length);
        await breathe();
        if (signal?.aborted === true) return failure([stopped(name)]);
      }
      const { shape, values } = record;
      if (typeof shape === "string" || shape === null) {
        const why = shape ?? "they are empty";
        const before = left.get(why) ?? { count: 0, first: `number ${features.length + left.size + 1}` };
        left.set(why, { ...before, count: before.count + 1 });
      } else {
        for (const _ of positionsIn(shape.geometry)) soFar.places++;
        geometries.push(shape.geometry);
        features.push({ name: record.name, layer: table.table, geometry: shape.geometry, values });
      }
      soFar.values += values.length;
      if (soFar.records > mostRecords || soFar.places > mostPlaces || soFar.values > mostValues) {
        return failure([tooMuchInside(name)]);
      }
    }
    findings.push(...[...left].map(([why, { count, first }]) => shapesLeftOut(table.table, count, why, first)));
    layers.push({ name: table.table, stated: statedBy(database, table.srsId), geometries, features });
  }
  const features = layers.flatMap((layer) => layer.features);
  if (features.length === 0) return failure([...findings, nothingFound(name, title)]);
  const placing = placeLayers(
    layers.filter((layer) => layer.features.length > 0),
    answers,
  );
  if (!placing.ok) return failure(placing.findings);
  const { questions, system } = placing.value;
  return success({ format: title, system, features: questions.length > 0 ? [] : features, questions }, [
    ...findings,
    ...placing.findings,
  ]);
}

/** -1 and 0 are "not known" (clause 1.1.2.1.2). */
function statedBy(database: Database, srsId: number): Outcome<CoordinateSystem> | null {
  const row = srsId === -1 || srsId === 0 ? null : systemRow(database, srsId);
  if (row === null) return null;
  const byCode = row.code === null ? null : systemOfCode(row.code);
  if (byCode?.ok === true || !/[[(]/.test(row.wkt)) return byCode;
  const byText = systemOfWkt(row.wkt);
  return byText.ok || byCode === null ? byText : byCode;
}

interface TableRecord {
  readonly shape: ReturnType<typeof geometryOfBlob>;
  readonly name: string | null;
  readonly values: FoundFeature["values"];
}

function* recordsOf(database: Database, { table, geometry, columns }: LayerTable): Generator<TableRecord> {
  const nameIs = nameColumn(columns.map(({ name }) => name));
  const asked = [geometry, ...columns.map(({ name }) => name)].map(quoted).join(", ");
  const statement = database.prepare(`SELECT ${asked} FROM ${quoted(table)}`);
  try {
    while (statement.step()) {
      const [blob, ...cells] = statement.get();
      const values = cells.flatMap((cell, i): FoundFeature["values"] => {
        const column = columns[i];
        if (column === undefined || cell === null || cell === undefined || cell instanceof Uint8Array) return [];
        if (column.isYes && (cell === 0 || cell === 1)) return [[column.name, cell === 1]];
        return [[column.name, typeof cell === "string" ? cell.slice(0, longestValue_letters) : cell]];
      });
      const called = cells[nameIs];
      yield {
        shape: blob instanceof Uint8Array ? geometryOfBlob(blob) : null,
        name:
          typeof called === "string" || typeof called === "number"
            ? String(called).slice(0, longestValue_letters)
            : null,
        values: values.filter(([column]) => column !== columns[nameIs]?.name),
      };
    }
  } finally {
    statement.free();
  }
}
