import type { Feature, FeatureCollection } from "geojson";
import geojsonValidation from "geojson-validation";
import { describe, expect, test } from "vitest";
import { geoJson } from "../../../../src/core/exchange/formats/geojson.ts";
import type { HandOver } from "../../../../src/core/exchange/hand-over.ts";
import { layerKinds, type Named } from "../../../../src/core/exchange/layers/layer.ts";
import { createPlanner } from "../../../../src/core/planner.ts";
import { createHandOverJob } from "../../../support/create-hand-over-job.ts";
import { createTrenchPlan } from "../../../support/create-trench-plan.ts";
import { bytesOf, handedOver, textsOf } from "../../../support/handed-over.ts";
import { has, inFolder, said } from "../../../support/outside.ts";
import { readSample } from "../../../support/sample-plans.ts";
import { survived } from "../../../support/survived.ts";
import { mapLayers, names } from "./map-layers.ts";
import { textOf, writtenBy } from "./written-by.ts";

const most_m = 0.002;
const plan = createTrenchPlan((station_m) => 100 + station_m / 50);
const things = layerKinds.filter((kind) => kind !== "vines" && kind !== "stakes");

function collectionOf(text: string | undefined): FeatureCollection & { readonly bbox?: readonly number[] } {
  return JSON.parse(text ?? "");
}

function featuresOf(text: string | undefined): readonly Feature[] {
  return collectionOf(text).features;
}

describe("RFC 7946 to the letter", () => {
  const written = writtenBy(geoJson, createHandOverJob(mapLayers()));
  const all = Object.values(written).flatMap(featuresOf);

  test("a file a layer, a feature a line", () => {
    expect(Object.keys(written)).toEqual(["parcels.geojson", "rows.geojson", "marks.geojson"]);
    expect(written["marks.geojson"]?.split("\n")).toHaveLength(5);
  });

  test("outer rings run counter-clockwise, holes clockwise, and end where they begin (section 3.1.6)", () => {
    const [parcel, two] = featuresOf(written["parcels.geojson"]);
    if (parcel?.geometry.type !== "Polygon" || two?.geometry.type !== "MultiPolygon") throw new Error("no areas");
    expect(parcel.geometry.coordinates.map(isLeft)).toEqual([true, false]);
    expect(two.geometry.coordinates.flat().map(isLeft)).toEqual([true, true]);
    for (const ring of parcel.geometry.coordinates) expect(ring.at(-1)).toEqual(ring[0]);
  });

  test("positions have 8 decimals and a height where one is known, 0 too (section 3.1.1)", () => {
    const [first, second] = featuresOf(written["marks.geojson"]);
    expect(first?.geometry).toEqual({ type: "Point", coordinates: [-122.71651235, 38.29201235, 0] });
    expect(second?.geometry).toEqual({ type: "Point", coordinates: [1e-8, -1e-8] });
    expect(featuresOf(written["rows.geojson"])[0]?.geometry).toMatchObject({
      coordinates: [
        [-122.71641235, 38.29215679, 101.1235],
        [-122.71411235, 38.29215679, 99],
      ],
    });
  });

  test("no crs member (section 4), ids that are unique, properties that are objects", () => {
    for (const text of Object.values(written)) expect(JSON.parse(text)).not.toHaveProperty("crs");
    expect(new Set(all.map(({ id }) => id)).size).toBe(5);
    expect(all[0]?.properties).toEqual({
      name: names.parcel,
      role: "parcel",
      length_m: 12.345,
      rows: 0,
      sketch: true,
    });
  });

  test("the box around all is west, south, east, north, with heights where there are any (section 5)", () => {
    expect(collectionOf(written["parcels.geojson"]).bbox).toEqual([-122.71651235, 38.292, -122.71, 38.29411235]);
    expect(collectionOf(written["rows.geojson"]).bbox).toEqual([
      -122.71641235, 38.29215679, 99, -122.71411235, 38.29215679, 101.1235,
    ]);
  });

  test("an independent checker has nothing to say", () => {
    for (const text of Object.values(written)) expect(geojsonValidation.valid(JSON.parse(text))).toBe(true);
  });

  test("all in one file where that is chosen, and empty collections are collections", () => {
    const job = createHandOverJob(mapLayers());
    const together = writtenBy(geoJson, { ...job, choice: { ...job.choice, together: true } });
    expect(Object.keys(together)).toEqual(["plan.geojson"]);
    expect(featuresOf(together["plan.geojson"])).toHaveLength(5);
    const empty = createHandOverJob(
      mapLayers()
        .slice(0, 1)
        .map((layer) => ({ ...layer, count: 0, features: () => [], named: () => [] })),
    );
    expect(collectionOf(textOf(geoJson, empty))).toEqual({ type: "FeatureCollection", features: [] });
  });

  test("pieces of a file are small, and the same when asked for again", () => {
    const brook = createPlanner().plan(readSample("brook-and-two-blocks"));
    const [file] = handedOver(brook, { as: "geojson", of: ["vines"] }).files;
    if (file?.content.kind !== "chunks") throw new Error("no file");
    const pieces = [...file.content.chunks()];
    expect(pieces.length).toBeGreaterThan(10);
    expect([...file.content.chunks()].join("")).toBe(pieces.join(""));
    expect(featuresOf(pieces.join(""))).toHaveLength(5970);
  });
});

test("everything of a plan comes back through our own reader, within 2 mm", async () => {
  // With a trench that has heights: names stand where they are no ids, ids count for the rest.
  for (const of of things) {
    const handed = handedOver(plan, { as: "geojson", of: [of] });
    if (handed.layers[0]?.count === 0) continue;
    const back = await survived(
      { ...handed, names: { ...handed.names, of: nameBack(handed) } },
      of !== "marks" && of !== "fittings",
    );
    expect(back.lost, of).toEqual([]);
    expect(back.changedValues, of).toEqual([]);
    expect(back.back, of).toBe(back.handed);
    expect(back.worst_m, of).toBeLessThan(most_m);
    expect(back.worstHeight_m, of).toBeLessThan(most_m);
  }
});

describe.skipIf(!has("ogrinfo") || !has("ogr2ogr"))("GDAL reads and rewrites it", () => {
  test("every feature with its count, corners and values, to the last digit", () => {
    const text = textOf(geoJson, createHandOverJob(mapLayers().slice(0, 1)));
    inFolder({ "parcels.geojson": text }, (folder) => {
      const told = said("ogrinfo", ["-ro", "-al", "-so", `${folder}/parcels.geojson`]);
      expect(told).toContain("Feature Count: 2");
      expect(told).toContain(`ID["EPSG",4326]`);
      expect(told).toMatch(/length_m: Real/);
      said("ogr2ogr", [
        "-f",
        "GeoJSON",
        "-lco",
        "RFC7946=YES",
        "-lco",
        "COORDINATE_PRECISION=8",
        `${folder}/again.geojson`,
        `${folder}/parcels.geojson`,
      ]);
      const again = featuresOf(said("cat", [`${folder}/again.geojson`]));
      expect(again.map(({ geometry }) => geometry)).toEqual(featuresOf(text).map(({ geometry }) => geometry));
      expect(again.map(({ properties }) => properties?.name)).toEqual([names.parcel, names.two]);
    });
  });

  test("every layer of a plan with as many features as were handed over", () => {
    const handed = handedOver(plan, { as: "geojson", of: things });
    const files = bytesOf(handed);
    inFolder(files, (folder) => {
      for (const layer of handed.layers) {
        const told = said("ogrinfo", ["-ro", "-al", "-so", `${folder}/${layer.kind}.geojson`]);
        expect(told, layer.kind).toContain(`Feature Count: ${layer.count}`);
      }
    });
    expect(Object.keys(textsOf(handed)).length).toBeGreaterThan(8);
  });
});

/** What has a column for its name, and something in it, comes back with that. */
function nameBack({ layers, names: { of } }: HandOver): (thing: Named) => string {
  const called = new Map<string, string>();
  for (const { columns, features } of layers) {
    const column = columns.findIndex(({ name }) => name === "name");
    if (column < 0) continue;
    for (const { id, values } of features()) {
      const name = values[column];
      if (typeof name === "string" && name !== "") called.set(id, name);
    }
  }
  return (thing) => called.get(thing.id) ?? of(thing);
}

function isLeft(ring: readonly (readonly number[])[]): boolean {
  const twice = ring.reduce((sum, [bx = 0, by = 0], i) => {
    const [ax = 0, ay = 0] = ring[i - 1] ?? [bx, by];
    return (
      sum +
      (ax - (ring[0]?.[0] ?? 0)) * (by - (ring[0]?.[1] ?? 0)) -
      (bx - (ring[0]?.[0] ?? 0)) * (ay - (ring[0]?.[1] ?? 0))
    );
  }, 0);
  return twice > 0;
}
