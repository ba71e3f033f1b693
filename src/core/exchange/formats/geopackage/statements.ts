import type { CoordinateSystem } from "../../../systems/coordinate-system.ts";
import { lonLatSystem } from "../../../systems/coordinate-system.ts";
import type { HandOverJob, SqlValue, Statement } from "../../format.ts";
import type { Column, Layer, Value } from "../../layers/layer.ts";
import { namedColumns } from "../../named-columns.ts";
import { wktOf } from "../shapefile/layer-set.ts";
import { emptyBox, geometryBlob } from "./geometry-blob.ts";

/** "GPKG", and version 1.3 (clause 1.1.1.1.1). */
const applicationId = 0x47504b47;
const version = 10300;
/** Of systems that no register has. */
const ownSystem = 100_001;

/** The tables that every GeoPackage has (annex C.1 to C.3). */
const tables = [
  `CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT NOT NULL, srs_id INTEGER NOT NULL PRIMARY KEY, organization TEXT NOT NULL,
    organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT)`,
  `CREATE TABLE gpkg_contents (table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL, identifier TEXT UNIQUE, description TEXT DEFAULT '',
    last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')), min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE,
    srs_id INTEGER, CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id))`,
  `CREATE TABLE gpkg_geometry_columns (table_name TEXT NOT NULL, column_name TEXT NOT NULL, geometry_type_name TEXT NOT NULL,
    srs_id INTEGER NOT NULL, z TINYINT NOT NULL, m TINYINT NOT NULL, CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
    CONSTRAINT uk_gc_table_name UNIQUE (table_name), CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
    CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id))`,
];

/** What makes the database of these layers; `about` stands as their description. */
export function* statements(job: HandOverJob, layers: readonly Layer[], about: string): Generator<Statement> {
  yield plain(`PRAGMA application_id = ${applicationId}`);
  yield plain(`PRAGMA user_version = ${version}`);
  for (const table of tables) yield plain(table);
  const systems = systemRows(job.system);
  yield { sql: "INSERT INTO gpkg_spatial_ref_sys VALUES (?, ?, ?, ?, ?, ?)", rows: systems };
  for (const layer of layers) yield* layerStatements(job, layer, about);
}

/** The number that the system of a job has in the database. */
function srsIdOf({ code }: CoordinateSystem): number {
  return code ?? ownSystem;
}

function systemRows(system: CoordinateSystem): readonly (readonly SqlValue[])[] {
  const own = srsIdOf(system);
  const row = (each: CoordinateSystem): readonly SqlValue[] => [
    each.name,
    srsIdOf(each),
    each.code === null ? "NONE" : "EPSG",
    srsIdOf(each),
    wktOf(each) ?? "undefined",
    each.definition,
  ];
  return [
    ["Undefined Cartesian SRS", -1, "NONE", -1, "undefined", null],
    ["Undefined geographic SRS", 0, "NONE", 0, "undefined", null],
    row(lonLatSystem),
    ...(own === srsIdOf(lonLatSystem) ? [] : [row(system)]),
  ];
}

const geometryType = { point: "POINT", line: "LINESTRING", area: "MULTIPOLYGON" } as const;
const columnType = { text: "TEXT", number: "DOUBLE", whole: "INTEGER", yes: "BOOLEAN" } as const;

function* layerStatements(job: HandOverJob, layer: Layer, about: string): Generator<Statement> {
  const { kind, shape } = layer;
  const { columns, valuesOf } = namedColumns(layer, job.names);
  const names = apart(columns);
  const described = columns.map(({ type }, i) => `${quoted(names[i] ?? "")} ${columnType[type]}`);
  const type = geometryType[shape];
  yield plain(
    `CREATE TABLE ${quoted(kind)} (fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, geom ${type}, ${described.join(", ")})`,
  );
  const srsId = srsIdOf(job.system);
  const box = emptyBox();
  let withHeights = 0;
  yield {
    sql: `INSERT INTO ${quoted(kind)} (geom, ${names.map(quoted).join(", ")}) VALUES (?${", ?".repeat(names.length)})`,
    rows: (function* () {
      for (const feature of layer.features()) {
        const { blob, hasHeights } = geometryBlob(feature.geometry, job.system, srsId, box);
        if (hasHeights) withHeights++;
        yield [blob, ...valuesOf(feature).map(sqlValue)];
      }
    })(),
  };
  const { west, south, east, north } = box;
  const moment = job.writtenAt.replace(/:(\d\d)Z$/, ":$1.000Z");
  yield {
    sql: "INSERT INTO gpkg_contents VALUES (?, 'features', ?, ?, ?, ?, ?, ?, ?, ?)",
    rows: [[kind, kind, about, moment, west, south, east, north, srsId]],
  };
  // 2: some have heights (clause 2.1.5).
  const z = withHeights === 0 ? 0 : withHeights === layer.count ? 1 : 2;
  yield { sql: "INSERT INTO gpkg_geometry_columns VALUES (?, 'geom', ?, ?, ?, 0)", rows: [[kind, type, srsId, z]] };
}

/** Names of columns that differ in more than capitals, which SQLite does not tell apart. */
export function apart(columns: readonly Pick<Column, "name">[]): readonly string[] {
  const taken = new Set(["fid", "geom"]);
  return columns.map(({ name }) => {
    let found = name;
    for (let i = 2; taken.has(found.toLowerCase()); i++) found = `${name}_${i}`;
    taken.add(found.toLowerCase());
    return found;
  });
}

function sqlValue(value: Value): SqlValue {
  if (typeof value === "boolean") return value ? 1 : 0;
  return typeof value === "number" && !Number.isFinite(value) ? null : value;
}

function quoted(name: string): string {
  return `"${name.replaceAll('"', '""').replaceAll("\0", "")}"`;
}

function plain(sql: string): Statement {
  return { sql, rows: null };
}
