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
    const isSpaced = /,\s+[-+.\d]/.test(text);
    if (isSpaced) state.isSpaced = true;
    return positions(text, isSpaced ? spacedTuple : tuple, isAbove);
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
      // An empty one stands where the receiver had no place.
      const texts = childrenOf(element, "coord").flatMap(({ text }) => (text.trim() === "" ? [] : [text.trim()]));
      const each = texts.map((text) => positions(text, trackTuple, isAbove));
      const line = each.flatMap((places) => places ?? []);
      return each.includes(null) || line.length < 2 ? null : { type: "LineString", coordinates: line };
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

const tuple = /\s*([^\s,]{1,40}),([^\s,]{1,40})(?:,([^\s,]{0,40}))?(?=\s|$)/y;
const spacedTuple = /\s*([^\s,]{1,40})\s*,\s*([^\s,]{1,40})(?:\s*,\s*([^\s,]{1,40}))?(?=\s|$)/y;
const trackTuple = /\s*([^\s,]{1,40})\s+([^\s,]{1,40})(?:\s+([^\s,]{1,40}))?$/y;

/** Places one after another, each as the pattern has it; null when one of them is none. */
function positions(text: string, pattern: RegExp, isAbove: boolean): Position[] | null {
  const found: Position[] = [];
  for (let at = 0; at < text.length; at = pattern.lastIndex) {
    pattern.lastIndex = at;
    const [, lonText, latText, heightText = ""] = pattern.exec(text) ?? [];
    const [lon, lat] = [Number(lonText), Number(latText)];
    if (!Number.isFinite(lon) || !Number.isFinite(lat)) return null;
    const height = heightText === "" || isAbove ? Number.NaN : Number(heightText);
    found.push(Number.isFinite(height) ? [lon, lat, height] : [lon, lat]);
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
