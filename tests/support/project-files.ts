import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Finding } from "../../src/core/finding.ts";
import { parseProject } from "../../src/core/project/parse.ts";
import type { Json, Project } from "../../src/core/project/project.ts";

export type Kind = "bad" | "good";

const folder = (kind: Kind): string => fileURLToPath(new URL(`../fixtures/${kind}/`, import.meta.url));

/** Names of the project files in a fixture folder; what each must give stands beside them in expected.json. */
export function fixtureNames(kind: Kind): readonly string[] {
  return readdirSync(folder(kind)).filter((name) => name.endsWith(".geojson"));
}

export function fixtureText(kind: Kind, name: string): string {
  return readFileSync(folder(kind) + name, "utf8");
}

/** A rectangle of ground, about 100 by 89 m, invented: corners counter-clockwise from the south-west, closed. */
export const field: readonly (readonly [number, number])[] = [
  [-76.9, 42.6],
  [-76.8988, 42.6],
  [-76.8988, 42.6008],
  [-76.9, 42.6008],
  [-76.9, 42.6],
];

/** A project file with that field as its parcel, and what else the test is about. */
export function createFile(settings: Json | undefined = undefined, features: readonly Json[] = []): string {
  const home = {
    type: "Feature",
    id: "home",
    properties: { role: "parcel" },
    geometry: { type: "Polygon", coordinates: [field] },
  };
  return JSON.stringify({ type: "FeatureCollection", features: [home, ...features], tautrow: settings });
}

export function createFeature(id: string, properties: Json, geometry: Json): Json {
  return { type: "Feature", id, properties, geometry };
}

export function point(lon: number, lat: number): Json {
  return { type: "Point", coordinates: [lon, lat] };
}

/** The project in a text; fails the test when there is none. */
export function projectIn(text: string): Project {
  const read = parseProject(text);
  if (!read.ok) throw new Error(`no project: ${codes(read.findings).join(", ")}`);
  return read.value;
}

export function codes(findings: readonly Finding[]): readonly string[] {
  return findings.map(({ code }) => code);
}

/** Codes without the note on defaults, which most small files get. */
export function codesButDefaults(findings: readonly Finding[]): readonly string[] {
  return codes(findings).filter((code) => code !== "project/defaults-used");
}
