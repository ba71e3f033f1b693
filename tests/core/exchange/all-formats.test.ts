import type { Geometry, Position } from "geojson";
import { describe, expect, test } from "vitest";
import type { Format } from "../../../src/core/exchange/format.ts";
import { formats } from "../../../src/core/exchange/formats.ts";
import type { HandOver } from "../../../src/core/exchange/hand-over.ts";
import { type LayerFeature, type LayerKind, layerKinds, type Place } from "../../../src/core/exchange/layers/layer.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { FoundFeature, ReadingAnswers } from "../../../src/readers/reading.ts";
import { databaseBytes } from "../../../src/readers/sqlite.ts";
import { at, createProject, testFrame } from "../../support/create-project.ts";
import { createTrenchPlan } from "../../support/create-trench-plan.ts";
import { bytesOf, handedOver } from "../../support/handed-over.ts";
import { found, readBytes } from "../../support/read-bytes.ts";

/*
 * Everything that every format holds, out and in again by our own readers: none lost, none renamed, no place off by 2 mm, no value changed.
 * Readers of others stand in the tests of each format.
 */

/** The bar of every format. */
const most_m = 0.002;
/** Heights leave with 3 decimals or more. */
const height_m = 0.0005000001;

const wide = { size: "pvc-pn10-63mm", outside_mm: 63, inside_mm: 57, stick_m: 6, joint: "solvent" } as const;
const plan = createTrenchPlan(
  (station_m) => 100 + 0.01 * station_m,
  {
    marks: [
      { key: "pin", name: "Gate pin", at: at([-10, -20]) },
      { key: "peg", name: 'Peg & <b>Häusl</b>, "2"', at: at([50, -20]) },
      { key: "sum", name: "=1+1", at: at([20, -20]) },
      { key: "__proto__", name: "constructor", at: at([30, -20]) },
    ],
    spotHeights: [
      { key: "a", name: null, at: at([-500, -500]), height_m: 80 },
      { key: "b", name: null, at: at([500, -500]), height_m: 130 },
      { key: "c", name: null, at: at([0, 900]), height_m: 101.25 },
    ],
  },
  [{ line: 0, pipe: wide, points: [1, 2, 3], tees: [3], length_m: 8 }],
);

/** Of a file that says no system, and of one that leaves the order open. */
const answers: Partial<ReadingAnswers> = { system: "EPSG:32618", isSwapped: false };
/** Formats whose readers give back every value under the name of its column. */
const withValues = ["geojson", "kml", "kmz", "csv", "xlsx", "geopackage"];
/** Formats that hold a third number, and read it back. */
const withHeights = ["geojson", "kml", "kmz", "gpx", "shapefile", "dxf", "landxml", "survey-csv", "geopackage"];

const spatial = formats.filter(({ holds, name }) => holds.includes("parcels") || name === "survey-csv");

describe.each(spatial)("$title", (format) => {
  const kinds = layerKinds.filter((kind) => format.holds.includes(kind));

  test.each(kinds)("brings back all %s with their names, within 2 mm", async (kind) => {
    const handed = out(format, kind);
    const back = await readBack(handed);
    const [layer] = handed.layers;
    if (layer === undefined) throw new Error("no layer went out");
    expect(layer.count).toBeGreaterThan(0);
    const byName = grouped(back);
    // A shapefile has heights at all of its places or at none.
    const areLeftOut = handed.findings.some(({ code }) => code === "exchange/heights-partly-known");
    let count = 0;
    for (const feature of layer.features()) {
      const name = handed.names.of(feature);
      const same = byName.get(name) ?? [];
      expect([name, same.length]).toEqual([name, 1]);
      expect([name, apart_m(feature, same) < most_m]).toEqual([name, true]);
      if (withHeights.includes(format.name) && !areLeftOut) expectHeights(feature, same);
      count++;
    }
    expect(count).toBe(layer.count);
    // LandXML has the branches that stations stand on beside them.
    if (format.name !== "landxml" || kind !== "stations") expect(back).toHaveLength(layer.count);
  });

  test.each(withValues.includes(format.name) ? kinds : [])("brings back every value of the %s", async (kind) => {
    const handed = out(format, kind);
    const byName = grouped(await readBack(handed));
    const [layer] = handed.layers;
    for (const feature of layer?.features() ?? []) {
      const values = new Map(byName.get(handed.names.of(feature))?.[0]?.values ?? []);
      layer?.columns.forEach((column, i) => {
        const value = feature.values[i] ?? null;
        if (value === null) return;
        const read = values.get(column.name);
        const isSame = column.type === "yes" ? isYes(read) : String(read) === String(value);
        expect(`${feature.id} ${column.name}: ${isSame ? value : read}`).toBe(`${feature.id} ${column.name}: ${value}`);
      });
    }
  });

  test("says in the file or beside it when it was written or what its numbers are", () => {
    const { files } = out(format, kinds[0] ?? "rows");
    const beside = files.filter(({ name }) => name.endsWith("-about.txt"));
    if (!format.statesItself && format.name !== "shapefile") expect(beside).toHaveLength(1);
  });
});

describe("a plan that has nothing to hand over", () => {
  const nothing = createPlanner().plan(createProject());

  test.each(formats)("is written as $title all the same, every file under a name of its own", ({ name, holds }) => {
    for (const each of [plan, nothing]) {
      const { files } = handedOver(each, { as: name, of: holds });
      expect(new Set(files.map((file) => file.name.toLowerCase())).size).toBe(files.length);
      for (const file of files) {
        expect(file.name).toMatch(/^[a-zA-Z0-9._-]+\.[a-z]+$/);
        if (file.content.kind === "chunks") expect(Array.from(file.content.chunks()).length).toBeGreaterThan(0);
      }
    }
  });
});

function out(format: Format, kind: LayerKind): HandOver {
  return handedOver(plan, {
    as: format.name,
    of: [kind],
    system: format.places === "chosen, no degrees" ? "EPSG:32618" : null,
  });
}

async function readBack(handed: HandOver): Promise<readonly FoundFeature[]> {
  const back: FoundFeature[] = [];
  const databases = handed.files.filter(({ content }) => content.kind === "database");
  const files = new Map(Object.entries(bytesOf(handed)));
  for (const file of databases) files.set(file.name, await databaseBytes(file));
  for (const [name, bytes] of files) {
    if (name.endsWith("-about.txt")) continue;
    const first = await found(readBytes(name, bytes));
    const file = first.questions.length === 0 ? first : await found(readBytes(name, bytes, answers));
    expect(file.questions).toEqual([]);
    back.push(...file.features);
  }
  return back;
}

function grouped(features: readonly FoundFeature[]): ReadonlyMap<string, readonly FoundFeature[]> {
  const byName = new Map<string, FoundFeature[]>();
  for (const feature of features) {
    const name = feature.name ?? "";
    byName.set(name, [...(byName.get(name) ?? []), feature]);
  }
  return byName;
}

/** Furthest that a place of the feature is from the nearest that came back, and the other way round. */
function apart_m(feature: LayerFeature, back: readonly FoundFeature[]): number {
  const given = placesOf(feature).map((place) => testFrame.toPlane(place.at));
  const read = back
    .flatMap(({ geometry }) => positionsOf(geometry))
    .map(([lon = 0, lat = 0]) => testFrame.toPlane(lonLat(lon, lat)));
  const furthest = (from: typeof given, to: typeof given) =>
    Math.max(...from.map(([x, y]) => Math.min(...to.map(([u, v]) => Math.hypot(x - u, y - v)))));
  return Math.max(furthest(given, read), furthest(read, given));
}

function expectHeights(feature: LayerFeature, back: readonly FoundFeature[]): void {
  const read = back.flatMap(({ geometry }) => positionsOf(geometry));
  for (const place of placesOf(feature)) {
    if (place.height_m === null) continue;
    const near = read.filter(([lon = 0, lat = 0]) => Math.abs(lon - place.at[0]) + Math.abs(lat - place.at[1]) < 1e-7);
    for (const [, , height = Number.NaN] of near) expect(Math.abs(height - place.height_m)).toBeLessThan(height_m);
  }
}

function placesOf({ geometry }: LayerFeature): readonly Place[] {
  switch (geometry.shape) {
    case "point":
      return [geometry.place];
    case "line":
      return geometry.places;
    case "area":
      return geometry.polygons.flat(2);
    default:
      return geometry satisfies never;
  }
}

function positionsOf(geometry: Geometry): readonly Position[] {
  switch (geometry.type) {
    case "Point":
      return [geometry.coordinates];
    case "MultiPoint":
    case "LineString":
      return geometry.coordinates;
    case "MultiLineString":
    case "Polygon":
      return geometry.coordinates.flat();
    case "MultiPolygon":
      return geometry.coordinates.flat(2);
    case "GeometryCollection":
      return geometry.geometries.flatMap(positionsOf);
    default:
      return geometry satisfies never;
  }
}

function isYes(value: unknown): boolean {
  return ["true", "yes", "1"].includes(String(value));
}
