import { unzipSync, zipSync } from "fflate";
import type { Position } from "geojson";
import { describe, expect, test } from "vitest";
import { shapefile } from "../../../src/core/exchange/formats/shapefile.ts";
import { text } from "../../../src/core/units.ts";
import { createJob, createLayer, placesAt } from "../../support/create-layers.ts";
import { bytesOf } from "../../support/handed-over.ts";
import { codes, fixtureBytes, found, readBytes, readFixture } from "../../support/read-bytes.ts";

const folder = "exchange/shapefile";
/** A hundredth of a millimetre in degrees. */
const close_deg = 1e-10;

describe("what GDAL writes (tests/fixtures/exchange/shapefile/make.sh)", () => {
  test("outlines with holes and pieces, lines with heights, names and values, each with its file", async () => {
    const file = await found(readFixture(`${folder}/several.zip`));
    expect(file.questions).toEqual([]);
    expect(file.system).toContain("EPSG 32610");
    expect(file.features.map(({ name, layer, geometry }) => [name, layer, geometry.type])).toEqual([
      ["Viña – Süd & <b>", "utm", "Polygon"],
      ["two pieces", "utm", "MultiPolygon"],
      ["row 1", "degrees", "LineString"],
      ["row 2", "degrees", "MultiLineString"],
    ]);
    const [outline, pieces, row] = file.features;
    if (row?.geometry.type !== "LineString" || outline?.geometry.type !== "Polygon") throw new Error("other shapes");
    closeTo(row.geometry.coordinates, [
      [-122.7, 38.29, 100],
      [-122.7, 38.291, 101.5],
    ]);
    closeTo(outline.geometry.coordinates[0] ?? [], counterClockwise(square(-122.7, 38.29, 0.001)));
    closeTo(outline.geometry.coordinates[1] ?? [], clockwise(square(-122.6998, 38.2902, 0.0002)));
    if (pieces?.geometry.type !== "MultiPolygon") throw new Error("other shapes");
    expect(pieces.geometry.coordinates.map((rings) => rings.length)).toEqual([2, 1]);
    expect(outline.values).toEqual([
      ["NOTE", "x".repeat(253)],
      ["AREA_HA", 1.25],
      ["COUNT", 12],
    ]);
    expect(pieces.values).toEqual([["COUNT", 0]]);
  });

  test("without .cpg the letters of Windows come out right, and what was taken is told", async () => {
    const file = await found(readFixture(`${folder}/without-cpg.zip`));
    expect(file.features.map(({ name }) => name)).toEqual(["tree ñ", "tree – 2"]);
    expect(await codes(readFixture(`${folder}/without-cpg.zip`))).toEqual(["readers/letters-taken"]);
  });

  test("without .prj the system is asked for; the answer puts everything in its place", async () => {
    const open = await found(readFixture(`${folder}/without-prj.zip`));
    expect(open.features).toEqual([]);
    expect(open.questions.map(({ about, offered }) => [about, offered])).toEqual([["system", []]]);
    const told = text(open.questions[0]?.asked ?? [], "metric");
    expect(told).toMatch(/^placeless\.shp does not say in which coordinate system its numbers are/);
    expect(told).toContain("from 526");
    const answered = await found(readFixture(`${folder}/without-prj.zip`, { system: "EPSG:32610" }));
    const [first] = answered.features;
    if (first?.geometry.type !== "Point") throw new Error("no point");
    closeTo([first.geometry.coordinates], [[-122.7005, 38.2905]]);
    expect(await codes(readFixture(`${folder}/without-prj.zip`, { system: "EPSG:4326" }))).toEqual([
      "readers/numbers-off-system",
    ]);
  });

  test("State Plane in US survey feet lands in its place, and the heights' unit is asked for", async () => {
    const open = await found(readFixture(`${folder}/state-plane.zip`));
    expect(open.questions.map(({ about, offered }) => [about, offered.map(({ value }) => value)])).toEqual([
      ["unit", ["m", "ft", "us-ft"]],
    ]);
    const file = await found(readFixture(`${folder}/state-plane.zip`, { unit: "ft" }));
    expect(file.system).toContain("EPSG 2226");
    const [row] = file.features;
    if (row?.geometry.type !== "LineString") throw new Error("no line");
    closeTo(row.geometry.coordinates, [
      [-122.7, 38.29, 100 * 0.3048],
      [-122.7, 38.291, 101.5 * 0.3048],
    ]);
  });

  test("capitals, folders in folders and the shadows of archivers change nothing", async () => {
    const file = await found(readFixture(`${folder}/capitals.zip`));
    expect(file.features.map(({ name, layer }) => [name, layer])).toEqual([
      ["Viña – Süd & <b>", "PARCELS"],
      ["two pieces", "PARCELS"],
    ]);
  });
});

test("our own shapefile comes back with every name, value, height and place", async () => {
  const names = ["row 14 – ñ ü & <b>", "__proto__", "constructor", "=1+1", "'x'"];
  const layer = createLayer(
    "posts",
    names.map((name, i) => ({
      name,
      remark: i === 0 ? null : "by the gate",
      geometry: { shape: "point", place: placeAt([10 * i, 5, 200 + i]) },
    })),
  );
  const [archive = new Uint8Array(0)] = Object.values(bytesOf(shapefile.write(createJob([layer]))));
  const file = await found(readBytes("posts.zip", archive));
  expect(file.system).toContain("WGS 84");
  for (const [i, { geometry }] of file.features.entries()) {
    if (geometry.type !== "Point") throw new Error("no point");
    closeTo([geometry.coordinates], [[...placeAt([10 * i, 5]).at, 200 + i]]);
  }
  expect(file.features.map(({ name, layer, values }) => ({ name, layer, values }))).toEqual(
    names.map((name, i) => ({
      name,
      layer: "posts",
      values: [
        ["id", `posts-${i + 1}`],
        ["role", "posts"],
        ...(i === 0 ? [] : [["remark", "by the gate"]]),
        ["number", i + 1],
        ["grouLeng_m", Number((12.345 * (i + 1)).toFixed(3))],
        ...(i % 2 === 0 ? [["sketch", true]] : []),
      ],
    })),
  );
});

test("an archive tells by the names at its end that it is one, whatever comes first in it and whatever it is called", async () => {
  const parts = unzipSync(lonely("utm"));
  const bytes = zipSync({
    "photo.jpg": [Uint8Array.from({ length: 90_000 }, (_, i) => (i * i) % 251), { level: 0 }],
    ...parts,
  });
  expect((await found(readBytes("survey.bin", bytes))).format).toBe("ESRI shapefile");
});

test("the .shp alone is read without names, and said so", async () => {
  const { "utm/utm.shp": shp = new Uint8Array(0) } = unzipSync(fixtureBytes(`${folder}/several.zip`));
  const reading = readBytes("utm.shp", shp, { system: "EPSG:32610" });
  expect(await codes(reading)).toEqual(["readers/without-table"]);
  expect((await found(reading)).features.map(({ name, values }) => [name, values.length])).toEqual([
    [null, 0],
    [null, 0],
  ]);
});

test("an answer about the system holds for the files that do not say it", async () => {
  const parts = { ...unzipSync(fixtureBytes(`${folder}/several.zip`)) };
  delete parts["utm/utm.prj"];
  const file = await found(readBytes("a.zip", zipSync(parts), { system: "EPSG:32610" }));
  expect(file.features.map(({ geometry }) => geometry.type)).toEqual([
    "Polygon",
    "MultiPolygon",
    "LineString",
    "MultiLineString",
  ]);
  const [outline, , row] = file.features;
  if (row?.geometry.type !== "LineString" || outline?.geometry.type !== "Polygon") throw new Error("other shapes");
  closeTo(outline.geometry.coordinates[0] ?? [], square(-122.7, 38.29, 0.001));
  closeTo(row.geometry.coordinates.slice(0, 1), [[-122.7, 38.29, 100]]);
});

test("degrees that stand the other way round are asked about, and turned", async () => {
  const bytes = change(lonely("degrees"), (parts) => swapPlaces(parts["degrees.shp"]));
  const open = await found(readBytes("a.zip", bytes));
  expect(open.questions.map(({ about }) => about)).toEqual(["order"]);
  const [row] = (await found(readBytes("a.zip", bytes, { isSwapped: true }))).features;
  if (row?.geometry.type !== "LineString") throw new Error("no line");
  closeTo(row.geometry.coordinates.slice(0, 1), [[-122.7, 38.29, 100]]);
});

test("a .prj that its numbers do not lie in is asked about", async () => {
  const bytes = change(lonely("utm"), (parts) => {
    parts["utm.prj"] = unzipSync(fixtureBytes(`${folder}/several.zip`))["degrees/degrees.prj"] ?? new Uint8Array(0);
  });
  const open = await found(readBytes("a.zip", bytes));
  expect(open.questions.map(({ about }) => about)).toEqual(["system"]);
});

test("a .prj that cannot be read is told and asked about", async () => {
  const bytes = change(lonely("utm"), (parts) => {
    parts["utm.prj"] = new TextEncoder().encode('PROJCS["none"');
  });
  const reading = readBytes("a.zip", bytes);
  expect(await codes(reading)).toContain("systems/bad-system");
  expect((await found(reading)).questions.map(({ about }) => about)).toEqual(["system"]);
});

describe("letters", () => {
  const named = (bytes: readonly number[], language: number, cpg: string | null) =>
    change(lonely("utm"), (parts) => {
      const dbf = parts["utm.dbf"] ?? new Uint8Array(0);
      dbf[29] = language;
      const head = dbf[8] ?? 0;
      dbf.fill(0x20, head + 1, head + 41).set(bytes, head + 1);
      // The second line is plain.
      if (cpg === null) delete parts["utm.cpg"];
      else parts["utm.cpg"] = new TextEncoder().encode(cpg);
    });
  const nameOf = async (bytes: Uint8Array) => (await found(readBytes("a.zip", bytes))).features[0]?.name;
  const vina = [0x56, 0x69, 0xf1, 0x61];

  for (const [cpg, bytes, wished] of [
    ["UTF-8", [0x56, 0x69, 0xc3, 0xb1, 0x61], "Viña"],
    ["65001", [0x56, 0x69, 0xc3, 0xb1, 0x61], "Viña"],
    ["1252", vina, "Viña"],
    ["ANSI 1252", [...vina, 0x96], "Viña–"],
    ["ISO-8859-1", vina, "Viña"],
    ["88591", vina, "Viña"],
    ["CP1250", [0x8a], "Š"],
    ["OEM 850", [0xa4], "ñ"],
    ["437", [0xe1], "ß"],
    ["LDID/201", [0xcf], "П"],
  ] as const) {
    test(`a .cpg of ${cpg}`, async () => {
      expect(await nameOf(named(bytes, 0, cpg))).toBe(wished);
    });
  }

  test("without .cpg the language byte says it, if it is one of DOS or Windows", async () => {
    expect(await nameOf(named([0xa4], 0x01, null))).toBe("ñ");
    expect(await nameOf(named([0xa4], 0x02, null))).toBe("ñ");
    expect(await nameOf(named([0xe5], 0xc9, null))).toBe("е");
    expect(await nameOf(named(vina, 0x57, null))).toBe("Viña");
  });

  test("where nothing says it, UTF-8 is taken where the texts are that, else Windows-1252, and told", async () => {
    expect(await nameOf(named(vina, 0, null))).toBe("Viña");
    expect(await codes(readBytes("a.zip", named(vina, 0, null)))).toContain("readers/letters-taken");
    expect(await nameOf(named([0x56, 0xc3, 0xb1], 0, null))).toBe("Vñ");
  });

  test("a .cpg that the texts are not in is told", async () => {
    expect(await nameOf(named(vina, 0, "UTF-8"))).toBe("Viña");
    expect(await codes(readBytes("a.zip", named(vina, 0, "UTF-8")))).toContain("readers/letters-differ");
    expect(await codes(readBytes("a.zip", named(vina, 0, "KLINGON")))).toContain("readers/letters-differ");
  });
});

describe("what is broken or hostile", () => {
  const shpOf = (
    work: (shp: Uint8Array, view: DataView) => Uint8Array | undefined,
    keep: readonly string[] = ["dbf", "prj", "cpg"],
  ) =>
    change(lonely("utm"), (parts) => {
      const shp = parts["utm.shp"] ?? new Uint8Array(0);
      parts["utm.shp"] = work(shp, new DataView(shp.buffer, shp.byteOffset, shp.byteLength)) ?? shp;
      for (const ending of ["shx", "dbf", "prj", "cpg"]) if (!keep.includes(ending)) delete parts[`utm.${ending}`];
    });

  test("cut off anywhere, it is refused, with or without its index", async () => {
    const whole = unzipSync(lonely("utm"))["utm.shp"]?.length ?? 0;
    for (let length = 0; length < whole; length += 37) {
      for (const keep of [
        ["dbf", "prj"],
        ["shx", "dbf", "prj"],
      ]) {
        const outcome = await readBytes(
          "a.zip",
          shpOf((shp) => shp.slice(0, length), keep),
        );
        expect(outcome.ok).toBe(false);
        expect(outcome.findings.map(({ code }) => code)).toContain(
          length === 100 ? expect.stringMatching(/broken-file/) : "readers/broken-file",
        );
      }
    }
  });

  test("something else that ends in .shp is refused", async () => {
    expect(await codes(readBytes("a.shp", new TextEncoder().encode("hello ".repeat(40))))).toEqual([
      "readers/broken-file",
    ]);
    expect(await codes(readBytes("a.shp", new Uint8Array(0)))).toEqual(["readers/broken-file"]);
  });

  test("counts that lie leave the shape out, not the others", async () => {
    for (const [offset, value] of [
      [36, 0x7fffffff],
      [36, -1],
      [40, 0x7fffffff],
      [40, -5],
      [44, 99],
      [0, 77],
      [0, 31],
    ] as const) {
      const reading = readBytes(
        "a.zip",
        shpOf((_, view) => void view.setInt32(108 + offset, value, true)),
      );
      expect(await codes(reading)).toContain("readers/shapes-left-out");
      expect((await found(reading)).features.map(({ name }) => name)).toEqual(["two pieces"]);
    }
  });

  test("places that are no numbers leave the shape out", async () => {
    const reading = readBytes(
      "a.zip",
      shpOf((_, view) => void view.setFloat64(108 + 52, NaN, true)),
    );
    expect(await codes(reading)).toContain("readers/shapes-left-out");
    expect((await found(reading)).features).toHaveLength(1);
  });

  test("lengths that lie are refused", async () => {
    for (const words of [0x7fffffff, -1, 0, 1]) {
      expect(
        await codes(
          readBytes(
            "a.zip",
            shpOf((_, view) => void view.setInt32(104, words)),
          ),
        ),
      ).toEqual(["readers/broken-file"]);
    }
    expect(
      await codes(
        readBytes(
          "a.zip",
          shpOf((_, view) => void view.setInt32(24, 0x3fffffff)),
        ),
      ),
    ).toEqual(["readers/broken-file"]);
  });

  test("an index that leads nowhere, or everywhere to one shape, is not followed", async () => {
    for (const lie of [(view: DataView) => view.setInt32(100, 0x3fffffff), (view: DataView) => view.setInt32(104, 3)]) {
      const bytes = change(lonely("utm"), (parts) => {
        const shx = parts["utm.shx"] ?? new Uint8Array(0);
        lie(new DataView(shx.buffer, shx.byteOffset, shx.byteLength));
      });
      const reading = readBytes("a.zip", bytes);
      expect(await codes(reading)).toEqual(["readers/index-unfit"]);
      expect((await found(reading)).features).toHaveLength(2);
    }
    const bytes = change(lonely("utm"), (parts) => {
      const shx = parts["utm.shx"] ?? new Uint8Array(0);
      const many = new Uint8Array(100 + 8 * 5000);
      many.set(shx);
      for (let at = 108; at < many.length; at += 8) many.set(shx.subarray(100, 108), at);
      parts["utm.shx"] = many;
    });
    expect(await codes(readBytes("a.zip", bytes))).toEqual(["readers/index-unfit"]);
  });

  test("shapes by the index leave out what was taken away later", async () => {
    const bytes = change(lonely("utm"), (parts) => {
      const shx = parts["utm.shx"] ?? new Uint8Array(0);
      parts["utm.shx"] = Uint8Array.from([...shx.subarray(0, 100), ...shx.subarray(108, 116)]);
      delete parts["utm.dbf"];
    });
    const file = await found(readBytes("a.zip", bytes));
    expect(file.features.map(({ geometry }) => geometry.type)).toEqual(["MultiPolygon"]);
  });

  test("a table that does not fit its shapes is not used, and said so", async () => {
    const dbfOf = (work: (dbf: Uint8Array, view: DataView) => Uint8Array | undefined) =>
      change(lonely("utm"), (parts) => {
        const dbf = parts["utm.dbf"] ?? new Uint8Array(0);
        parts["utm.dbf"] = work(dbf, new DataView(dbf.buffer, dbf.byteOffset, dbf.byteLength)) ?? dbf;
      });
    for (const bytes of [
      dbfOf((_, view) => void view.setUint32(4, 1, true)),
      dbfOf((_, view) => void view.setUint32(4, 0xffffffff, true)),
      dbfOf((_, view) => void view.setUint16(8, 0xffff, true)),
      dbfOf((_, view) => void view.setUint16(8, 3, true)),
      dbfOf((_, view) => void view.setUint16(10, 2, true)),
      dbfOf((dbf) => dbf.slice(0, 400)),
      dbfOf((dbf) => dbf.slice(0, 20)),
      dbfOf(() => new Uint8Array(0)),
    ]) {
      const reading = readBytes("a.zip", bytes);
      expect(await codes(reading)).toContain("readers/table-unfit");
      expect((await found(reading)).features.map(({ name }) => name)).toEqual([null, null]);
    }
  });

  test("lines marked as deleted are gone, and columns of memos are told", async () => {
    const bytes = change(lonely("utm"), (parts) => {
      const dbf = parts["utm.dbf"] ?? new Uint8Array(0);
      dbf[dbf[8] ?? 0] = 0x2a;
      dbf[64 + 11] = "M".charCodeAt(0);
    });
    const reading = readBytes("a.zip", bytes);
    expect(await codes(reading)).toContain("readers/columns-left-out");
    const file = await found(reading);
    expect(file.features.map(({ name }) => name)).toEqual(["two pieces"]);
  });

  test("an archive with no .shp is refused", async () => {
    expect(await codes(readBytes("a.zip", zipSync({ "a.dbf": new Uint8Array(40) })))).toEqual(["readers/no-shapes"]);
  });

  test("only empty shapes are nothing", async () => {
    const bytes = shpOf((_, view) => {
      view.setInt32(108, 0, true);
      view.setInt32(108 + 8 + 2 * view.getInt32(104), 0, true);
      return undefined;
    });
    expect(await codes(readBytes("a.zip", bytes))).toEqual(["readers/shapes-left-out", "readers/nothing-found"]);
  });

  test("an archive that unpacks to a gigabyte is refused before it does", async () => {
    const bytes = zipSync({ "a.shp": new Uint8Array(120e6), "a.dbf": new Uint8Array(40) }, { level: 9 });
    expect(bytes.length).toBeLessThan(1e6);
    expect(await codes(readBytes("a.zip", bytes))).toEqual(["readers/archive-too-large"]);
  });

  test("more shapes than fit into memory are refused", async () => {
    const count = 450_000;
    const shp = new Uint8Array(100 + 12 * count);
    const view = new DataView(shp.buffer);
    view.setInt32(0, 9994);
    view.setInt32(24, shp.length / 2);
    for (let i = 0; i < count; i++) view.setInt32(100 + 12 * i + 4, 2);
    expect(await codes(readBytes("a.zip", zipSync({ "a.shp": shp })))).toEqual(["readers/too-much-inside"]);
  });

  test("paths that lead out of an archive are of no meaning", async () => {
    const parts = unzipSync(lonely("utm"));
    const renamed = Object.fromEntries(Object.entries(parts).map(([name, bytes]) => [`../../etc/${name}`, bytes]));
    const file = await found(readBytes("a.zip", zipSync(renamed)));
    expect(file.features.map(({ layer }) => layer)).toEqual(["utm", "utm"]);
  });
});

/** One shapefile of several.zip, without its folder. */
function lonely(name: string): Uint8Array {
  const parts = Object.entries(unzipSync(fixtureBytes(`${folder}/several.zip`))).filter(([path]) =>
    path.startsWith(`${name}/`),
  );
  return zipSync(Object.fromEntries(parts.map(([path, bytes]) => [path.replace(`${name}/`, ""), bytes])));
}

function change(archive: Uint8Array, work: (parts: Record<string, Uint8Array>) => void): Uint8Array {
  const parts = unzipSync(archive);
  work(parts);
  return zipSync(parts);
}

/** Exchanges the numbers of every place of the first shape's points and of the rest alike (a file of lines with heights). */
function swapPlaces(shp: Uint8Array | undefined): void {
  if (shp === undefined) throw new Error("no shapes");
  const view = new DataView(shp.buffer, shp.byteOffset, shp.byteLength);
  for (let at = 100; at < shp.length; at += 8 + 2 * view.getInt32(at + 4)) {
    const [parts, points] = [view.getInt32(at + 8 + 36, true), view.getInt32(at + 8 + 40, true)];
    for (let i = 0; i < points; i++) {
      const place = at + 8 + 44 + 4 * parts + 16 * i;
      const [x, y] = [view.getFloat64(place, true), view.getFloat64(place + 8, true)];
      view.setFloat64(place, y, true);
      view.setFloat64(place + 8, x, true);
    }
  }
}

function placeAt(point: readonly [number, number, number?]) {
  const [place] = placesAt([point]);
  if (place === undefined) throw new Error("no place");
  return place;
}

function square(lon: number, lat: number, side: number): Position[] {
  return [
    [lon, lat],
    [lon + side, lat],
    [lon + side, lat + side],
    [lon, lat + side],
    [lon, lat],
  ];
}

const counterClockwise = (ring: Position[]): Position[] => ring;
const clockwise = (ring: Position[]): Position[] => [...ring].reverse();

/** The same places, wherever a ring begins. */
function closeTo(places: readonly Position[], wished: readonly Position[]): void {
  expect(places).toHaveLength(wished.length);
  const isRing = wished.length > 3;
  const ring = isRing ? places.slice(0, -1) : places;
  const from = isRing
    ? ring.findIndex(
        ([x = 0, y = 0]) => Math.abs(x - (wished[0]?.[0] ?? 0)) < 1e-7 && Math.abs(y - (wished[0]?.[1] ?? 0)) < 1e-7,
      )
    : 0;
  for (const [i, place] of wished.slice(0, ring.length).entries()) {
    const read = ring[(from + i) % ring.length] ?? [];
    expect(read).toHaveLength(place.length);
    for (const [n, value] of place.entries())
      expect(Math.abs((read[n] ?? NaN) - value)).toBeLessThan(n < 2 ? close_deg : 1e-9);
  }
}
