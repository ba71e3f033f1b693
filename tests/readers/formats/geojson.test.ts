import { describe, expect, test } from "vitest";
import { found, saidOf } from "../../support/survived.ts";
import { apart_m, foundIn, givenFeatures, valueIn } from "./map-files.ts";

const point = (coordinates: unknown, properties: unknown = {}) => ({
  type: "Feature",
  properties,
  geometry: { type: "Point", coordinates },
});
const collection = (...features: readonly unknown[]) => JSON.stringify({ type: "FeatureCollection", features });

describe("files that GDAL wrote from the same features", () => {
  const files = [
    ["gdal-rfc7946.geojson", 0.002],
    ["gdal-crs84.geojson", 0.002],
    ["gdal-lines.geojsonl", 0.002],
    ["gdal-records.geojsons", 0.002],
    ["gdal-utm.geojson", 0.002],
    // In US survey feet, and not in feet: that would be 4 m off.
    ["gdal-us-feet.geojson", 0.002],
  ] as const;
  for (const [name, within_m] of files) {
    test(`${name}: every feature with its name, shape and values`, async () => {
      const { features, questions } = await foundIn(name);
      expect(questions).toEqual([]);
      const given = givenFeatures();
      expect(features.map((feature) => feature.name)).toEqual(given.map((feature) => feature.name));
      for (const [i, feature] of given.entries()) {
        const back = features[i];
        if (back === undefined) throw new Error("lost");
        expect(apart_m(back.geometry, feature.geometry), feature.name).toBeLessThan(within_m);
        expect(valueIn(back, "role")).toBe(feature.values.get("role"));
        expect(valueIn(back, "setback_m")).toBe(feature.values.get("setback_m"));
      }
      const heights = features.flatMap(({ geometry }) => (geometry.type === "Point" ? [geometry.coordinates[2]] : []));
      expect(heights).toEqual([101.25, 0]);
    });
  }

  test("the system of a projected file is told, and the layer that GDAL names", async () => {
    const { system, features } = await foundIn("gdal-us-feet.geojson");
    expect(system).toContain("2226");
    expect(features[0]?.layer).toBe("features");
  });
});

test("an answered system goes before the stated one", async () => {
  const stated = await foundIn("gdal-utm.geojson");
  const answered = await foundIn("gdal-utm.geojson", { system: "EPSG:32611" });
  expect(answered.system).toContain("32611");
  expect(
    apart_m(
      stated.features[2]?.geometry ?? { type: "Point", coordinates: [] },
      answered.features[2]?.geometry ?? { type: "Point", coordinates: [] },
    ),
  ).toBeGreaterThan(100_000);
});

describe("what a file leaves open is asked, and nothing has a place before", () => {
  test("projected numbers without a word about their system (RFC 7946 section 4 allows none)", async () => {
    const file = await found("a.geojson", collection(point([512345.6, 4238000.1]), point([512346.6, 4238000.1])));
    expect(file.questions.map(({ about }) => about)).toEqual(["system"]);
    expect(file.features).toEqual([]);
    const answered = await found("a.geojson", collection(point([512345.6, 4238000.1])), { system: "EPSG:32610" });
    expect(answered.features[0]?.geometry.type).toBe("Point");
    expect(answered.questions).toEqual([]);
  });

  test("latitude first, where the second number is beyond 90: proof that they stand the other way round", async () => {
    const text = collection(point([38.2921, -122.7165]), point([38.2922, -122.7166]));
    expect((await found("a.geojson", text)).questions.map(({ about }) => about)).toEqual(["order"]);
    const turned = await found("a.geojson", text, { isSwapped: true });
    expect(turned.features[0]?.geometry).toEqual({ type: "Point", coordinates: [-122.7165, 38.2921] });
  });

  test("latitude first, where both could be: it would lie where hardly any vines grow", async () => {
    const text = collection(point([48.1, 16.4, 200]), point([48.2, 16.5]));
    expect((await found("a.geojson", text)).questions.map(({ about }) => about)).toEqual(["order"]);
    expect((await found("a.geojson", text, { isSwapped: true })).features[0]?.geometry).toEqual({
      type: "Point",
      coordinates: [16.4, 48.1, 200],
    });
    expect((await found("a.geojson", text, { isSwapped: false })).features[0]?.geometry).toEqual({
      type: "Point",
      coordinates: [48.1, 16.4, 200],
    });
  });

  test("places where vines grow either way are not asked about", async () => {
    expect((await found("a.geojson", collection(point([44.5, 40.2])))).questions).toEqual([]);
  });

  test("a system that needs a file of shifts is refused in words and asked for again", async () => {
    const text = JSON.stringify({
      type: "FeatureCollection",
      crs: { type: "name", properties: { name: "urn:ogc:def:crs:EPSG::27700" } },
      features: [point([400000, 300000])],
    });
    expect((await found("a.geojson", text)).questions.map(({ about }) => about)).toEqual(["system"]);
    expect(await saidOf("a.geojson", text)).toEqual(["readers/stated-system-unread"]);
  });
});

describe("shapes", () => {
  test("rings are closed, and turned as RFC 7946 section 3.1.6 asks", async () => {
    const clockwise = [
      [0, 40],
      [0, 41],
      [1, 41],
      [1, 40],
    ];
    const { features } = await found("a.geojson", JSON.stringify({ type: "Polygon", coordinates: [clockwise] }));
    expect(features[0]?.geometry).toEqual({
      type: "Polygon",
      coordinates: [
        [
          [0, 40],
          [1, 40],
          [1, 41],
          [0, 41],
          [0, 40],
        ],
      ],
    });
  });

  test("a bare geometry, and a collection of them", async () => {
    const geometries = [
      { type: "Point", coordinates: [1, 45] },
      {
        type: "LineString",
        coordinates: [
          [1, 45],
          [2, 45],
        ],
      },
    ];
    const { features } = await found("a.json", JSON.stringify({ type: "GeometryCollection", geometries }));
    expect(features.map(({ geometry }) => geometry.type)).toEqual(["GeometryCollection"]);
  });

  test("what has no place is counted and told, never dropped silently", async () => {
    const text = collection(
      point([1, 45], { name: "good" }),
      point(["1", "45"], { name: "texts" }),
      point([1]),
      { type: "Feature", properties: { name: "empty" }, geometry: null },
      {
        type: "Feature",
        properties: {},
        geometry: {
          type: "Polygon",
          coordinates: [
            [
              [0, 40],
              [1, 40],
              [0, 40],
            ],
          ],
        },
      },
      { type: "Feature", properties: {}, geometry: { type: "Circle", coordinates: [1, 45] } },
      null,
      "oak",
      point([1, 95]),
    );
    const { features } = await found("a.geojson", text);
    expect(features.map(({ name }) => name)).toEqual(["good"]);
    expect(await saidOf("a.geojson", text)).toEqual(["readers/things-without-place"]);
  });

  test("properties become values in their order; names of the language mean nothing", async () => {
    const text = `{"type":"Feature","id":7,"properties":{"__proto__":"a","constructor":1,"NAME":"oak","list":[1,2],"none":null,"yes":true,"zero":0},"geometry":{"type":"Point","coordinates":[1,45]}}`;
    const [feature] = (await found("a.geojson", text)).features;
    expect(feature?.name).toBe("oak");
    expect(feature?.values).toEqual([
      ["id", "7"],
      ["__proto__", "a"],
      ["constructor", 1],
      ["list", "[1,2]"],
      ["yes", true],
      ["zero", 0],
    ]);
  });

  test("brackets, colons and quotes in names are letters like others", async () => {
    const name = `\\"[[[{{{:::\\`.repeat(100);
    expect((await found("a.geojson", collection(point([1, 45], { name })))).features[0]?.name).toBe(name);
  });

  test("a name with HTML or a formula stays the text that it is", async () => {
    const names = [`<img src=x onerror="alert(1)">`, "=HYPERLINK(A1)"];
    const { features } = await found("a.geojson", collection(...names.map((name) => point([1, 45], { name }))));
    expect(features.map(({ name }) => name)).toEqual(names);
  });
});

describe("letters", () => {
  const text = collection(point([1, 45], { name: "Söhne" }));
  const nameOf = async (bytes: Uint8Array) => (await found("a.geojson", bytes)).features[0]?.name;

  test("with a byte order mark, and in UTF-16 either way", async () => {
    expect(await nameOf(new TextEncoder().encode(`\u{feff}${text}`))).toBe("Söhne");
    const wide = new Uint8Array(Buffer.from(`\u{feff}${text}`, "utf16le"));
    expect(await nameOf(wide)).toBe("Söhne");
    expect(await nameOf(new Uint8Array(Buffer.from(wide).swap16()))).toBe("Söhne");
  });

  test("in Windows-1252, which is told", async () => {
    const bytes = new Uint8Array(Buffer.from(text, "latin1"));
    expect(await nameOf(bytes)).toBe("Söhne");
    expect(await saidOf("a.geojson", bytes)).toEqual(["readers/letters-differ"]);
  });
});

describe("refused in words", () => {
  const cases: readonly (readonly [told: string, text: string, code: string])[] = [
    ["a text that is cut off", collection(point([1, 45])).slice(0, -20), "readers/broken-file"],
    ["a list", "[]", "readers/broken-file"],
    ["a word", "null", "readers/broken-file"],
    ["nothing", "", "readers/broken-file"],
    ["NaN for a number", collection(point([1, 45])).replace("45", "NaN"), "readers/broken-file"],
    ["brackets in brackets", `{"type":"FeatureCollection","features":${"[".repeat(100_000)}`, "readers/broken-file"],
    [
      "brackets in brackets that end",
      `{"type":"FeatureCollection","features":${"[".repeat(50_000)}${"]".repeat(50_000)}}`,
      "readers/broken-file",
    ],
    [
      "collections in collections",
      `${`{"type":"GeometryCollection","geometries":[`.repeat(5000)}${"]}".repeat(5000)}`,
      "readers/broken-file",
    ],
    [
      "properties without end",
      `{"type":"Feature","properties":{${Array.from({ length: 6000 }, (_, i) => `"a${i}":0`).join()}}}`,
      "readers/broken-file",
    ],
    [
      "lists without end",
      `{"type":"FeatureCollection","features":[${"[],".repeat(2_000_001)}[]]}`,
      "readers/broken-file",
    ],
    [
      "texts without end",
      `{"type":"FeatureCollection","features":[${'"",'.repeat(3_000_001)}""]}`,
      "readers/broken-file",
    ],
    ["TopoJSON", `{"type":"Topology","objects":{}}`, "readers/broken-file"],
    ["no features", collection(), "readers/nothing-found"],
    [
      "features that are no list",
      `{"type":"FeatureCollection","features":{"length":1000000000}}`,
      "readers/nothing-found",
    ],
  ];
  for (const [told, text, code] of cases) {
    test(told, async () => {
      expect(await saidOf("a.geojson", text)).toContain(code);
      await expect(found("a.geojson", text)).rejects.toThrow();
    });
  }
});
