import { kml as byTogeojson } from "@tmcw/togeojson";
import { DOMParser } from "@xmldom/xmldom";
import { describe, expect, test } from "vitest";
import { readFile } from "../../../src/readers/read-file.ts";
import { noAnswers } from "../../../src/readers/reading.ts";
import { fileOf, found, saidOf } from "../../support/survived.ts";
import { zipOf } from "../hostile-zip.ts";
import { apart_m, foundIn, givenFeatures, mapFile, valueIn } from "./map-files.ts";

const head = `<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2">`;
const kml = (inside: string) => `${head}<Document>${inside}</Document></kml>`;
const placemark = (shape: string, name = "a") => `<Placemark><name>${name}</name>${shape}</Placemark>`;
const ring = (numbers: string) => `<LinearRing><coordinates>${numbers}</coordinates></LinearRing>`;
const triangle = ring("1,45 2,45 2,46 1,45");
const geometriesOf = async (text: string) => (await found("a.kml", text)).features.map(({ geometry }) => geometry);

describe("files that GDAL wrote from the same features", () => {
  for (const name of ["gdal-libkml.kml", "gdal-libkml.kmz", "gdal-kml.kml"]) {
    test(`${name}: every feature with its name, shape, values and layer`, async () => {
      const { features, questions } = await foundIn(name);
      const given = givenFeatures();
      expect(questions).toEqual([]);
      expect(features.map((feature) => feature.name)).toEqual(given.map((feature) => feature.name));
      for (const [i, feature] of given.entries()) {
        const back = features[i];
        if (back === undefined) throw new Error("lost");
        expect(apart_m(back.geometry, feature.geometry), feature.name).toBeLessThan(0.002);
        expect(valueIn(back, "role")).toBe(feature.values.get("role"));
        expect(valueIn(back, "setback_m")).toBe(feature.values.get("setback_m"));
        expect(back.layer).toBe("features");
      }
    });
  }

  test("another reader of KML finds the same corners", async () => {
    const text = new TextDecoder().decode(mapFile("gdal-libkml.kml"));
    const theirs = byTogeojson(new DOMParser().parseFromString(text, "text/xml")).features;
    const ours = (await foundIn("gdal-libkml.kml")).features;
    expect(ours).toHaveLength(theirs.length);
    for (const [i, { geometry, properties }] of theirs.entries()) {
      expect(ours[i]?.name).toBe(properties?.name);
      // It keeps several polygons as a collection; ours are one of several parts.
      if (geometry?.type !== "GeometryCollection") expect(ours[i]?.geometry).toEqual(geometry);
    }
  });
});

describe("shapes", () => {
  test("several of one kind become one of several parts, mixed ones a collection", async () => {
    const point = "<Point><coordinates>1,45</coordinates></Point>";
    const line = "<LineString><coordinates>1,45 2,45</coordinates></LineString>";
    const polygon = `<Polygon><outerBoundaryIs>${triangle}</outerBoundaryIs></Polygon>`;
    const several = (...shapes: readonly string[]) => placemark(`<MultiGeometry>${shapes.join("")}</MultiGeometry>`);
    const text = kml(
      [several(point, point), several(line, line), several(polygon, polygon), several(point, line)].join(""),
    );
    expect((await geometriesOf(text)).map(({ type }) => type)).toEqual([
      "MultiPoint",
      "MultiLineString",
      "MultiPolygon",
      "GeometryCollection",
    ]);
  });

  test("a polygon has its holes, and an open ring is closed", async () => {
    const hole = `<innerBoundaryIs>${ring("1.5,45.1,3 1.8,45.1,3 1.8,45.3,3")}</innerBoundaryIs>`;
    const text = kml(placemark(`<Polygon><outerBoundaryIs>${triangle}</outerBoundaryIs>${hole}</Polygon>`));
    expect(await geometriesOf(text)).toEqual([
      {
        type: "Polygon",
        coordinates: [
          [
            [1, 45],
            [2, 45],
            [2, 46],
            [1, 45],
          ],
          [
            [1.5, 45.1, 3],
            [1.8, 45.1, 3],
            [1.8, 45.3, 3],
            [1.5, 45.1, 3],
          ],
        ],
      },
    ]);
  });

  test("a track of a receiver is a line (gx:Track, KML 2.3)", async () => {
    const track =
      "<gx:Track><when>2026-01-01T00:00:00Z</when><gx:coord>1 45 7</gx:coord><gx:coord>2 45 8</gx:coord></gx:Track>";
    expect(await geometriesOf(kml(placemark(track)))).toEqual([
      {
        type: "LineString",
        coordinates: [
          [1, 45, 7],
          [2, 45, 8],
        ],
      },
    ]);
  });

  test("spaces behind commas, which begin a new place by the standard, are read over and told", async () => {
    const text = kml(placemark("<LineString><coordinates>1, 45, 7 2, 45, 8</coordinates></LineString>"));
    expect(await geometriesOf(text)).toEqual([
      {
        type: "LineString",
        coordinates: [
          [1, 45, 7],
          [2, 45, 8],
        ],
      },
    ]);
    expect(await saidOf("a.kml", text)).toEqual(["readers/spaces-in-places"]);
  });

  test("heights of 0 throughout are none, above the ground they are none either, one height keeps the zeros", async () => {
    const point = (numbers: string, mode = "") =>
      placemark(`<Point>${mode}<coordinates>${numbers}</coordinates></Point>`);
    const above = "<altitudeMode>relativeToGround</altitudeMode>";
    expect(await geometriesOf(kml(point("1,45,0") + point("2,45,0")))).toEqual([
      { type: "Point", coordinates: [1, 45] },
      { type: "Point", coordinates: [2, 45] },
    ]);
    expect(await geometriesOf(kml(point("1,45,5", above)))).toEqual([{ type: "Point", coordinates: [1, 45] }]);
    expect(await geometriesOf(kml(point("1,45,0") + point("2,45,5")))).toEqual([
      { type: "Point", coordinates: [1, 45, 0] },
      { type: "Point", coordinates: [2, 45, 5] },
    ]);
  });

  test("what has no place is counted and told, never dropped silently", async () => {
    const text = kml(
      [
        placemark("<Point><coordinates>1,45</coordinates></Point>", "good"),
        placemark("", "no shape"),
        placemark("<Point><coordinates>west,north</coordinates></Point>", "words"),
        placemark("<Point><coordinates>1,95</coordinates></Point>", "off"),
        placemark("<Point/>", "empty"),
        placemark("<LineString><coordinates>1,45</coordinates></LineString>", "one"),
        placemark(`<Polygon><outerBoundaryIs>${ring("1,45 2,45")}</outerBoundaryIs></Polygon>`, "two corners"),
        placemark("<Model/>", "model"),
      ].join(""),
    );
    const outcome = await readFile(fileOf("a.kml", text), noAnswers);
    expect(outcome.ok && outcome.value.features.map(({ name }) => name)).toEqual(["good"]);
    expect(outcome.findings.map(({ code }) => code)).toEqual(["readers/things-without-place"]);
    expect(outcome.findings[0]?.message.join("")).toContain("7 things");
  });

  test("latitude first, where the second number cannot be one, is asked about", async () => {
    const text = kml(placemark("<Point><coordinates>38.2921,-122.7165</coordinates></Point>"));
    expect((await found("a.kml", text)).questions.map(({ about }) => about)).toEqual(["order"]);
    expect((await found("a.kml", text, { isSwapped: true })).features[0]?.geometry).toEqual({
      type: "Point",
      coordinates: [-122.7165, 38.2921],
    });
  });
});

test("folders in folders are the layer; the document is the file", async () => {
  const point = "<Point><coordinates>1,45</coordinates></Point>";
  const text = kml(
    `<name>File</name>${placemark(point)}<Folder><name>North</name><Folder><name>Oaks</name>${placemark(point)}</Folder>${placemark(point)}</Folder>`,
  );
  expect((await found("a.kml", text)).features.map(({ layer }) => layer)).toEqual([null, "North / Oaks", "North"]);
});

test("data are numbers where the file says so, and texts where it says so", async () => {
  const schema = `<Schema id="s"><SimpleField name="row" type="string"/><SimpleField name="length_m" type="double"/><SimpleField name="is" type="bool"/></Schema>`;
  const typed = `<SchemaData schemaUrl="#s"><SimpleData name="row">14</SimpleData><SimpleData name="length_m">12.50</SimpleData><SimpleData name="is">1</SimpleData></SchemaData>`;
  const untyped = `<Data name="count"><value>14</value></Data><Data name="code"><value>014</value></Data><Data name="__proto__"><value>x</value></Data>`;
  const text = kml(
    `${schema}<Placemark><description>&lt;b&gt;HTML&lt;/b&gt;</description><ExtendedData>${typed}${untyped}</ExtendedData><Point><coordinates>1,45</coordinates></Point></Placemark>`,
  );
  expect((await found("a.kml", text)).features[0]?.values).toEqual([
    ["description", "<b>HTML</b>"],
    ["row", "14"],
    ["length_m", 12.5],
    ["is", true],
    ["count", 14],
    ["code", "014"],
    ["__proto__", "x"],
  ]);
});

test("nothing is fetched: what the file leads to is told", async () => {
  const text = kml(
    `<NetworkLink><Link><href>http://example.org/other.kml</href></Link></NetworkLink>${placemark("<Point><coordinates>1,45</coordinates></Point>")}`,
  );
  expect(await saidOf("a.kml", text)).toEqual(["readers/linked-elsewhere"]);
});

test("prefixes that nobody declared do no harm", async () => {
  const text = `<kml:kml><kml:Placemark xsi:schemaLocation="x"><kml:Point><kml:coordinates>1,45</kml:coordinates></kml:Point></kml:Placemark></kml:kml>`;
  expect(await geometriesOf(text)).toEqual([{ type: "Point", coordinates: [1, 45] }]);
});

describe("KMZ", () => {
  const one = kml(placemark("<Point><coordinates>1,45</coordinates></Point>", "one"));
  const two = kml(placemark("<Point><coordinates>1,45</coordinates></Point>", "two"));
  const nameOf = async (archive: Uint8Array) => (await found("a.kmz", archive)).features[0]?.name;

  test("its KML is read whatever it is called and wherever it lies", async () => {
    expect(await nameOf(zipOf({ "files/a.png": "x", "files/PLAN.KML": one }))).toBe("one");
  });

  test("of several all are read, and what leads from one to another leads nowhere else", async () => {
    const link = kml("<NetworkLink><Link><href>files/b.kml</href></Link></NetworkLink>");
    const archive = zipOf({ "doc.kml": link, "__MACOSX/._b.kml": "x", "files/b.kml": two, "c.kml": one });
    expect((await found("a.kmz", archive)).features.map(({ name }) => name)).toEqual(["two", "one"]);
    expect(await saidOf("a.kmz", archive)).toEqual([]);
  });

  test("without a KML, cut off, or none at all it is refused", async () => {
    expect(await saidOf("a.kmz", zipOf({ "a.png": "x" }))).toEqual(["readers/broken-file"]);
    const archive = zipOf({ "doc.kml": one });
    expect(await saidOf("a.kmz", archive.subarray(0, archive.length - 10))).toEqual(["readers/broken-file"]);
    expect(await saidOf("a.kmz", "not an archive")).toEqual(["readers/broken-file"]);
  });

  test("a bomb is refused before it is unpacked", async () => {
    expect(await saidOf("a.kmz", zipOf({ "doc.kml": new Uint8Array(60_000_000) }))).toEqual([
      "readers/archive-too-large",
    ]);
  });
});

describe("refused in words", () => {
  const cases: readonly (readonly [told: string, text: string, code: string])[] = [
    ["cut off", kml("").slice(0, -3), "readers/broken-file"],
    ["entities of its own", `<!DOCTYPE kml [<!ENTITY a "b">]>${kml("&a;")}`, "readers/broken-file"],
    ["folders in folders", kml("<Folder>".repeat(100_000)), "readers/broken-file"],
    ["something else", "<html/>", "readers/broken-file"],
    ["nothing in it", kml(""), "readers/nothing-found"],
  ];
  for (const [told, text, code] of cases) {
    test(told, async () => {
      expect(await saidOf("a.kml", text)).toEqual([code]);
      await expect(found("a.kml", text)).rejects.toThrow();
    });
  }
});
