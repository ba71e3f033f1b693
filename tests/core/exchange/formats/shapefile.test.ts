import { unzipSync } from "fflate";
import type { FeatureCollection, Position } from "geojson";
import { read } from "shapefile";
import { describe, expect, test } from "vitest";
import type { HandOverJob } from "../../../../src/core/exchange/format.ts";
import { columnNames } from "../../../../src/core/exchange/formats/shapefile/column-names.ts";
import { shapefile } from "../../../../src/core/exchange/formats/shapefile.ts";
import { lonLat } from "../../../../src/core/plane/coordinate.ts";
import { systemOfCode } from "../../../../src/core/systems/coordinate-system.ts";
import { localSystem } from "../../../../src/core/systems/local-system.ts";
import { createJob, createLayer, placesAt } from "../../../support/create-layers.ts";
import { testFrame } from "../../../support/create-project.ts";
import { bytesOf } from "../../../support/handed-over.ts";
import { has, inFolder, said } from "../../../support/outside.ts";

const names = ["row 14 – ñ ü & <b>", 'O\'Brien "east"', "__proto__", "=1+1"];
const points = createLayer(
  "posts",
  names.map((name, i) => ({ name, remark: i === 0 ? null : "by the gate", geometry: point([10 * i, 5, 200 + i]) })),
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
        [2.5, 0],
        [2.5, 40],
        [3, 79],
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
    geometry: { shape: "area", polygons: [[square(0, 0, 100), [...square(20, 20, 30)].reverse()]] },
  },
  {
    name: "two pieces",
    geometry: {
      shape: "area",
      polygons: [[square(200, 0, 50), [...square(210, 10, 10)].reverse()], [square(300, 0, 20)]],
    },
  },
]);

test("each layer is a set of files in one archive, with a text about them", () => {
  const archive = entriesOf(createJob([points, lines, areas]));
  for (const layer of ["posts", "rows", "blocks"]) {
    for (const ending of ["shp", "shx", "dbf", "cpg"]) expect(Object.keys(archive)).toContain(`${layer}.${ending}`);
  }
  const readme = new TextDecoder().decode(archive["README.txt"]);
  expect(readme).toContain("posts.shp: 4 posts");
  expect(readme).toContain("grouLeng_m: groundLength_m, ");
});

test("the archive of one layer is called by it, of several by the plan, and nothing is written of none", () => {
  expect(shapefile.write(createJob([points])).files.map(({ name }) => name)).toEqual(["posts.zip"]);
  expect(shapefile.write(createJob([points, lines])).files.map(({ name }) => name)).toEqual(["plan.zip"]);
  expect(shapefile.write(createJob([createLayer("marks", [])])).files).toEqual([]);
});

test("the same plan gives the same bytes", () => {
  const once = bytesOf(shapefile.write(createJob([points, areas])));
  expect(bytesOf(shapefile.write(createJob([points, areas])))).toEqual(once);
  const [file] = shapefile.write(createJob([points, areas])).files;
  if (file?.content.kind !== "chunks") throw new Error("no chunks");
  const { chunks } = file.content;
  expect([...chunks()]).toEqual([...chunks()]);
});

test("names, numbers and places come back in a second reader (npm shapefile)", async () => {
  const found = await readBack(createJob([points, lines, areas]));
  expect(found.posts?.features.map(({ properties }) => properties)).toEqual(
    names.map((name, i) => ({
      name,
      id: `posts-${i + 1}`,
      role: "posts",
      remark: i === 0 ? null : "by the gate",
      number: i + 1,
      grouLeng_m: Number((12.345 * (i + 1)).toFixed(3)),
      sketch: i % 2 === 0 ? true : null,
    })),
  );
  expect(found.posts?.features.map(({ geometry }) => geometry)).toEqual(
    placesAt(names.map((_, i) => [10 * i, 5])).map((place) => ({ type: "Point", coordinates: place.at })),
  );
  expect(found.rows?.features.map(({ geometry }) => geometry.type)).toEqual(["LineString", "LineString"]);
  const [pond, pieces] = found.blocks?.features ?? [];
  expect(pond?.geometry.type).toBe("Polygon");
  expect(pond?.geometry.type === "Polygon" ? pond.geometry.coordinates.map(({ length }) => length) : []).toEqual([
    5, 5,
  ]);
  expect(pieces?.geometry.type).toBe("MultiPolygon");
});

test("outer rings turn clockwise and holes counter-clockwise (technical description, page 8), however they come in", async () => {
  const turned = createLayer("parcels", [
    {
      name: "wrong way",
      geometry: { shape: "area", polygons: [[[...square(0, 0, 100)].reverse(), square(20, 20, 30)]] },
    },
  ]);
  const found = await readBack(createJob([areas, turned]));
  const rings = [...(found.blocks?.features ?? []), ...(found.parcels?.features ?? [])].flatMap(({ geometry }) =>
    geometry.type === "Polygon" ? [geometry.coordinates] : geometry.type === "MultiPolygon" ? geometry.coordinates : [],
  );
  expect(rings).toHaveLength(4);
  for (const [outer = [], ...holes] of rings) {
    expect(area(outer)).toBeLessThan(0);
    for (const hole of holes) expect(area(hole)).toBeGreaterThan(0);
  }
});

test("heights are written where all are known, else left out and said so", () => {
  const some = createLayer("marks", [
    { name: "a", geometry: point([0, 0, 12]) },
    { name: "b", geometry: point([5, 0]) },
  ]);
  const known = shapefile.write(createJob([points]));
  expect(known.findings.map(({ code }) => code)).not.toContain("exchange/heights-partly-known");
  expect(shapeType(entriesOf(createJob([points]))["posts.shp"])).toBe(11);
  const partly = createJob([some]);
  expect(shapefile.write(partly).findings.map(({ code }) => code)).toContain("exchange/heights-partly-known");
  expect(shapeType(entriesOf(partly)["marks.shp"])).toBe(1);
  expect(new TextDecoder().decode(entriesOf(partly)["README.txt"])).toContain("heights are known at 1 of 2 places");
});

test("column names are at most ten letters, keep their unit, and stay apart", () => {
  expect(columnNames(["groundLength_m", "baselineStation_m", "baselineOffset_m", "area_m2", "role"])).toEqual([
    "grouLeng_m",
    "baseStat_m",
    "baseOffs_m",
    "area_m2",
    "role",
  ]);
  const alike = columnNames([
    "fruitingWireUpper_m",
    "fruitingWireUpperSide_m",
    "FRUITINGWIREUPPER_M",
    "Ärgerliche Höhe",
    "1st",
    "---",
    "",
  ]);
  expect(new Set(alike.map((name) => name.toLowerCase())).size).toBe(alike.length);
  for (const name of alike) expect(name).toMatch(/^[A-Za-z][A-Za-z0-9_]{0,9}$/);
});

test("shorter column names are told", () => {
  const { findings } = shapefile.write(createJob([points]));
  expect(findings.map(({ code }) => code)).toEqual(["exchange/columns-renamed"]);
});

test("a text of more than 254 bytes is cut between letters, said in a finding, and stands in full in the text beside", async () => {
  const long = `${"ä".repeat(126)}ßß the end`;
  const job = createJob([createLayer("marks", [{ name: "m", remark: long, geometry: point([0, 0]) }])]);
  expect(shapefile.write(job).findings.map(({ code }) => code)).toContain("exchange/texts-cut");
  const found = await readBack(job);
  expect(found.marks?.features[0]?.properties?.remark).toBe(`${"ä".repeat(126)}ß`);
  expect(new TextDecoder().decode(entriesOf(job)["README.txt"])).toContain(long);
});

test("a page gets its turn at least every 500 features, while the layer is gathered and while it is written", () => {
  const vines = createLayer(
    "vines",
    Array.from({ length: 2600 }, (_, i) => ({ name: `v${i}`, geometry: point([i, 0]) })),
  );
  const [file] = shapefile.write(createJob([vines])).files;
  if (file?.content.kind !== "chunks") throw new Error("no chunks");
  expect([...file.content.chunks()].length).toBeGreaterThan(3 * (2600 / 500));
});

describe.skipIf(!has("ogr2ogr"))("what GDAL reads of it", () => {
  const california = systemOfCode(2226);
  if (!california.ok) throw new Error("EPSG 2226 is in the list");

  test("the local plane has its place on the earth, within 2 mm", () => {
    const local = localSystem(testFrame, "us-ft");
    const [archive] = Object.values(bytesOf(shapefile.write(createJob([points], { system: local }))));
    if (archive === undefined) throw new Error("no archive");
    const found: FeatureCollection = inFolder({ "plan.zip": archive }, (folder) =>
      JSON.parse(
        said("ogr2ogr", [
          "-f",
          "GeoJSON",
          "-t_srs",
          "EPSG:4326",
          "-lco",
          "COORDINATE_PRECISION=11",
          "/vsistdout/",
          `/vsizip/${folder}/plan.zip/posts.shp`,
        ]),
      ),
    );
    for (const [i, { geometry }] of found.features.entries()) {
      if (geometry.type !== "Point") throw new Error("no point");
      const [x, y] = testFrame.toPlane(lonLat(geometry.coordinates[0] ?? 0, geometry.coordinates[1] ?? 0));
      expect(Math.hypot(x - 10 * i, y - 5)).toBeLessThan(0.002);
    }
    expect(found.features).toHaveLength(names.length);
  });

  for (const [title, job] of [
    ["longitude and latitude", createJob([points, lines, areas])],
    ["projected in US survey feet", createJob([points, lines, areas], { system: california.value })],
  ] as const) {
    test(`all features with names and attributes, ${title}`, () => {
      const found = readByGdal(job);
      const read = Object.fromEntries(found.map(({ name, features }) => [name, features]));
      expect(read.posts?.map(({ properties }) => [properties?.name, properties?.id])).toEqual(
        names.map((name, i) => [name, `posts-${i + 1}`]),
      );
      expect(read.posts?.map(({ properties }) => properties?.grouLeng_m)).toEqual([12.345, 24.69, 37.035, 49.38]);
      expect(read.rows).toHaveLength(2);
      expect(read.blocks?.map(({ geometry }) => geometry.type)).toEqual(["Polygon", "MultiPolygon"]);
      for (const [i, feature] of (read.posts ?? []).entries()) {
        const place = placesAt([[10 * i, 5, 200 + i]])[0];
        if (feature.geometry.type !== "Point" || place === undefined) throw new Error("no point");
        const [x = 0, y = 0, height_m = 0] = feature.geometry.coordinates;
        const [wishedX, wishedY] = job.system.fromLonLat(place.at[0], place.at[1]);
        expect(Math.hypot(x - wishedX, y - wishedY)).toBeLessThan(1e-9);
        expect(height_m).toBe(200 + i);
      }
    });
  }
});

function point([x, y, height_m]: readonly [number, number, number?]) {
  const [place] = placesAt([height_m === undefined ? [x, y] : [x, y, height_m]]);
  if (place === undefined) throw new Error("no place");
  return { shape: "point", place } as const;
}

function entriesOf(job: HandOverJob): Readonly<Record<string, Uint8Array>> {
  const [bytes] = Object.values(bytesOf(shapefile.write(job)));
  if (bytes === undefined) throw new Error("no archive");
  return unzipSync(bytes);
}

async function readBack(job: HandOverJob): Promise<Readonly<Record<string, FeatureCollection>>> {
  const archive = entriesOf(job);
  const found: Record<string, FeatureCollection> = {};
  for (const { kind } of job.layers) {
    const [shp, dbf] = [archive[`${kind}.shp`], archive[`${kind}.dbf`]];
    if (shp === undefined || dbf === undefined) throw new Error(`no ${kind}`);
    found[kind] = await read(shp, dbf, { encoding: "utf-8" });
  }
  return found;
}

function readByGdal(job: HandOverJob) {
  const [archive] = Object.values(bytesOf(shapefile.write(job)));
  if (archive === undefined) throw new Error("no archive");
  return inFolder({ "plan.zip": archive }, (folder) =>
    job.layers.map(({ kind }): { readonly name: string; readonly features: FeatureCollection["features"] } => {
      const path = `/vsizip/${folder}/plan.zip/${kind}.shp`;
      const collection: FeatureCollection = JSON.parse(
        said("ogr2ogr", ["-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=15", "/vsistdout/", path]),
      );
      return { name: kind, features: collection.features };
    }),
  );
}

function shapeType(shp: Uint8Array | undefined): number {
  return shp === undefined ? -1 : new DataView(shp.buffer, shp.byteOffset).getInt32(32, true);
}

/** Twice the area, positive counter-clockwise. */
function area(ring: readonly Position[]): number {
  const [x0 = 0, y0 = 0] = ring[0] ?? [];
  return ring.reduce((sum, [x = 0, y = 0], i) => {
    const [nextX = 0, nextY = 0] = ring[i + 1] ?? [x, y];
    return sum + (x - x0) * (nextY - y0) - (nextX - x0) * (y - y0);
  }, 0);
}
