import type { Geometry, Position } from "geojson";
import type { XmlElement } from "../../xml-steps.ts";
import { childOf, childrenOf, childText } from "../../xml-tree.ts";

/** What came of the shape of a placemark. */
export interface KmlShape {
  readonly geometry: Geometry | null;
  /** Parts without a place: too few corners, no numbers, not on the globe. */
  readonly lost: number;
  /** Whether it has places with spaces behind the commas, which the format does not allow. */
  readonly isSpaced: boolean;
}

type Single =
  | { readonly type: "Point"; readonly coordinates: Position }
  | { readonly type: "LineString"; readonly coordinates: Position[] }
  | { readonly type: "Polygon"; readonly coordinates: Position[][] };

/**
 * The shape of a placemark: points, lines, polygons, tracks, and several of them, folded into one of several parts where they are of one
 * kind. Heights above the ground rather than above the sea are left out. Source: OGC 07-147r2 (KML 2.2), section 10; tracks: KML 2.3.
 */
export function kmlShape(placemark: XmlElement): KmlShape {
  const parts: Single[] = [];
  const state = { lost: 0, isSpaced: false };
  const walk = (element: XmlElement): void => {
    switch (element.name) {
      case "MultiGeometry":
      case "MultiTrack":
        element.children.forEach(walk);
        return;
      case "Point":
      case "LineString":
      case "LinearRing":
      case "Polygon":
      case "Track": {
        const part = single(element, state);
        if (part === null) state.lost++;
        else parts.push(part);
        return;
      }
      case "Model":
        state.lost++;
    }
  };
  placemark.children.forEach(walk);
  return { geometry: folded(parts), ...state };
}

function single(element: XmlElement, state: { isSpaced: boolean }): Single | null {
  const isAbove = childText(element, "altitudeMode") === "relativeToGround";
  const places = (of: XmlElement): Position[] | null => {
    const text = childText(of, "coordinates") ?? "";
    if (/,\s/.test(text)) state.isSpaced = true;
    return positions(text.replace(/\s*,\s*/g, ",").split(/\s+/), ",", isAbove);
  };
  switch (element.name) {
    case "Point": {
      const [at, ...more] = places(element) ?? [];
      return at === undefined || more.length > 0 ? null : { type: "Point", coordinates: at };
    }
    case "LineString":
    case "LinearRing": {
      const line = places(element);
      return line === null || line.length < 2 ? null : { type: "LineString", coordinates: line };
    }
    case "Track": {
      const line = positions(
        childrenOf(element, "coord").map(({ text }) => text.trim().replace(/\s+/g, " ")),
        " ",
        isAbove,
      );
      return line === null || line.length < 2 ? null : { type: "LineString", coordinates: line };
    }
    case "Polygon": {
      const rings = [...childrenOf(element, "outerBoundaryIs").slice(0, 1), ...childrenOf(element, "innerBoundaryIs")]
        .flatMap((boundary) => childrenOf(boundary, "LinearRing"))
        .map((ring) => closed(places(ring)));
      const sound = rings.filter((ring) => ring !== null);
      const isWhole = childOf(element, "outerBoundaryIs") !== null && sound.length === rings.length && sound.length > 0;
      return isWhole ? { type: "Polygon", coordinates: sound } : null;
    }
    default:
      return null;
  }
}

/** Places in numbers, or null when one of them is none. */
function positions(texts: readonly string[], between: string, isAbove: boolean): Position[] | null {
  const found: Position[] = [];
  for (const text of texts) {
    if (text === "") continue;
    const [lon, lat, height] = text.split(between).map((part) => (part === "" ? Number.NaN : Number(part)));
    if (lon === undefined || lat === undefined || !Number.isFinite(lon) || !Number.isFinite(lat)) return null;
    found.push(height === undefined || !Number.isFinite(height) || isAbove ? [lon, lat] : [lon, lat, height]);
  }
  return found;
}

/** A ring that ends where it begins, with three corners or more; null for less. */
function closed(ring: Position[] | null): Position[] | null {
  const [first] = ring ?? [];
  const last = ring?.at(-1);
  if (ring === null || first === undefined || last === undefined) return null;
  const whole = first[0] === last[0] && first[1] === last[1] ? ring : [...ring, first];
  return whole.length > 3 ? whole : null;
}

function folded(parts: readonly Single[]): Geometry | null {
  const [first, ...others] = parts;
  if (first === undefined) return null;
  if (others.length === 0) return first;
  const points = parts.flatMap((part) => (part.type === "Point" ? [part.coordinates] : []));
  const lines = parts.flatMap((part) => (part.type === "LineString" ? [part.coordinates] : []));
  const polygons = parts.flatMap((part) => (part.type === "Polygon" ? [part.coordinates] : []));
  if (points.length === parts.length) return { type: "MultiPoint", coordinates: points };
  if (lines.length === parts.length) return { type: "MultiLineString", coordinates: lines };
  if (polygons.length === parts.length) return { type: "MultiPolygon", coordinates: polygons };
  return { type: "GeometryCollection", geometries: [...parts] };
}
