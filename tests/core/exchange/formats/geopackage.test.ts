import type { FeatureCollection } from "geojson";
import { describe, expect, test } from "vitest";
import type { HandOverJob } from "../../../../src/core/exchange/format.ts";
import { apart } from "../../../../src/core/exchange/formats/geopackage/statements.ts";
import { geoPackage } from "../../../../src/core/exchange/formats/geopackage.ts";
import { systemOfCode } from "../../../../src/core/systems/coordinate-system.ts";
import { localSystem } from "../../../../src/core/systems/local-system.ts";
import { databaseBytes } from "../../../../src/readers/sqlite.ts";
import { createJob, createLayer, placesAt } from "../../../support/create-layers.ts";
import { testFrame } from "../../../support/create-project.ts";
import { has, inFolder, said } from "../../../support/outside.ts";
import { found, readBytes } from "../../../support/read-bytes.ts";

const names = ["row 14 – ñ ü & <b>", 'O\'Brien "east"', "__proto__", "=1+1"];
const points = createLayer(
  "posts",
  names.map((name, i) => ({
    name,
    remark: i === 0 ? null : "x".repeat(400),
    geometry: { shape: "point", place: placeAt(i === 1 ? [10 * i, 5] : [10 * i, 5, 200 + i]) },
  })),
);
const lines = createLayer("rows", [
  {
    name: "row 1",
    geometry: {
      shape: "line",
      places: placesAt([
        [0, 0],
        [0, 80.5],
      ]),
    },
  },
  {
    name: "row 2",
    geometry: {
      shape: "line",
      places: placesAt([
        [2.5, 0, 1],
        [2.5, 40, 2],
        [3, 79, 3],
      ]),
    },
  },
]);
const square = (x: number, y: number, side: number) =>
  placesAt([
    [x, y],
    [x + side, y],
    [x + side, y + side],
    [x, y + side],
  ]);
const areas = createLayer("blocks", [
  {
    name: "with a pond",
    geometry: {
      shape: "area",
      polygons: [[square(0, 0, 100), [...square(20, 20, 30)].reverse()], [square(300, 0, 20)]],
    },
  },
]);
const newYork = systemOfCode(2261);
if (!newYork.ok) throw new Error("EPSG 2261 is in the list");

test("the file is called by its layer, or by the plan, and nothing is written of nothing", () => {
  expect(geoPackage.write(createJob([points])).files.map(({ name }) => name)).toEqual(["posts.gpkg"]);
  expect(geoPackage.write(createJob([points, lines])).files.map(({ name }) => name)).toEqual(["plan.gpkg"]);
  expect(geoPackage.write(createJob([createLayer("marks", [])])).files).toEqual([]);
});

test("it says that it is a GeoPackage of version 1.3 (clause 1.1.1.1.1)", async () => {
  const bytes = await written(createJob([points]));
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  expect(new TextDecoder("latin1").decode(bytes.subarray(68, 72))).toBe("GPKG");
  expect(view.getInt32(60)).toBe(10300);
});

test("columns that differ in capitals only stay apart", () => {
  expect(apart(["name", "Name", "fid", "geom", "a"].map((name) => ({ name })))).toEqual([
    "name",
    "Name_2",
    "fid_2",
    "geom_2",
    "a",
  ]);
});

test("a line whose heights are known in part goes out without, and it is told", async () => {
  const partly = createLayer("rows", [
    {
      name: "r",
      geometry: {
        shape: "line",
        places: placesAt([
          [0, 0, 1],
          [0, 9],
        ]),
      },
    },
  ]);
  expect(geoPackage.write(createJob([partly])).findings.map(({ code }) => code)).toEqual([
    "exchange/heights-partly-known",
  ]);
  expect(geoPackage.write(createJob([lines, points])).findings).toEqual([]);
});

test("writing a database can be stopped", async () => {
  const [file] = geoPackage.write(
    createJob([
      createLayer(
        "vines",
        Array.from({ length: 900 }, (_, i) => ({
          name: `${i}`,
          geometry: { shape: "point", place: placeAt([i, 0]) } as const,
        })),
      ),
    ]),
  ).files;
  if (file === undefined) throw new Error("no file");
  const stop = new AbortController();
  stop.abort();
  await expect(databaseBytes(file, { signal: stop.signal })).rejects.toThrow();
});

for (const [title, system] of [
  ["degrees", undefined],
  ["US survey feet", newYork.value],
  ["the local plane in feet", localSystem(testFrame, "ft")],
] as const) {
  test(`comes back through our own reader with every name, value, height and place: ${title}`, async () => {
    const job = createJob([points, lines, areas], system === undefined ? {} : { system });
    const file = await found(readBytes("plan.gpkg", await written(job), { unit: "m" }));
    expect(file.questions).toEqual([]);
    expect(file.features.map(({ name, layer, geometry }) => [name, layer, geometry.type])).toEqual([
      ...names.map((name) => [name, "posts", "Point"]),
      ["row 1", "rows", "LineString"],
      ["row 2", "rows", "LineString"],
      ["with a pond", "blocks", "MultiPolygon"],
    ]);
    expect(file.features[1]?.values).toEqual([
      ["id", "posts-2"],
      ["role", "posts"],
      ["remark", "x".repeat(400)],
      ["number", 2],
      ["groundLength_m", 24.69],
    ]);
    expect(file.features[0]?.values).toContainEqual(["sketch", true]);
    const heights = file.features.map(({ geometry }) => (geometry.type === "Point" ? geometry.coordinates[2] : null));
    expect(heights.slice(0, 4)).toEqual([200, undefined, 202, 203]);
    for (const [i, { geometry }] of file.features.slice(0, 4).entries()) {
      if (geometry.type !== "Point") throw new Error("no point");
      const [lon, lat] = placeAt([10 * i, 5]).at;
      expect(Math.abs((geometry.coordinates[0] ?? 0) - lon)).toBeLessThan(1e-9);
      expect(Math.abs((geometry.coordinates[1] ?? 0) - lat)).toBeLessThan(1e-9);
    }
  });
}

describe.skipIf(!has("ogrinfo") || !has("ogr2ogr"))("what GDAL reads of it", () => {
  for (const [title, job, crs] of [
    ["longitude and latitude", createJob([points, lines, areas]), "4326"],
    ["US survey feet", createJob([points, lines, areas], { system: newYork.value }), "2261"],
  ] as const) {
    test(`all layers without a warning, ${title}`, async () => {
      const bytes = await written(job);
      inFolder({ "plan.gpkg": bytes }, (folder) => {
        const told = said("ogrinfo", ["-ro", "-al", "-so", `${folder}/plan.gpkg`]);
        expect(told).not.toMatch(/warning|error/i);
        for (const [layer, count] of [
          ["posts", 4],
          ["rows", 2],
          ["blocks", 1],
        ])
          expect(told).toMatch(new RegExp(`Layer name: ${layer}[\\s\\S]*?Feature Count: ${count}`));
        expect(told).toContain(`ID["EPSG",${crs}]`);
        const collection: FeatureCollection = JSON.parse(
          said("ogr2ogr", [
            "-f",
            "GeoJSON",
            "-lco",
            "COORDINATE_PRECISION=15",
            "/vsistdout/",
            `${folder}/plan.gpkg`,
            "posts",
          ]),
        );
        expect(collection.features.map(({ properties }) => properties?.name)).toEqual(names);
        expect(collection.features.map(({ properties }) => properties?.groundLength_m)).toEqual([
          12.345, 24.69, 37.035, 49.38,
        ]);
        expect(collection.features.map(({ properties }) => properties?.remark?.length)).toEqual([
          undefined,
          400,
          400,
          400,
        ]);
        for (const [i, { geometry }] of collection.features.entries()) {
          if (geometry.type !== "Point") throw new Error("no point");
          const [x = 0, y = 0] = geometry.coordinates;
          const [lon, lat] = placeAt([10 * i, 5]).at;
          const [wishedX, wishedY] = job.system.fromLonLat(lon, lat);
          expect(Math.hypot(x - wishedX, y - wishedY)).toBeLessThan(1e-9);
        }
      });
    });
  }
});

async function written(job: HandOverJob): Promise<Uint8Array> {
  const [file] = geoPackage.write(job).files;
  if (file === undefined) throw new Error("no file");
  return databaseBytes(file);
}

function placeAt(point: readonly [number, number, number?]) {
  const [place] = placesAt([point]);
  if (place === undefined) throw new Error("no place");
  return place;
}
