import type { EdgeRef } from "../../src/core/drawing/drawn.ts";
import { edgeSetback } from "../../src/core/drawing/edges.ts";
import type { Outcome } from "../../src/core/outcome.ts";
import { type LonLat, lonLat } from "../../src/core/plane/coordinate.ts";
import type { Json, Project } from "../../src/core/project/project.ts";
import { text } from "../../src/core/units.ts";
import { at } from "./create-project.ts";
import { projectIn } from "./project-files.ts";

type Point = readonly [x_m: number, y_m: number];

/** A place in metres east and north of the test origin, as a file that was drawn here has it: 9 decimals. */
export function drawnAt(point: Point): LonLat {
  const [lon, lat] = at(point);
  return lonLat(Number(lon.toFixed(9)), Number(lat.toFixed(9)));
}

/** Points in metres as positions of a closed ring. */
export function ring(points: readonly Point[]): Json {
  const positions = points.map((point): Json => [...drawnAt(point)]);
  return [...positions, positions[0] ?? null];
}

export function area(id: string | null, properties: Json, ...rings: readonly (readonly Point[])[]): Json {
  return feature(id, properties, { type: "Polygon", coordinates: rings.map(ring) });
}

export function line(id: string | null, properties: Json, points: readonly Point[]): Json {
  return feature(id, properties, { type: "LineString", coordinates: points.map((point): Json => [...drawnAt(point)]) });
}

export function spot(id: string | null, properties: Json, point: Point): Json {
  return feature(id, properties, { type: "Point", coordinates: [...drawnAt(point)] });
}

export function feature(id: string | null, properties: Json, geometry: Json): Json {
  return { type: "Feature", ...(id === null ? {} : { id }), properties, geometry };
}

/** A project with these features and settings, read from its file. */
export function drawnProject(features: readonly Json[], settings: Json = { version: 1 }): Project {
  return projectIn(JSON.stringify({ type: "FeatureCollection", features, tautrow: settings }));
}

/** The four corners of a field of 60 by 120 m, counter-clockwise from the south-west. */
export const fieldCorners: readonly Point[] = [
  [0, 0],
  [60, 0],
  [60, 120],
  [0, 120],
];

/** A project with that field as parcel "home", and what else the test is about. */
export function fieldProject(features: readonly Json[] = [], settings: Json = { version: 1 }): Project {
  return drawnProject([area("home", { role: "parcel" }, fieldCorners), ...features], settings);
}

/** What an edit gave; fails the test when it was refused. */
export function taken<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.findings.map(({ message }) => text(message, "metric")).join(" "));
  return outcome.value;
}

/** Codes of what was said against an edit; fails the test when it was taken. */
export function refused(outcome: Outcome<unknown>): readonly string[] {
  if (outcome.ok) throw new Error("the edit was taken");
  return outcome.findings.map(({ code }) => code);
}

/** Setbacks stated for the sides of a path, in its order. */
export function statedSetbacks(project: Project, key: string, path: number, sides: number): readonly (Json | null)[] {
  return Array.from({ length: sides }, (_, edge) => edgeSetback(project, { key, path, edge } satisfies EdgeRef).own);
}
