import type { Geometry } from "geojson";
import type { FoundFeature } from "../../reading.ts";
import { isObject } from "./sound-geometry.ts";

/** Properties that hold what a feature is called, in the order in which they are looked for. */
const nameProperties = ["name", "Name", "NAME"];
/** Of what stands in properties as lists and objects, so many letters are kept. */
const longestText = 2000;

/** What of a GeoJSON feature is the feature and not its shape: name (else its id), values in their order, lists and objects as JSON text. */
export function foundFeature(
  json: { readonly [name: string]: unknown },
  geometry: Geometry,
  layer: string | null,
): FoundFeature {
  const properties = isObject(json.properties) ? Object.entries(json.properties) : [];
  const id = json.id === undefined ? null : textOf(json.id);
  const named = nameProperties
    .flatMap((called) =>
      properties.filter(([name, value]) => name === called && typeof value === "string" && value.trim() !== ""),
    )
    .at(0);
  const others = properties.filter((each) => each !== named);
  const values: FoundFeature["values"] = [
    ...(named === undefined || id === null || others.some(([name]) => name === "id") ? [] : [["id", id] as const]),
    ...others.flatMap(([name, value]) => valued(name, value)),
  ];
  return { name: named === undefined ? id : textOf(named[1]), layer, geometry, values };
}

function valued(name: string, value: unknown): FoundFeature["values"] {
  if (value === null || value === undefined) return [];
  if (typeof value === "number" || typeof value === "boolean") return [[name, value]];
  return [[name, textOf(value)]];
}

function textOf(value: unknown): string {
  return typeof value === "string" ? value : JSON.stringify(value).slice(0, longestText);
}
