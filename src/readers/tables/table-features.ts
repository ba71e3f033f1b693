import type { Geometry, Position } from "geojson";
import type { CoordinateSystem } from "../../core/systems/coordinate-system.ts";
import { unitLength_m } from "../../core/systems/unit-length.ts";
import type { FoundFeature } from "../reading.ts";
import { type DecimalMark, numberOf } from "./numbers.ts";
import type { Pair } from "./place-heads.ts";
import { placedWkt } from "./placed-wkt.ts";
import type { Cell, FileTable, TableLine } from "./table.ts";
import type { TableLayout } from "./table-layout.ts";
import { coordinateOf, eastFirst, linesAStep } from "./table-numbers.ts";

/** How the numbers of a table become places. */
export interface Placing {
  readonly system: CoordinateSystem;
  readonly mark: DecimalMark;
  readonly isSwapped: boolean;
  readonly height_m: number | null;
}

export interface TableFeatures {
  readonly features: readonly FoundFeature[];
  /** Lines that nothing was made of, and the first of them with the reason. */
  readonly left: number;
  readonly why: readonly string[];
}

const mostTold = 5;

/** What a table holds, step by step: a point a line, a line where it has two ends, and lines or areas of the corners that stand under one name. */
export function* tableFeatures(
  table: FileTable,
  layout: TableLayout,
  placing: Placing,
): Generator<number, TableFeatures> {
  const features: FoundFeature[] = [];
  const why: string[] = [];
  const cornered = layout.corner !== null && layout.name !== null;
  const valuesOf = valueReader(layout, placing, table.isTyped);
  let group: Group | null = null;
  let left = 0;
  let lines = 0;
  const leave = (line: number, reason: string, many = 1) => {
    left += many;
    if (why.length < mostTold) why.push(`line ${line} ${reason}`);
  };
  const close = (done: Group | null) => {
    if (done === null) return;
    const geometry = groupGeometry(done);
    if (geometry === null) leave(done.line, "has too few corners of its kind", done.corners);
    else features.push({ ...done.feature, layer: table.layer, geometry });
  };
  for (const each of table.lines()) {
    if (typeof each === "string") break;
    if (each.line <= layout.headLine) continue;
    lines++;
    if (lines % linesAStep === 0) yield lines;
    const geometry = geometryOf(each, layout, placing);
    if (typeof geometry === "string") {
      leave(each.line, geometry);
      continue;
    }
    const name = layout.name === null ? null : nameOf(each.cells[layout.name]);
    if (cornered && geometry.type === "Point") {
      if (group === null || group.feature.name !== name) {
        close(group);
        group = newGroup(each.line, layout, name, valuesOf(each.cells));
      }
      put(group, layout, each.cells, geometry.coordinates);
    } else features.push({ name, layer: table.layer, geometry, values: valuesOf(each.cells) });
  }
  close(group);
  return { features, left, why };
}

/** The geometry of one line, or why there is none. */
function geometryOf({ cells }: TableLine, { place }: TableLayout, placing: Placing): Geometry | string {
  if (place.kind === "wkt") return placedWkt(String(cells[place.column] ?? ""), placing.system, placing.isSwapped);
  const positions: Position[] = [];
  for (const pair of place.pairs) {
    const position = positionOf(cells, pair, placing);
    if (typeof position === "string") return position;
    positions.push(position);
  }
  const [only = []] = positions;
  return positions.length === 1 ? { type: "Point", coordinates: only } : { type: "LineString", coordinates: positions };
}

function positionOf(
  cells: readonly Cell[],
  pair: Pair,
  { system, mark, isSwapped, height_m }: Placing,
): Position | string {
  const [one, other] = [coordinateOf(cells[pair.east] ?? "", mark), coordinateOf(cells[pair.north] ?? "", mark)];
  if (one === null || other === null) return "has no number for its place";
  const ordered = eastFirst(one, other, isSwapped);
  if (ordered === null) return "has two numbers of the same direction";
  const [x, y] = ordered;
  const [lon, lat] = system.toLonLat(x, y);
  if (!(Math.abs(lon) <= 180 && Math.abs(lat) <= 90)) return "has numbers that are no place in the system";
  const height = pair.height === null ? null : numberOf(cells[pair.height.column], mark);
  const unit_m = pair.height?.unit == null ? height_m : unitLength_m[pair.height.unit];
  return height === null || unit_m === null ? [lon, lat] : [lon, lat, height * unit_m];
}

/** Everything a line says beside its name and its place. */
function valueReader(layout: TableLayout, { mark, height_m }: Placing, isTyped: boolean) {
  const { place, name, part, ring, corner } = layout;
  const cornered = corner !== null && name !== null ? [part, ring, corner] : [];
  const placed =
    place.kind === "wkt"
      ? [place.column]
      : place.pairs.flatMap(({ east, north, height }) => [
          east,
          north,
          ...(height !== null && (height.unit !== null || height_m !== null) ? [height.column] : []),
        ]);
  const taken = new Set([name, ...cornered, ...placed]);
  const same = sameText();
  const told = (cell: Cell) => same(isTyped ? cell : cellValue(cell, mark));
  const kept = layout.heads.flatMap((head, i) => (taken.has(i) ? [] : [[head, i] as const]));
  return (cells: readonly Cell[]): FoundFeature["values"] => {
    const values: (readonly [string, string | number | boolean])[] = [];
    for (const [head, i] of kept) {
      const cell = cells[i];
      if (cell !== undefined && cell !== "") values.push([head, told(cell)]);
    }
    // Cells beyond the last head are kept too.
    for (let i = layout.heads.length; i < cells.length; i++) {
      const cell = cells[i];
      if (cell !== undefined && cell !== "") values.push([`column ${i + 1}`, told(cell)]);
    }
    return values;
  };
}

/** Texts that stand in many lines, such as the kind of a thing, are held once. */
const mostShared = 5000;

function sameText(): <T>(value: T) => T | string {
  const texts = new Map<string, string>();
  return (value) => {
    if (typeof value !== "string") return value;
    const known = texts.get(value);
    if (known === undefined && texts.size < mostShared) texts.set(value, value);
    return known ?? value;
  };
}

/** Numbers as numbers, unless a number would lose something: leading zeros, more digits than are kept. */
function cellValue(cell: Cell, mark: DecimalMark): string | number | boolean {
  if (typeof cell !== "string") return cell;
  const isPlain = /^-?(?:0|[1-9]\d*)(?:[.,]\d+)?$/.test(cell) && cell.length <= 16;
  return (isPlain ? numberOf(cell, mark) : null) ?? unguarded(cell);
}

function nameOf(cell: Cell | undefined): string | null {
  return cell === undefined || cell === "" ? null : unguarded(String(cell));
}

/** Text as it was before an apostrophe kept an office program from running it. */
function unguarded(text: string): string {
  return text.replace(/^'(?=[=+\-@])/, "");
}

/** Corners under one name. */
interface Group {
  readonly line: number;
  readonly isArea: boolean;
  readonly feature: Pick<FoundFeature, "name" | "values">;
  readonly polygons: Map<string, Map<string, Position[]>>;
  corners: number;
}

function newGroup(
  line: number,
  { part, ring }: TableLayout,
  name: string | null,
  values: FoundFeature["values"],
): Group {
  return { line, isArea: part !== null || ring !== null, feature: { name, values }, polygons: new Map(), corners: 0 };
}

function put(group: Group, { part, ring }: TableLayout, cells: readonly Cell[], position: Position): void {
  const key = (column: number | null) => (column === null ? "" : String(cells[column] ?? ""));
  const rings = group.polygons.get(key(part)) ?? new Map<string, Position[]>();
  group.polygons.set(key(part), rings);
  const positions = rings.get(key(ring)) ?? [];
  rings.set(key(ring), positions);
  positions.push(position);
  group.corners++;
}

function groupGeometry({ isArea, polygons }: Group): Geometry | null {
  const parts = [...polygons.values()].map((rings) => [...rings.values()]);
  if (!isArea) {
    const coordinates = parts[0]?.[0] ?? [];
    return coordinates.length < 2 ? null : { type: "LineString", coordinates };
  }
  const coordinates = parts.map((rings) => rings.map(closed));
  if (coordinates.flat().some((ring) => ring.length < 4)) return null;
  const [only] = coordinates;
  return coordinates.length === 1 && only !== undefined
    ? { type: "Polygon", coordinates: only }
    : { type: "MultiPolygon", coordinates };
}

function closed(ring: readonly Position[]): Position[] {
  const [first] = ring;
  const last = ring.at(-1);
  const isClosed = first !== undefined && last !== undefined && first[0] === last[0] && first[1] === last[1];
  return isClosed || first === undefined ? [...ring] : [...ring, first];
}
