import type { SystemUnit } from "../../core/systems/coordinate-system.ts";

/** What the heads of a table say about its columns. Columns are counted from 0. */
export interface PlaceHeads {
  readonly place: PlaceColumns;
  /** The column of names; null without one. */
  readonly name: number | null;
  /** Number of the piece, of the ring in it, of the corner: lines that go together make a line or an area. */
  readonly part: number | null;
  readonly ring: number | null;
  readonly corner: number | null;
}

/** Where the places stand. */
export type PlaceColumns =
  | { readonly kind: "pairs"; readonly of: PlaceKind; readonly pairs: readonly Pair[]; readonly unit: HeadUnit }
  | { readonly kind: "wkt"; readonly column: number };

/** What the heads call the numbers: degrees, lengths, or x and y, which may be either. */
export type PlaceKind = "degrees" | "lengths" | "either";
export type HeadUnit = Exclude<SystemUnit, "deg"> | null;

export interface Pair {
  /** Longitude or easting. */
  readonly east: number;
  readonly north: number;
  readonly height: { readonly column: number; readonly unit: HeadUnit } | null;
}

const words = {
  longitude: ["longitude", "long", "lon", "lng", "longitud", "langengrad", "laengengrad"],
  latitude: ["latitude", "lat", "latitud", "breitengrad"],
  easting: ["easting", "eastings", "east", "e", "este", "rechtswert", "ostwert"],
  northing: ["northing", "northings", "north", "n", "norte", "nord", "hochwert", "nordwert"],
  x: ["x", "xcoord", "x_coord", "point_x", "coord_x"],
  y: ["y", "ycoord", "y_coord", "point_y", "coord_y"],
  height: ["height", "elevation", "elev", "ele", "z", "altitude", "alt", "h", "hoehe", "hohe", "rl"],
  name: [
    "name",
    "point",
    "point_id",
    "pointid",
    "point_name",
    "pt",
    "pt_id",
    "pt_no",
    "point_no",
    "id",
    "label",
    "title",
    "nr",
    "no",
  ],
  wkt: ["wkt", "geometry", "geom", "the_geom", "wkt_geom"],
  part: ["part"],
  ring: ["ring"],
  corner: ["corner", "vertex", "vertex_index"],
} as const;
type Word = keyof typeof words;

interface Head {
  readonly plain: string;
  readonly unit: HeadUnit;
}

/** The columns of places by the heads of a table; null when no two of them say where something is. */
export function placeHeads(cells: readonly string[]): PlaceHeads | null {
  const heads = cells.map(headOf);
  const place = wktColumn(heads) ?? pairsOf(heads);
  if (place === null) return null;
  const column = (word: Word) => columnOf(heads, word)?.at ?? null;
  return { place, name: nameColumn(heads), part: column("part"), ring: column("ring"), corner: column("corner") };
}

function pairsOf(heads: readonly Head[]): PlaceColumns | null {
  for (const [of, east, north] of [
    ["degrees", "longitude", "latitude"],
    ["lengths", "easting", "northing"],
    ["either", "x", "y"],
  ] as const) {
    const starts = pairOf(heads, east, north, "start_");
    const ends = pairOf(heads, east, north, "end_");
    if (starts !== null && ends !== null)
      return { kind: "pairs", of, pairs: [starts, ends], unit: unitOf(heads, starts) };
    const pair = pairOf(heads, east, north, "");
    if (pair !== null) return { kind: "pairs", of, pairs: [pair], unit: unitOf(heads, pair) };
  }
  return null;
}

function pairOf(heads: readonly Head[], east: Word, north: Word, before: string): Pair | null {
  const [one, other] = [columnOf(heads, east, before), columnOf(heads, north, before)];
  if (one === null || other === null) return null;
  const height = columnOf(heads, "height", before);
  return { east: one.at, north: other.at, height: height === null ? null : { column: height.at, unit: height.unit } };
}

function unitOf(heads: readonly Head[], { east }: Pair): HeadUnit {
  return heads[east]?.unit ?? null;
}

function wktColumn(heads: readonly Head[]): PlaceColumns | null {
  const found = columnOf(heads, "wkt");
  return found === null ? null : { kind: "wkt", column: found.at };
}

/** The first word that a column is called by counts, then the first column. */
function columnOf(
  heads: readonly Head[],
  word: Word,
  before = "",
): { readonly at: number; readonly unit: HeadUnit } | null {
  for (const each of words[word]) {
    const at = heads.findIndex(({ plain }) => plain === `${before}${each}`);
    if (at >= 0) return { at, unit: heads[at]?.unit ?? null };
  }
  return null;
}

function nameColumn(heads: readonly Head[]): number | null {
  return columnOf(heads, "name")?.at ?? null;
}

/** "startEasting_m" is start_easting in metres, "Elev. (ft)" elev in feet, "Höhe [m]" hohe in metres. */
function headOf(cell: string): Head {
  const plain = cell
    .replace(/^\uFEFF/, "")
    .slice(0, 100)
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/(?<=[a-z])(?=[A-Z][a-z])/g, "_")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "_")
    .replace(/^_|_$/g, "");
  const [, word = plain, unit] =
    /^(.+?)_(m|metres?|meters?|ft|feet|foot|int_ft|us_?ft|us_survey_f(?:oo|ee)?t|ftus|deg|degrees)$/.exec(plain) ?? [];
  return { plain: word, unit: unit === undefined ? null : headUnit(unit) };
}

function headUnit(unit: string): HeadUnit {
  if (unit.startsWith("m")) return "m";
  if (unit.startsWith("us") || unit === "ftus") return "us-ft";
  return unit.startsWith("deg") ? null : "ft";
}
