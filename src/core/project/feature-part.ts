import type { Finding } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import type { Frame } from "../plane/frame.ts";
import type { FeatureParts } from "./feature-parts.ts";
import * as known from "./feature-properties.ts";
import type { FileFeature } from "./file-feature.ts";
import {
  collectionFolded,
  emptyGeometry,
  heightMissing,
  incompleteRow,
  trackHeights,
  walkedOutline,
  wrongGeometry,
} from "./findings.ts";
import { member } from "./json-value.ts";
import { mendAreas } from "./mend-areas.ts";
import { pointHeights } from "./point-heights.ts";
import type { JsonObject, PlacedPoint, Polygon, Role, Shape, SpotHeight } from "./project.ts";
import { readSection } from "./read-section.ts";
import { type DrawnShape, placesOf } from "./read-shape.ts";
import type { Section } from "./schema-parts.ts";

type Part = Partial<FeatureParts>;

/** Smallest area that counts as ground, and as a thing that stands on it. */
const leastGround_m2 = 1;
const leastThing_m2 = 1e-4;

const heightsWanted = "points, or a line with heights, or the outline of a grid of heights";

/**
 * What a feature with a role gives the project: its areas mended, its properties read. `drawn` is its shape with longitudes unwrapped.
 * Without a frame (a project that is too wide) areas stay as drawn. Findings: those of `mendAreas` and `readSection`,
 * `project/wrong-geometry`, `project/empty-geometry`, `project/incomplete-row`, `project/walked-outline`, `project/height-missing`,
 * `project/collection-folded`.
 */
export function featurePart(feature: FileFeature, role: Role, drawn: DrawnShape, frame: Frame | null): Part {
  const findings: Finding[] = [];
  const { where, properties } = feature;
  const key = where.feature;
  const name = nameOf(properties);
  const read = <T>(section: Section<T>): T => {
    const reading = readSection(section, properties, "", null, where);
    findings.push(...reading.findings);
    return reading.stated;
  };
  const areas = (least_m2: number): readonly Polygon[] => {
    if (frame === null || drawn.areas.length === 0) return drawn.areas;
    const mended = mendAreas(drawn.areas, key, frame, least_m2);
    findings.push(...mended.findings);
    return mended.polygons;
  };
  const shape = (): Shape => ({ ...drawn, areas: areas(leastThing_m2) });
  const wrong = (wanted: string): Part => ({ findings: [...findings, wrongGeometry(where, role, wanted)] });

  if (feature.isCollection) findings.push(collectionFolded(where, leftOut(drawn, role)));
  if (isEmpty(drawn) && role !== "row") return { findings: [...findings, emptyGeometry(where)] };
  switch (role) {
    case "parcel": {
      if (drawn.areas.length === 0) return wrong("an area");
      const { setback, outline = "surveyed" } = read(known.parcelProperties);
      if (outline === "walked") findings.push(walkedOutline(where));
      const polygons = areas(leastGround_m2);
      const parcel = { key, polygons, setback_m: setback ?? null, outline };
      return { parcels: polygons.length === 0 ? [] : [parcel], findings };
    }
    case "block": {
      if (drawn.areas.length === 0) return wrong("an area");
      const { block = null } = read(known.blockProperties);
      const polygons = areas(leastGround_m2);
      return { blockAreas: polygons.length === 0 ? [] : [{ key, block, polygons }], findings };
    }
    case "edge": {
      if (drawn.lines.length === 0) return wrong("a line");
      const { setback, tapedLength } = read(known.edgeProperties);
      const says = { setback_m: setback ?? null, tapedLength_m: tapedLength ?? null, name };
      return { edges: drawn.lines.map((line) => ({ key, line, ...says })), findings };
    }
    case "obstacle":
    case "no-plant": {
      const { distance, wiresPass = false, largestGap, trenchDistance, crossing } = read(known.keepOutProperties);
      const keepOut = {
        key,
        role,
        name,
        shape: shape(),
        distance_m: distance ?? null,
        wiresPass,
        largestGap_m: largestGap ?? null,
        trenchDistance_m: trenchDistance ?? null,
        crossing: crossing ?? "never",
      };
      return { keepOuts: [keepOut], findings };
    }
    case "cross-alley": {
      if (drawn.lines.length === 0 && drawn.areas.length === 0) return wrong("a line or an area");
      const { width } = read(known.alleyProperties);
      return { crossAlleys: [{ key, name, shape: shape(), width_m: width ?? null }], findings };
    }
    case "row": {
      const { block = null, row = null, tapedLength } = read(known.rowProperties);
      const line = drawn.lines[0];
      if (line === undefined && !isEmpty(drawn)) return wrong("a line between its two end posts");
      const [start, end] = [line?.[0], line?.at(-1)];
      const ends = start === undefined || end === undefined ? null : ([start, end] as const);
      const tapedLength_m = tapedLength ?? null;
      if (ends === null && (row === null || tapedLength_m === null)) findings.push(incompleteRow(where));
      else return { givenRows: [{ key, block, row, ends, tapedLength_m }], findings };
      return { findings };
    }
    case "keep-row":
    case "source":
    case "mark": {
      if (drawn.points.length === 0) return wrong("a point");
      const points = drawn.points.map((at): PlacedPoint => ({ key, name, at }));
      if (role === "keep-row") return { keptPlaces: drawn.points.map((at) => ({ key, at })), findings };
      return role === "source" ? { sources: points, findings } : { marks: points, findings };
    }
    case "main-line": {
      if (drawn.lines.length === 0) return wrong("a line");
      return { mainLines: drawn.lines.map((line) => ({ key, name, line })), findings };
    }
    case "elevation": {
      if (drawn.areas.length > 0) {
        const { grid } = read(known.elevationProperties);
        if (grid !== undefined) return { heightGrids: [{ key, name, ...grid }], findings };
        return findings.length > 0 ? { findings } : wrong(heightsWanted);
      }
      if (drawn.points.length + drawn.lines.length === 0) return wrong(heightsWanted);
      const { height } = read(known.elevationProperties);
      const { points, lines } = pointHeights(feature.geometry);
      const spot = (at: LonLat, measured: number | null | undefined, isOnLine: boolean): readonly SpotHeight[] => {
        const height_m = height ?? measured ?? null;
        if (height_m === null) return [];
        return [{ key, name, at, height_m, ...(isOnLine ? { isOnLine } : {}) }];
      };
      const spotHeights = [
        ...drawn.points.flatMap((at, i) => spot(at, points[i], false)),
        ...drawn.lines.flatMap((line, i) => line.flatMap((at, k) => spot(at, lines[i]?.[k], true))),
      ];
      const places = drawn.lines.reduce((sum, line) => sum + line.length, drawn.points.length);
      if (spotHeights.length < places && findings.length === 0) findings.push(heightMissing(where));
      const walked = height === undefined ? spotHeights.filter(({ isOnLine }) => isOnLine === true).length : 0;
      if (walked > 0) findings.push(trackHeights(where, walked));
      return { spotHeights, findings };
    }
    default:
      return role satisfies never;
  }
}

function nameOf(properties: JsonObject): string | null {
  const name = member(properties, "name");
  return typeof name === "string" || typeof name === "number" ? String(name) : null;
}

function isEmpty(shape: DrawnShape): boolean {
  const { done } = placesOf(shape).next();
  return done === true;
}

/** What of a folded collection its role has no use for, in words. */
function leftOut({ points, lines, areas }: DrawnShape, role: Role): string | null {
  const isGround = role === "parcel" || role === "block";
  if (!isGround || areas.length === 0 || points.length + lines.length === 0) return null;
  if (lines.length === 0) return "points";
  return points.length === 0 ? "lines" : "points and lines";
}
