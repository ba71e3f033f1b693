import type { Finding } from "../finding.ts";
import type { LonLat } from "../plane/coordinate.ts";
import { badBox, badCoordinate, badStructure, propertiesMissing, ringClosed, type Where } from "./findings.ts";
import { isJsonObject, member, shown } from "./json-value.ts";
import type { FeatureKey, Json, JsonObject } from "./project.ts";
import { type DrawnShape, readShape } from "./read-shape.ts";
import { rememberedByObject } from "./remembered-by-object.ts";
import { boxFault, featureFault } from "./structure.ts";

/** One entry of the file's features, read by itself: what it holds, and whether its structure and its numbers are sound. */
export interface FileFeature {
  readonly where: Where;
  readonly properties: JsonObject;
  /** As drawn; null when the feature has an error and cannot be used. */
  readonly shape: DrawnShape | null;
  /** As it stands in the file. */
  readonly geometry: Json;
  readonly isCollection: boolean;
  readonly hasHeights: boolean;
  readonly findings: readonly Finding[];
}

/**
 * Reads an entry of the list of features. Findings: `project/bad-structure`, `project/bad-coordinate` (errors),
 * `project/bad-bbox`, `project/ring-closed`, `project/properties-missing`.
 */
export function fileFeature(entry: Json, key: FeatureKey): FileFeature {
  if (isJsonObject(entry)) return readOnce(entry, key);
  return unusable({ feature: key, at: null }, {}, `it is ${shown(entry)}, not a feature`);
}

const readOnce = rememberedByObject((feature: JsonObject, key: FeatureKey): FileFeature => {
  const stated = member(feature, "properties");
  const properties = isJsonObject(stated) ? stated : {};
  const geometry = member(feature, "geometry") ?? null;
  const reading = readShape(geometry);
  const where: Where = { feature: key, at: onGlobe(reading.first) };
  const fault = featureFault(feature) ?? propertiesFault(stated) ?? reading.fault;
  const { badPosition } = reading;
  if (badPosition !== null) {
    const { number, found, count } = badPosition;
    return { ...unusable(where, properties, null), findings: [badCoordinate(where, number, found, count)] };
  }
  if (fault !== null) return unusable(where, properties, fault);
  const box = member(feature, "bbox");
  const boxSays = box === undefined ? null : boxFault(box);
  return {
    where,
    properties,
    shape: reading.shape,
    geometry,
    isCollection: reading.isCollection,
    hasHeights: reading.hasHeights,
    findings: [
      ...(boxSays === null ? [] : [badBox(where, boxSays)]),
      ...(stated === undefined ? [propertiesMissing(where)] : []),
      ...(reading.unclosed === null ? [] : [ringClosed({ feature: key, at: reading.unclosed })]),
    ],
  };
});

/** A place that a map can show, or null. */
function onGlobe(place: LonLat | null): LonLat | null {
  return place !== null && Math.abs(place[0]) <= 180 && Math.abs(place[1]) <= 90 ? place : null;
}

function propertiesFault(stated: Json | undefined): string | null {
  if (stated === undefined || stated === null || isJsonObject(stated)) return null;
  return `its properties are ${shown(stated)}`;
}

function unusable(where: Where, properties: JsonObject, fault: string | null): FileFeature {
  return {
    where,
    properties,
    shape: null,
    geometry: null,
    isCollection: false,
    hasHeights: false,
    findings: fault === null ? [] : [badStructure(where, fault)],
  };
}
