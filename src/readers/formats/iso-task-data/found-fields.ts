import type { Geometry, Position } from "geojson";
import type { Finding } from "../../../core/finding.ts";
import { linesWithoutEnd, withoutNumbers } from "../../drawn-findings.ts";
import { nestedRings } from "../../nested-rings.ts";
import type { FoundFeature } from "../../reading.ts";
import type { XmlElement } from "../../xml-steps.ts";
import { attributeOf, childrenOf } from "../../xml-tree.ts";

interface Fields {
  readonly features: readonly FoundFeature[];
  readonly findings: readonly Finding[];
}

/**
 * What the fields (PFD) of task data hold: polygons (PLN), lines and points of their own (LSG, PNT), guidance lines (GGP, GPN; in version 3 a LSG of
 * kind 5). Source: ISO 11783-10, see the writer. Findings: `readers/without-numbers`, `readers/lines-without-end`.
 */
export function foundFields(name: string, fields: readonly XmlElement[]): Fields {
  const features: FoundFeature[] = [];
  const broken: string[] = [];
  let endless = 0;
  const add = (feature: Omit<FoundFeature, "geometry">, geometry: Geometry | null, told: string) => {
    if (geometry === null) broken.push(told);
    else features.push({ ...feature, geometry });
  };
  for (const field of fields) {
    const layer = designator(field, "C") ?? attributeOf(field, "A");
    for (const polygon of childrenOf(field, "PLN")) {
      const kind = polygonKinds.get(attributeOf(polygon, "A") ?? "") ?? "polygon";
      const isBoundary = kind === "boundary";
      const called = designator(polygon, "B") ?? (isBoundary ? layer : null);
      add({ name: called, layer, values: [["kind", kind]] }, areaOf(polygon), `a polygon of ${layer ?? "a field"}`);
    }
    for (const line of childrenOf(field, "LSG")) {
      const kind = lineKinds.get(attributeOf(line, "A") ?? "") ?? "line";
      const isRing = kind === "outer ring" || kind === "inner ring";
      const geometry = isRing ? ringArea([line]) : lineOf(line);
      add(
        { name: designator(line, "B"), layer, values: [["kind", kind]] },
        geometry,
        `a line of ${layer ?? "a field"}`,
      );
    }
    for (const point of childrenOf(field, "PNT")) {
      const kind = pointKinds.get(attributeOf(point, "A") ?? "") ?? "point";
      const at = positionOf(point);
      const geometry: Geometry | null = at === null ? null : { type: "Point", coordinates: at };
      add(
        { name: designator(point, "B"), layer, values: [["kind", kind]] },
        geometry,
        `a point of ${layer ?? "a field"}`,
      );
    }
    for (const group of childrenOf(field, "GGP")) {
      for (const pattern of childrenOf(group, "GPN")) {
        const values = guidanceValues(group, pattern);
        const found = patternGeometry(pattern);
        if (found?.type === "Point") endless++;
        const called = designator(pattern, "B");
        add({ name: called, layer, values }, found, `the guidance line ${called ?? attributeOf(pattern, "A") ?? ""}`);
      }
    }
  }
  return {
    features,
    findings: [
      ...(broken.length > 0 ? [withoutNumbers(name, broken.length, broken[0] ?? "")] : []),
      ...(endless > 0 ? [linesWithoutEnd(name, endless)] : []),
    ],
  };
}

function guidanceValues(group: XmlElement, pattern: XmlElement): FoundFeature["values"] {
  const kind = guidanceKinds.get(attributeOf(pattern, "C") ?? "") ?? "guidance";
  const ofGroup = designator(group, "B");
  const [heading, radius] = [attributeOf(pattern, "G"), attributeOf(pattern, "H")];
  return [
    ["kind", kind],
    ...(ofGroup === null ? [] : [["group", ofGroup] as const]),
    ...(heading === null ? [] : [["heading_deg", heading] as const]),
    ...(radius === null ? [] : [["radius_mm", radius] as const]),
  ];
}

/** The line of a guidance pattern; where it has but one place (a place and a heading, a middle of a circle), that place. */
function patternGeometry(pattern: XmlElement): Geometry | null {
  const lines = childrenOf(pattern, "LSG").map(lineOf);
  const [first, ...more] = lines;
  if (first === undefined || first === null) {
    const [only] = childrenOf(pattern, "LSG").flatMap((line) => positionsOf(line) ?? []);
    return only === undefined ? null : { type: "Point", coordinates: only };
  }
  if (more.length === 0) return first;
  const all = lines.flatMap((line) => (line === null ? [] : [line.coordinates]));
  return { type: "MultiLineString", coordinates: all };
}

function lineOf(line: XmlElement): { type: "LineString"; coordinates: Position[] } | null {
  const places = positionsOf(line);
  return places === null || places.length < 2 ? null : { type: "LineString", coordinates: places };
}

function areaOf(polygon: XmlElement): Geometry | null {
  return ringArea(childrenOf(polygon, "LSG").filter((line) => ["1", "2"].includes(attributeOf(line, "A") ?? "")));
}

/** Which ring lies in which is looked at: kinds of rings are often all 1. */
function ringArea(lines: readonly XmlElement[]): Geometry | null {
  const rings: Position[][] = [];
  for (const line of lines) {
    const places = positionsOf(line);
    const [first, last] = [places?.[0], places?.at(-1)];
    if (places === null || first === undefined || last === undefined) return null;
    const ring = first[0] === last[0] && first[1] === last[1] ? places : [...places, first];
    if (ring.length < 4) return null;
    rings.push(ring);
  }
  const polygons = nestedRings(rings);
  const [only, ...more] = polygons;
  if (only === undefined) return null;
  return more.length === 0
    ? { type: "Polygon", coordinates: only }
    : { type: "MultiPolygon", coordinates: [...polygons] };
}

/** Every place of a line, or null when one of them is none: a line is not bridged over a place that cannot be read. */
function positionsOf(line: XmlElement): Position[] | null {
  const places = childrenOf(line, "PNT").map(positionOf);
  return places.every((place) => place !== null) ? places : null;
}

/** C is latitude, D longitude; heights (E) count from the ellipsoid, not from where ours do, and are left out. */
function positionOf(point: XmlElement): Position | null {
  const [lat, lon] = [degrees(attributeOf(point, "C"), 90), degrees(attributeOf(point, "D"), 180)];
  return lat === null || lon === null ? null : [lon, lat];
}

function degrees(text: string | null, most: number): number | null {
  if (text === null || !/^\s*[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d{1,2})?\s*$/.test(text)) return null;
  const value = Number(text);
  return Math.abs(value) <= most ? value : null;
}

function designator(element: XmlElement, attribute: string): string | null {
  const text = attributeOf(element, attribute)?.trim() ?? "";
  return text === "" ? null : text;
}

const polygonKinds: ReadonlyMap<string, string> = new Map([
  ["1", "boundary"],
  ["2", "zone"],
  ["3", "water"],
  ["4", "building"],
  ["5", "road"],
  ["6", "obstacle"],
  ["7", "flag"],
  ["8", "other"],
  ["9", "main field"],
  ["10", "headland"],
  ["11", "buffer zone"],
  ["12", "windbreak"],
]);
const lineKinds: ReadonlyMap<string, string> = new Map([
  ["1", "outer ring"],
  ["2", "inner ring"],
  ["3", "tramline"],
  ["4", "sampling route"],
  ["5", "guidance"],
  ["6", "drainage"],
  ["7", "fence"],
  ["8", "flag"],
  ["9", "obstacle"],
]);
const pointKinds: ReadonlyMap<string, string> = new Map([
  ["1", "flag"],
  ["2", "other"],
  ["3", "field access"],
  ["4", "storage"],
  ["5", "obstacle"],
  ["6", "guidance A"],
  ["7", "guidance B"],
  ["8", "guidance centre"],
  ["9", "guidance point"],
  ["10", "field reference"],
  ["11", "homebase"],
]);
const guidanceKinds: ReadonlyMap<string, string> = new Map([
  ["1", "guidance line A to B"],
  ["2", "guidance line from A by heading"],
  ["3", "guidance curve"],
  ["4", "guidance circle"],
  ["5", "guidance spiral"],
]);
