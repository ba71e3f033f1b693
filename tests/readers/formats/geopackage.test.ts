import { describe, expect, test } from "vitest";
import { openDatabase } from "../../../src/readers/sqlite.ts";
import { codes, fixtureBytes, found, readBytes, readFixture } from "../../support/read-bytes.ts";

const fixture = "exchange/geopackage/gdal.gpkg";

test("what GDAL writes (make.sh beside the file): layers, names, values, heights, places", async () => {
  const file = await found(readFixture(fixture));
  expect(file.questions).toEqual([]);
  expect(file.features.map(({ name, layer, geometry }) => [name, layer, geometry.type])).toEqual([
    ["Viña – Süd & <b>", "areas", "Polygon"],
    ["two pieces", "areas", "MultiPolygon"],
    ["row 1", "rows", "LineString"],
    ["oak", "trees", "MultiPoint"],
  ]);
  expect(file.features[0]?.values).toEqual([
    ["note", "x".repeat(300)],
    ["area_ha", 1.25],
    ["count", 12],
    ["drip", true],
  ]);
  const [outline, , row] = file.features;
  if (outline?.geometry.type !== "Polygon" || row?.geometry.type !== "LineString") throw new Error("other shapes");
  expect(outline.geometry.coordinates.map((ring) => ring.length)).toEqual([5, 5]);
  for (const [lon = 0, lat = 0] of outline.geometry.coordinates[0] ?? []) {
    expect(Math.min(Math.abs(lon + 122.7), Math.abs(lon + 122.699))).toBeLessThan(1e-10);
    expect(Math.min(Math.abs(lat - 38.29), Math.abs(lat - 38.291))).toBeLessThan(1e-10);
  }
  expect(row.geometry.coordinates.map((place) => place[2])).toEqual([100, 101.5]);
  expect(await codes(readFixture(fixture))).toEqual(["readers/shapes-left-out"]);
});

test("its beginning tells it, whatever it is called", async () => {
  expect((await found(readBytes("plan.bin", fixtureBytes(fixture)))).format).toBe("GeoPackage");
});

test("a system that is not said, or of a file of shifts, is asked for", async () => {
  for (const sql of [
    "UPDATE gpkg_geometry_columns SET srs_id = -1",
    "DELETE FROM gpkg_spatial_ref_sys",
    "UPDATE gpkg_spatial_ref_sys SET organization_coordsys_id = 27700, definition = 'undefined' WHERE srs_id = 32610",
  ]) {
    const bytes = await changed(sql);
    expect((await found(readBytes("a.gpkg", bytes))).questions.map(({ about }) => about)).toEqual(["system"]);
  }
  const answered = await found(
    readBytes("a.gpkg", await changed("UPDATE gpkg_geometry_columns SET srs_id = -1 WHERE table_name = 'areas'"), {
      system: "EPSG:32610",
    }),
  );
  expect(answered.features).toHaveLength(4);
});

describe("what is broken or hostile", () => {
  test("cut off anywhere, it is refused", async () => {
    const whole = fixtureBytes(fixture);
    for (const length of [10, 50, 99, 4096, 20_000, whole.length - 4096, whole.length - 1]) {
      expect(await codes(readBytes("a.gpkg", whole.slice(0, length)))).toEqual(["readers/broken-file"]);
    }
  });

  test("something else that ends in .gpkg, and a database without layers, are refused", async () => {
    expect(await codes(readBytes("a.gpkg", new TextEncoder().encode("hello")))).toEqual(["readers/broken-file"]);
    const empty = await openDatabase(null);
    empty.run("CREATE TABLE a (b)");
    const bytes = empty.export();
    empty.close();
    expect(await codes(readBytes("a.gpkg", bytes))).toEqual(["readers/broken-file"]);
  });

  test("damaged pages end in an answer", async () => {
    const whole = fixtureBytes(fixture);
    for (let page = 0; page < whole.length; page += 4096) {
      const bytes = whole.slice();
      bytes.fill(0x5a, page + 100, page + 1200);
      const outcome = await readBytes("a.gpkg", bytes);
      if (!outcome.ok) expect(outcome.findings.map(({ code }) => code).join()).toMatch(/broken-file|nothing-found/);
      else expect(outcome.value.format).toBe("GeoPackage");
    }
  });

  const endless =
    "WITH RECURSIVE t(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM t) SELECT n AS fid, NULL AS geom, n AS name FROM t";

  test("a view that never ends is not run", async () => {
    const bytes = await changed(
      "ALTER TABLE areas RENAME TO real_areas",
      `CREATE VIEW areas AS ${endless}`,
      "UPDATE gpkg_geometry_columns SET table_name = 'areas' WHERE table_name = 'real_areas'",
    );
    const reading = readBytes("a.gpkg", bytes);
    expect(await codes(reading)).toContain("readers/layers-left-out");
    expect((await found(reading)).features.map(({ layer }) => layer)).toEqual(["rows", "trees"]);
  });

  test("nor is one in the place of the tables that every GeoPackage has", async () => {
    const bytes = await changed(
      "DROP TABLE gpkg_geometry_columns",
      `CREATE VIEW gpkg_geometry_columns AS SELECT n AS table_name, n AS column_name, 0 AS srs_id FROM (${endless})`,
    );
    expect(await codes(readBytes("a.gpkg", bytes))).toEqual(["readers/broken-file"]);
  });

  test("columns that are worked out are not asked for", async () => {
    const bytes = await changed("ALTER TABLE rows ADD COLUMN bomb TEXT AS (hex(zeroblob(400000000)))");
    const row = (await found(readBytes("a.gpkg", bytes))).features.find(({ layer }) => layer === "rows");
    expect(row?.values).toEqual([]);
  });

  test("names that would be SQL are names", async () => {
    const evil = 'x"; DROP TABLE areas; --';
    const bytes = await changed(
      `ALTER TABLE rows RENAME TO "${evil.replaceAll('"', '""')}"`,
      `UPDATE gpkg_geometry_columns SET table_name = '${evil}' WHERE table_name = 'rows'`,
      `ALTER TABLE areas RENAME COLUMN note TO "__proto__"`,
    );
    const file = await found(readBytes("a.gpkg", bytes));
    expect(file.features.map(({ layer }) => layer)).toContain(evil);
    expect(file.features[0]?.values[0]).toEqual(["__proto__", "x".repeat(300)]);
  });

  test("shapes of many lies are left out, the others stay", async () => {
    const head = "4750000100000000"; // GP, version 0, little-endian, system 0
    for (const body of [
      "", // nothing
      "01", // half a shape
      "0102000000ffffffff", // four thousand million places
      "0103000000ffffffff",
      "0107000000ffffffff",
      "0107000000010000000107000000010000000107000000010000000107000000010000000107000000010000000107000000010000000107000000010000000107000000010000000107000000010000000107000000010000000107000000",
      "0163000000", // no type of ours
      "0101000000000000000000f07f000000000000f07f", // infinity
    ]) {
      const bytes = await changed(`UPDATE rows SET geom = X'${head}${body}'`);
      const reading = readBytes("a.gpkg", bytes);
      expect((await codes(reading)).filter((code) => code === "readers/shapes-left-out")).toHaveLength(2);
      expect((await found(reading)).features).toHaveLength(3);
    }
  });

  test("more than fits into memory is refused", async () => {
    const bytes = await changed(
      "WITH RECURSIVE t(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM t WHERE n < 450000) INSERT INTO rows (name) SELECT NULL FROM t",
    );
    expect(await codes(readBytes("a.gpkg", bytes))).toEqual(["readers/too-much-inside"]);
  });
});

/** The fixture after some SQL, without the triggers that keep GDAL's counts. */
async function changed(...statements: readonly string[]): Promise<Uint8Array> {
  const database = await openDatabase(fixtureBytes(fixture));
  try {
    for (const [name] of database.exec("SELECT name FROM sqlite_master WHERE type = 'trigger'")[0]?.values ?? []) {
      database.run(`DROP TRIGGER "${String(name)}"`);
    }
    for (const sql of statements) database.run(sql);
    return database.export();
  } finally {
    database.close();
  }
}
