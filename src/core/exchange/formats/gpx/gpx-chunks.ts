import { aboutParts } from "../../about.ts";
import { type Format, featuresAChunk, type HandOverJob } from "../../format.ts";
import type { Layer, LayerFeature, Place } from "../../layers/layer.ts";
import { toldValues } from "../../layers/value-text.ts";
import { digits } from "../../rounding.ts";
import { xmlText } from "../../xml.ts";
import type { FilePart } from "./files-of-points.ts";

/** A GPX text piece by piece: waypoints, then tracks, each with its elements in the order that the schema of GPX 1.1 fixes. */
export function* gpxChunks(
  job: HandOverJob,
  format: Format,
  file: string,
  parts: readonly FilePart[],
  place: { readonly number: number; readonly of: number } | null,
): Generator<string> {
  yield [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<gpx version="1.1" creator="Tautrow" xmlns="http://www.topografix.com/GPX/1/1">`,
    `<metadata><name>${xmlText(job.plan.project.name === "" ? "Plan of rows" : job.plan.project.name)}</name>`,
    `<desc>${xmlText(description(job, format, file, parts, place))}</desc>`,
    `<time>${xmlText(job.writtenAt)}</time></metadata>`,
    "",
  ].join("\n");
  let lines: string[] = [];
  for (const { layer, features } of parts) {
    for (const feature of features()) {
      lines.push(element(job, layer, feature));
      if (lines.length < featuresAChunk) continue;
      yield `${lines.join("\n")}\n`;
      lines = [];
    }
  }
  yield `${[...lines, "</gpx>"].join("\n")}\n`;
}

function description(
  job: HandOverJob,
  format: Format,
  file: string,
  parts: readonly FilePart[],
  place: { readonly number: number; readonly of: number } | null,
): string {
  const which = place === null ? "" : `file ${place.number} of ${place.of}; `;
  const holds = `${which}${parts.map(({ layer, from, to }) => `${to - from} ${layer.kind}`).join(", ")}`;
  return aboutParts(job, format, { stem: "plan", files: [[file, holds]], columns: [], notes: [] })
    .map(({ head, lines }) => `${head}: ${lines.join(" ")}`)
    .join("\n");
}

function element({ names }: HandOverJob, { columns }: Layer, feature: LayerFeature): string {
  const { geometry, id, parts } = feature;
  const name = names.of(feature);
  const told = [...toldValues(columns, feature.values), ...(name === id ? [] : [`id ${id}`])].join("; ");
  const tail = `<name>${xmlText(name)}</name><desc>${xmlText(told)}</desc><type>${xmlText(parts.kind)}</type>`;
  switch (geometry.shape) {
    case "point":
      return `<wpt ${position(geometry.place)}>${elevation(geometry.place)}${tail}</wpt>`;
    case "line":
      return `<trk>${tail}${segment(geometry.places)}</trk>`;
    case "area":
      return `<trk>${tail}${geometry.polygons.flat().map(closed).join("")}</trk>`;
    default:
      return geometry satisfies never;
  }
}

function closed(ring: readonly Place[]): string {
  return segment([...ring, ...ring.slice(0, 1)]);
}

function segment(places: readonly Place[]): string {
  return `<trkseg>${places.map((place) => `<trkpt ${position(place)}>${elevation(place)}</trkpt>`).join("")}</trkseg>`;
}

/** The schema takes longitudes from -180 to below 180. */
function position({ at: [lon_deg, lat_deg] }: Place): string {
  const lon = digits(lon_deg, 8);
  return `lat="${digits(lat_deg, 8)}" lon="${lon === "180" ? "-180" : lon}"`;
}

function elevation({ height_m }: Place): string {
  return height_m === null ? "" : `<ele>${digits(height_m, 4)}</ele>`;
}
