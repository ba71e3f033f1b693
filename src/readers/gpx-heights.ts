import type { Feature, MultiLineString, Position } from "geojson";
import { failure, type Outcome, success } from "../core/outcome.ts";
import { noTrackHeights } from "./findings.ts";

/**
 * The tracks of a GPX file that have heights, as one `elevation` feature: a line a segment, metres above what the receiver counts from
 * (GPX 1.1: `ele` is in metres). Points without a height or a place are left out. Findings: readers/no-track-heights.
 */
export function gpxHeights(gpx: string, id: string, name: string): Outcome<Feature<MultiLineString>> {
  const text = gpx.replace(/<!--[\s\S]*?-->/g, "");
  const coordinates = [...text.matchAll(/<trkseg\b[^>]*>([\s\S]*?)<\/trkseg>/g)]
    .map(([, segment = ""]) => [...segment.matchAll(/<trkpt\b([^>]*)>([\s\S]*?)<\/trkpt>/g)].flatMap(pointOf))
    .filter((points) => points.length > 1);
  if (coordinates.length === 0) return failure([noTrackHeights(name)]);
  return success({
    type: "Feature",
    id,
    properties: { role: "elevation", name },
    geometry: { type: "MultiLineString", coordinates },
  });
}

function pointOf([, attributes = "", inside = ""]: RegExpMatchArray): readonly Position[] {
  const [lon, lat] = [attribute(attributes, "lon"), attribute(attributes, "lat")];
  const height = Number(/<ele>\s*([-+.\dEe]+)\s*<\/ele>/.exec(inside)?.[1] ?? Number.NaN);
  const isPlace = Math.abs(lon) <= 180 && Math.abs(lat) <= 90;
  return isPlace && Number.isFinite(height) ? [[lon, lat, height]] : [];
}

function attribute(text: string, name: string): number {
  return Number(new RegExp(`\\b${name}\\s*=\\s*["']([^"']+)["']`).exec(text)?.[1] ?? Number.NaN);
}
