import { failure, type Outcome, success } from "../../core/outcome.ts";
import { breathe } from "../breathe.ts";
import { brokenFile } from "../file-findings.ts";
import { stopped } from "../findings.ts";
import { createFoundSoFar, type FoundSoFar } from "../found-so-far.ts";
import { placeFound } from "../place-found.ts";
import type { Reader, ReadingFollowed } from "../reading.ts";
import { wholeBytes } from "../xml-file.ts";
import { foundFeature } from "./geojson/found-feature.ts";
import { whyNoJson } from "./geojson/json-bounds.ts";
import { jsonLetters } from "./geojson/json-letters.ts";
import { isObject, soundGeometry } from "./geojson/sound-geometry.ts";
import { statedSystem } from "./geojson/stated-system.ts";

const title = "GeoJSON";
/** Features between two moments in which a wish to stop can be heard. */
const featuresABreath = 5000;

/**
 * GeoJSON (RFC 7946, and as it was before, with a `crs` member): collections, single features, bare geometries, and a feature a line (RFC 8142).
 * Findings: `readers/broken-file`, `readers/letters-differ`, `readers/stopped`, and those of `found-so-far.ts` and `place-found.ts`.
 */
export const geoJsonReader: Reader = {
  title,
  endings: ["geojson", "json", "geojsonl", "geojsons", "ndjson"],
  most_bytes: 40e6,
  begins,
  read: async (file, answers, followed) => {
    const { name } = file;
    const letters = jsonLetters(await wholeBytes(file), name, title);
    if (!letters.ok) return letters;
    const parsed = documentIn(letters.value, name);
    if (!parsed.ok) return parsed;
    const found = createFoundSoFar(name);
    const gone = await walked(parsed.value, found, name, followed);
    if (!gone.ok) return gone;
    const numbers = { name, stated: statedSystem(parsed.value), mayBeProjected: true };
    const placed = placeFound(found, numbers, answers);
    if (!placed.ok) return placed;
    const { system, features, questions } = placed.value;
    return found.file({ format: title, system }, features, questions, [...letters.findings, ...placed.findings]);
  },
};

const recordMark = "\u{1e}";

/** Beginning with a brace, whatever marks and, in UTF-16, zeros stand before and between. */
function begins(head: string): boolean {
  const text = head.replaceAll("\0", "");
  const brace = text.indexOf("{");
  return brace >= 0 && text.slice(0, brace).trim().length < 4 && /"(type|features|geometry|coordinates)"/.test(text);
}

type Document = { readonly [name: string]: unknown };

/** The text as one document: what has a feature a line becomes a collection. */
function documentIn(text: string, name: string): Outcome<Document> {
  const wrong = (why: string) => failure([brokenFile(name, title, why)]);
  const tooMuch = whyNoJson(text);
  if (tooMuch !== null) return wrong(tooMuch);
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (problem) {
    const features = lineByLine(text);
    if (features !== null) return success({ type: "FeatureCollection", features });
    return wrong(`it is no JSON text (${problem instanceof Error ? problem.message.slice(0, 100) : "unknown fault"})`);
  }
  if (!isObject(json)) return wrong("it is no JSON object");
  if (json.type === "Topology") return wrong("it is TopoJSON, which stores shared sides and is not read here");
  return success(json);
}

/** Features that stand a line each, each perhaps with the mark before it that RFC 8142 asks for; null when the first line is none. */
function lineByLine(text: string): readonly unknown[] | null {
  const parsed = (line: string): unknown => JSON.parse(line.startsWith(recordMark) ? line.slice(1) : line);
  const end = text.indexOf("\n");
  try {
    if (end < 0 || !isObject(parsed(text.slice(0, end)))) return null;
    return text
      .split("\n")
      .filter((line) => line.trim() !== "")
      .map(parsed);
  } catch {
    return null;
  }
}

async function walked(
  document: Document,
  found: FoundSoFar,
  name: string,
  { progress, signal }: ReadingFollowed,
): Promise<Outcome<null>> {
  const layer = typeof document.name === "string" && document.type === "FeatureCollection" ? document.name : null;
  const features: readonly unknown[] =
    document.type === "FeatureCollection" ? (Array.isArray(document.features) ? document.features : []) : [document];
  for (const [i, json] of features.entries()) {
    if (found.isTooMany()) break;
    takeFeature(json, layer, found);
    if ((i + 1) % featuresABreath !== 0) continue;
    progress?.((i + 1) / features.length);
    await breathe();
    if (signal?.aborted === true) return failure([stopped(name)]);
  }
  return success(null);
}

/** A feature, or a geometry that stands bare. */
function takeFeature(json: unknown, layer: string | null, found: FoundSoFar): void {
  if (!isObject(json)) {
    found.leaveOut("something that is no feature");
    return;
  }
  const isFeature = json.type === "Feature";
  const geometry = soundGeometry(isFeature ? json.geometry : json);
  const feature = foundFeature(isFeature ? json : {}, geometry ?? { type: "Point", coordinates: [] }, layer);
  if (geometry === null) found.leaveOut(feature.name ?? `a ${String(json.type).slice(0, 40)} without a name`);
  else found.add(feature);
}
