import type { Geometry, Position } from "geojson";
import type { HandOver } from "../../src/core/exchange/hand-over.ts";
import { placesOf } from "../../src/core/exchange/layers/places-of.ts";
import { lonLat } from "../../src/core/plane/coordinate.ts";
import { readFile } from "../../src/readers/read-file.ts";
import {
  type FoundFeature,
  type FoundFile,
  type NamedBytes,
  noAnswers,
  type ReadingAnswers,
} from "../../src/readers/reading.ts";
import { geodesic } from "./geodesic.ts";
import { bytesOf } from "./handed-over.ts";

/** A file of these bytes. */
export function fileOf(name: string, content: Uint8Array | string): NamedBytes {
  const blob = new Blob([typeof content === "string" ? content : new Uint8Array(content)]);
  return { name, size: blob.size, slice: (start, end) => blob.slice(start, end) };
}

/** What a file holds; throws with its findings when it cannot be read. */
export async function found(
  name: string,
  content: Uint8Array | string,
  answers: Partial<ReadingAnswers> = {},
): Promise<FoundFile> {
  const outcome = await readFile(fileOf(name, content), { ...noAnswers, ...answers });
  if (!outcome.ok) throw new Error(outcome.findings.map(({ code }) => code).join(", "));
  return outcome.value;
}

/** Codes of the findings of reading a file, whatever came of it. */
export async function saidOf(
  name: string,
  content: Uint8Array | string,
  answers: Partial<ReadingAnswers> = {},
): Promise<readonly string[]> {
  const { findings } = await readFile(fileOf(name, content), { ...noAnswers, ...answers });
  return findings.map(({ code }) => code);
}

/** How what was handed over comes back: by name, in the order of the file. */
export interface Survived {
  readonly handed: number;
  readonly back: number;
  /** Names that did not come back. */
  readonly lost: readonly string[];
  readonly worst_m: number;
  readonly worstHeight_m: number;
  /** "row-1 length_m: 12 became 13". */
  readonly changedValues: readonly string[];
}

/** The only file of a hand over, read back without an answer, feature by feature; `isValued` where columns are expected back too. */
export async function survived(handed: HandOver, isValued: boolean): Promise<Survived> {
  const [[name, bytes] = ["", new Uint8Array()]] = Object.entries(bytesOf(handed));
  const { features, questions } = await found(name, bytes);
  if (questions.length > 0) throw new Error(`asked about ${questions.map(({ about }) => about).join(", ")}`);
  const byName = new Map<string, FoundFeature>(features.map((feature) => [feature.name ?? "", feature]));
  const lost: string[] = [];
  const changedValues: string[] = [];
  let [worst_m, worstHeight_m, count] = [0, 0, 0];
  for (const layer of handed.layers) {
    for (const feature of layer.features()) {
      count++;
      const called = handed.names.of(feature);
      const back = byName.get(called);
      if (back === undefined) {
        lost.push(called);
        continue;
      }
      const places = placesOf(feature.geometry);
      const positions = positionsOf(back.geometry);
      if (positions.length !== places.length)
        lost.push(`${called}: ${places.length} places became ${positions.length}`);
      for (const { at, height_m } of places) {
        const away_m = positions.map(([lon = 0, lat = 0]) => geodesic(at, lonLat(lon, lat)).length_m);
        const nearest = Math.min(...away_m);
        worst_m = Math.max(worst_m, nearest);
        const z = positions[away_m.indexOf(nearest)]?.[2];
        if ((height_m === null) !== (z === undefined)) worstHeight_m = Infinity;
        else if (height_m !== null && z !== undefined) worstHeight_m = Math.max(worstHeight_m, Math.abs(z - height_m));
      }
      if (!isValued) continue;
      for (const [i, { name: column }] of layer.columns.entries()) {
        const wished = feature.values[i] ?? null;
        const is = back.values.find(([each]) => each === column)?.[1] ?? null;
        if (wished !== is) changedValues.push(`${called} ${column}: ${wished} became ${is}`);
      }
    }
  }
  return { handed: count, back: features.length, lost, worst_m, worstHeight_m, changedValues };
}

/** Every place of a geometry once: the last of a ring is its first. */
function positionsOf(geometry: Geometry): readonly Position[] {
  switch (geometry.type) {
    case "Point":
      return [geometry.coordinates];
    case "MultiPoint":
    case "LineString":
      return geometry.coordinates;
    case "MultiLineString":
      return geometry.coordinates.flat();
    case "Polygon":
      return geometry.coordinates.flatMap((ring) => ring.slice(0, -1));
    case "MultiPolygon":
      return geometry.coordinates.flat().flatMap((ring) => ring.slice(0, -1));
    case "GeometryCollection":
      return geometry.geometries.flatMap(positionsOf);
    default:
      return geometry satisfies never;
  }
}
