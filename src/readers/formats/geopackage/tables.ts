import type { Database, SqlValue } from "sql.js";

/** A layer of a GeoPackage: its table, the column of its shapes, and the others. */
export interface LayerTable {
  readonly table: string;
  readonly geometry: string;
  readonly srsId: number;
  readonly columns: readonly { readonly name: string; readonly isYes: boolean }[];
}

export interface LayerTables {
  readonly layers: readonly LayerTable[];
  /** Layers that are views or worked out by programs inside the file: those are not run. */
  readonly leftOut: readonly string[];
}

const mostLayers = 1000;

/**
 * The layers of a GeoPackage (OGC 12-128r17, clause 2.1); null when it is none. A file may hold views, generated columns and virtual
 * tables, which are programs: only plain tables and plain columns are ever asked for anything.
 */
export function layerTables(database: Database): LayerTables | null {
  const plain = plainTables(database);
  if (!plain.has("gpkg_geometry_columns") || !isPlain(database, "gpkg_geometry_columns")) return null;
  const listed = rowsOf(
    database,
    `SELECT table_name, column_name, srs_id FROM gpkg_geometry_columns LIMIT ${mostLayers}`,
  );
  const layers: LayerTable[] = [];
  const leftOut: string[] = [];
  for (const [table, geometry, srsId] of listed) {
    if (typeof table !== "string" || typeof geometry !== "string") continue;
    const name = plain.get(table.toLowerCase());
    const all = name === undefined ? [] : columnsOf(database, name);
    const shape = all.find((column) => column.name.toLowerCase() === geometry.toLowerCase());
    if (name === undefined || shape === undefined || shape.isMade) leftOut.push(table);
    else {
      const others = all.filter((column) => column !== shape && !column.isMade && !column.isKey);
      layers.push({ table: name, geometry: shape.name, srsId: typeof srsId === "number" ? srsId : 0, columns: others });
    }
  }
  return { layers, leftOut };
}

/** What the file says of a coordinate system: its code of the EPSG register, and its well-known text. */
export function systemRow(
  database: Database,
  srsId: number,
): { readonly code: number | null; readonly wkt: string } | null {
  if (!plainTables(database).has("gpkg_spatial_ref_sys") || !isPlain(database, "gpkg_spatial_ref_sys")) return null;
  const [row] = rowsOf(
    database,
    `SELECT organization, organization_coordsys_id, definition FROM gpkg_spatial_ref_sys WHERE srs_id = ${Math.trunc(srsId)} LIMIT 1`,
  );
  const [organization, code, definition] = row ?? [];
  if (row === undefined) return null;
  const isEpsg = typeof organization === "string" && organization.toUpperCase() === "EPSG" && typeof code === "number";
  return { code: isEpsg ? code : null, wkt: typeof definition === "string" ? definition : "" };
}

/** A name as SQL has it. */
export function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}

function plainTables(database: Database): ReadonlyMap<string, string> {
  const rows = rowsOf(
    database,
    "SELECT name FROM sqlite_master WHERE type = 'table' AND sql NOT LIKE 'CREATE VIRTUAL%'",
  );
  return new Map(rows.flatMap(([name]) => (typeof name === "string" ? [[name.toLowerCase(), name] as const] : [])));
}

function isPlain(database: Database, table: string): boolean {
  return columnsOf(database, table).every(({ isMade }) => !isMade);
}

function columnsOf(database: Database, table: string) {
  return rowsOf(database, `PRAGMA table_xinfo(${quoted(table)})`).map(([, name, type, , , key, hidden]) => ({
    name: String(name),
    isYes: /^bool/i.test(String(type)),
    isKey: key === 1 && /^int/i.test(String(type)),
    isMade: hidden !== 0,
  }));
}

function rowsOf(database: Database, sql: string): readonly (readonly SqlValue[])[] {
  return database.exec(sql)[0]?.values ?? [];
}
