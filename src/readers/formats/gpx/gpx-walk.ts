import type { Geometry, Position } from "geojson";
import type { FoundSoFar } from "../../found-so-far.ts";
import { plainValue } from "../../plain-value.ts";
import type { FoundFeature } from "../../reading.ts";
import type { XmlElement, XmlStep } from "../../xml-steps.ts";
import { attributeOf, childText } from "../../xml-tree.ts";

/** A route or a track that is being gone through. */
interface OpenLine {
  readonly kind: "rte" | "trk";
  name: string | null;
  readonly values: FoundFeature["values"][number][];
  readonly pieces: Position[][];
}

const layers = { wpt: "waypoints", rte: "routes", trk: "tracks" } as const;

/** Everything in a line comes by itself, so that a long track is never held as a tree. */
export function isGpxWhole(name: string, parents: readonly string[]): boolean {
  const parent = parents.at(-1);
  if (parent === "gpx") return name !== "rte" && name !== "trk";
  return parent === "rte" || parent === "trkseg" || (parent === "trk" && name !== "trkseg");
}

/** Takes a GPX text step by step; what it finds goes into `found`. */
export function createGpxWalk(found: FoundSoFar) {
  let head = { root: "", version: "1.1" };
  let line: OpenLine | null = null;
  const point = (element: XmlElement): void => {
    const at = position(element);
    if (line === null) return;
    if (at === null) found.leaveOut(`a point of ${line.name ?? layers[line.kind]}`);
    else if (line.kind === "trk") line.pieces.at(-1)?.push(at);
    else if (line.pieces[0] === undefined) line.pieces.push([at]);
    else line.pieces[0].push(at);
  };
  const whole = (element: XmlElement): void => {
    if (element.name === "wpt") waypoint(element, found);
    else if (element.name === "trkpt" || element.name === "rtept") point(element);
    else if (line === null) return;
    else if (element.name === "name") line.name = element.text.trim() || null;
    else line.values.push(...valuesOf(element));
  };
  return {
    /** What the outermost element says. */
    head: () => head,
    take: (step: Exclude<XmlStep, { readonly kind: "broken" }>): void => {
      if (step.kind === "whole") {
        if (head.root === "") head = { ...head, root: step.element.name };
        whole(step.element);
      } else if (step.kind === "open") {
        if (head.root === "") head = { root: step.name, version: attributeOf(step, "version")?.slice(0, 10) ?? "1.1" };
        if (step.name === "trk" || step.name === "rte") line = { kind: step.name, name: null, values: [], pieces: [] };
        if (step.name === "trkseg") line?.pieces.push([]);
      } else if ((step.name === "trk" || step.name === "rte") && line !== null) {
        finished(line, found);
        line = null;
      }
    },
  };
}

function waypoint(element: XmlElement, found: FoundSoFar): void {
  const at = position(element);
  const name = childText(element, "name");
  if (at === null) {
    found.leaveOut(name ?? "a waypoint");
    return;
  }
  const values = element.children.flatMap((child) =>
    child.name === "name" || child.name === "ele" ? [] : valuesOf(child),
  );
  found.add({ name, layer: layers.wpt, geometry: { type: "Point", coordinates: at }, values });
}

/** A segment of one point is no line; when it is all there is, the track is left out. */
function finished({ kind, name, values, pieces }: OpenLine, found: FoundSoFar): void {
  const lines = pieces.filter((piece) => piece.length > 1);
  const [only] = lines;
  if (only === undefined) {
    found.leaveOut(name ?? (kind === "trk" ? "a track" : "a route"));
    return;
  }
  for (const piece of pieces)
    if (piece.length === 1) found.leaveOut(`a piece of ${name ?? "a track"} with a single point`);
  const geometry: Geometry =
    lines.length === 1 ? { type: "LineString", coordinates: only } : { type: "MultiLineString", coordinates: lines };
  found.add({ name, layer: layers[kind], geometry, values });
}

/** An element's text as a value; of elements in elements (extensions, links) those that have a text. */
function valuesOf(element: XmlElement): FoundFeature["values"] {
  if (element.children.length > 0) return element.children.flatMap(valuesOf);
  const text = element.text.trim();
  return text === "" ? [] : [[element.name, plainValue(text)]];
}

function position(element: XmlElement): Position | null {
  const [lon, lat] = [numberOf(attributeOf(element, "lon")), numberOf(attributeOf(element, "lat"))];
  if (!(Math.abs(lon) <= 180 && Math.abs(lat) <= 90)) return null;
  const height = numberOf(childText(element, "ele"));
  return Number.isFinite(height) ? [lon, lat, height] : [lon, lat];
}

function numberOf(text: string | null): number {
  return text === null || text.trim() === "" ? Number.NaN : Number(text);
}
