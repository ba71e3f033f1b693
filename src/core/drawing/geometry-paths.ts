import { isJsonObject, member, withMember } from "../project/json-value.ts";
import type { Json, JsonObject } from "../project/project.ts";
import { isSamePlace, movedTo, placeOf } from "./position.ts";

/** One point, line or ring of a geometry, with its positions as they stand in the file. */
export interface GeometryPath {
  /** Counts all paths of the geometry in reading order. */
  readonly path: number;
  readonly kind: "point" | "line" | "ring";
  /** Polygon that a ring belongs to, counted over the geometry; -1 for points and lines. */
  readonly polygon: number;
  readonly isHole: boolean;
  /** Without the position that closes a ring. */
  readonly positions: readonly Json[];
}

/** The positions that stand in place of a path's: the same list, a changed one, several, or none. */
export type PathChange = (path: GeometryPath) => readonly (readonly Json[])[];

/** Every path of a geometry that is known to be sound. */
export function geometryPaths(geometry: Json): readonly GeometryPath[] {
  const paths: GeometryPath[] = [];
  withPaths(geometry, (path) => {
    paths.push(path);
    return [path.positions];
  });
  return paths;
}

/**
 * The geometry with its paths changed; null when nothing is left of it. Paths that the change gives back stay the very same lists.
 * A polygon whose outline goes loses its holes too; lists that are given beyond the first follow as rings or lines of their own.
 */
export function withPaths(geometry: Json, change: PathChange): Json {
  let paths = 0;
  let polygons = 0;
  const piece = (kind: GeometryPath["kind"], value: Json, polygon: number, isHole: boolean): readonly Json[] => {
    const all = kind === "point" ? [value] : listOf(value);
    const isClosed = kind === "ring" && all.length > 1 && isSamePlace(placeOf(all[0]), placeOf(all.at(-1)));
    const path = { path: paths++, kind, polygon, isHole, positions: isClosed ? all.slice(0, -1) : all };
    return change(path).map((positions): Json => {
      if (positions === path.positions) return value;
      if (kind === "point") return positions[0] ?? null;
      return kind === "ring" ? closed(positions, path.positions, isClosed ? all.at(-1) : undefined) : positions;
    });
  };
  const rings = (value: Json): readonly Json[] => {
    const polygon = polygons++;
    const changed = listOf(value).map((ring, r) => piece("ring", ring, polygon, r > 0));
    return changed[0]?.length === 0 ? [] : changed.flat();
  };
  const changed = (value: Json): Json => {
    if (!isJsonObject(value)) return value;
    const type = member(value, "type");
    const coordinates = member(value, "coordinates") ?? null;
    switch (type) {
      case "Point": {
        if (listOf(coordinates).length === 0) return value;
        return put(value, "coordinates", piece("point", coordinates, -1, false)[0]);
      }
      case "MultiPoint":
        return putList(
          value,
          listOf(coordinates).flatMap((each) => piece("point", each, -1, false)),
        );
      case "LineString": {
        const lines = piece("line", coordinates, -1, false);
        if (lines.length < 2) return put(value, "coordinates", lines[0]);
        return { ...value, type: "MultiLineString", coordinates: lines };
      }
      case "MultiLineString":
        return putList(
          value,
          listOf(coordinates).flatMap((each) => piece("line", each, -1, false)),
        );
      case "Polygon":
        return putList(value, rings(coordinates));
      case "MultiPolygon":
        return putList(
          value,
          listOf(coordinates).flatMap((each) => {
            const changed = rings(each);
            return changed.length === 0 ? [] : [sameList(each, changed)];
          }),
        );
      case "GeometryCollection": {
        const parts = listOf(member(value, "geometries") ?? null);
        const kept = parts.map(changed).filter((part) => part !== null);
        return kept.length === 0 && parts.length > 0 ? null : put(value, "geometries", sameList(parts, kept));
      }
      default:
        return value;
    }
  };
  return changed(geometry);
}

function putList(geometry: JsonObject, changed: readonly Json[]): Json {
  const before = listOf(member(geometry, "coordinates") ?? null);
  if (changed.length === 0 && before.length > 0) return null;
  return put(geometry, "coordinates", sameList(before, changed));
}

function put(geometry: JsonObject, name: string, value: Json | undefined): Json {
  if (value === undefined) return null;
  return member(geometry, name) === value ? geometry : withMember(geometry, name, value);
}

/** The list as it was when every entry is the same. */
function sameList(before: Json, changed: readonly Json[]): Json {
  const list = listOf(before);
  return list.length === changed.length && list.every((each, i) => each === changed[i]) ? before : changed;
}

/** A ring as the file has it: closed, unless it was left open there. The closing position keeps its own height when its corner is moved. */
function closed(positions: readonly Json[], before: readonly Json[], closing: Json | undefined): Json {
  const [first] = positions;
  if (first === undefined || (closing === undefined && before.length > 0)) return positions;
  if (first === before[0] && closing !== undefined) return [...positions, closing];
  const isMoved = positions.length === before.length && positions[1] === before[1];
  return [...positions, isMoved && closing !== undefined ? movedTo(closing, placeOf(first)) : first];
}

function listOf(value: Json): readonly Json[] {
  return Array.isArray(value) ? value : [];
}
