import { readFileSync } from "node:fs";
import type { Polygon, Position } from "geojson";
import { describe, expect, test } from "vitest";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { dxfReader } from "../../../src/readers/formats/dxf.ts";
import type { FoundFeature } from "../../../src/readers/reading.ts";
import { noAnswers } from "../../../src/readers/reading.ts";
import { geodesic } from "../../support/geodesic.ts";
import { fileOf, found, saidOf } from "../../support/survived.ts";

/* Invented drawings around 38 N, 122 W; a local plane in metres there. */
const local = "+proj=tmerc +lat_0=38 +lon_0=-122 +k=1 +datum=WGS84 +units=m";
const origin = lonLat(-122, 38);
const fixture = (name: string) => readFileSync(`tests/fixtures/exchange/dxf/${name}`);

const drawing = (entities: string, header = "9\n$INSUNITS\n70\n6\n", blocks = "") =>
  [
    `0\nSECTION\n2\nHEADER\n${header}0\nENDSEC\n`,
    blocks === "" ? "" : `0\nSECTION\n2\nBLOCKS\n${blocks}0\nENDSEC\n`,
    `0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`,
  ].join("");
const pointAt = (x: number | string, y: number | string, more = "") =>
  `0\nPOINT\n8\nTREES\n10\n${x}\n20\n${y}\n${more}`;

/** Metres east and north of the origin, along the ellipsoid. */
function away([lon = 0, lat = 0]: Position): number {
  return geodesic(origin, lonLat(lon, lat)).length_m;
}

/** The place of a point. */
function placeOf(feature: FoundFeature | undefined): Position {
  if (feature?.geometry.type !== "Point") throw new Error("not a point");
  return feature.geometry.coordinates;
}

function ofLayer(features: readonly FoundFeature[], layer: string): FoundFeature {
  const [feature, ...more] = features.filter((each) => each.layer === layer);
  if (feature === undefined || more.length > 0) throw new Error(`${more.length + 1} or no ${layer}`);
  return feature;
}

describe("a drawing as GDAL writes it", () => {
  const answers = { system: "EPSG:32610", unit: "m" } as const;

  test("an outline with a hole comes as a hatched area, a row and a tree with their heights", async () => {
    const { features } = await found("gdal.dxf", fixture("gdal.dxf"), answers);
    expect(features.map(({ layer, geometry }) => [layer, geometry.type])).toEqual([
      ["PARCEL", "Polygon"],
      ["ROW", "LineString"],
      ["TREE", "Point"],
    ]);
    const [outer = [], hole = [], ...more] = (ofLayer(features, "PARCEL").geometry as Polygon).coordinates;
    expect([outer.length, hole.length, more.length]).toEqual([5, 5, 0]);
    expect(ofLayer(features, "TREE").geometry).toMatchObject({ type: "Point" });
    expect(placeOf(ofLayer(features, "TREE"))[2]).toBe(99.25);
  });

  // 500000 east is the middle meridian of UTM zone 10, 123 W.
  test("its places are those of the system that is stated", async () => {
    const { features, system } = await found("gdal.dxf", fixture("gdal.dxf"), answers);
    expect(system).toContain("32610");
    const corner = (ofLayer(features, "PARCEL").geometry as Polygon).coordinates[0]?.[0];
    expect(corner?.[0]).toBeCloseTo(-123, 9);
  });

  // GDAL writes 1, inches, into every drawing.
  test("the unit that it writes because nobody chose is not believed", async () => {
    const { questions, features } = await found("gdal.dxf", fixture("gdal.dxf"), { system: "EPSG:32610" });
    expect(questions.map(({ about }) => about)).toEqual(["unit"]);
    expect(questions[0]?.offered[0]?.value).toBe("m");
    expect(features).toEqual([]);
  });

  test("without a system nothing has a place", async () => {
    const { questions, features } = await found("gdal.dxf", fixture("gdal.dxf"));
    expect(questions.map(({ about }) => about)).toEqual(["system"]);
    expect(features).toEqual([]);
  });
});

describe("a drawing with what makes drawings hard to read", () => {
  const read = () => found("drawn-r2000.dxf", fixture("drawn-r2000.dxf"), { system: local });

  test("a bulged side becomes corners on its half circle", async () => {
    const { features } = await read();
    const ring = (ofLayer(features, "PARCEL").geometry as Polygon).coordinates[0] ?? [];
    expect(ring.length).toBeGreaterThan(20);
    // The side from 40, 20 to 0, 20 is a half circle of radius 20 around 20, 20.
    const furthest = Math.max(...ring.map(away));
    expect(furthest).toBeGreaterThan(Math.hypot(20, 20) + 20 - 0.01);
    expect(await saidOf("drawn-r2000.dxf", fixture("drawn-r2000.dxf"), { system: local })).toContain(
      "readers/curves-as-corners",
    );
  });

  test("a circle is a ring of its radius, an arc a line of it", async () => {
    const { features } = await read();
    const track = ofLayer(features, "TRACK").geometry;
    if (track.type !== "LineString") throw new Error("an arc is a line");
    for (const place of track.coordinates) expect(away(place)).toBeCloseTo(10, 3);
    expect(ofLayer(features, "POND").geometry.type).toBe("Polygon");
    expect(ofLayer(features, "BED").geometry.type).toBe("Polygon");
  });

  test("a hatch keeps its hole, and one of edges its round end", async () => {
    const { features } = await read();
    expect((ofLayer(features, "AREA").geometry as Polygon).coordinates.length).toBe(2);
    expect((ofLayer(features, "EDGES").geometry as Polygon).coordinates[0]?.length).toBeGreaterThan(10);
  });

  test("what is drawn on the plane from below comes out mirrored", async () => {
    const { features } = await read();
    const { geometry } = ofLayer(features, "MIRRORED");
    if (geometry.type !== "LineString") throw new Error("a line");
    expect(geometry.coordinates[1]?.[0]).toBeLessThan(-122);
  });

  test("a text on a point is its name", async () => {
    const { features } = await read();
    expect(ofLayer(features, "SPOT")).toMatchObject({ name: "Peg 12", geometry: { type: "Point" } });
  });

  test("texts come without their marks, letters of the code page as they are", async () => {
    const { features } = await read();
    const notes = features.filter(({ layer }) => layer === "NOTES").map(({ name }) => name);
    expect(notes).toEqual(["Old Well 3°", "Phänologie 90° ñ –"]);
  });

  test("a small symbol is a point with its attributes, a large one is taken apart in its place", async () => {
    const { features } = await read();
    expect(ofLayer(features, "TREES").values).toEqual([
      ["entity", "INSERT"],
      ["block", "TREE"],
      ["SPECIES", "oak"],
    ]);
    // Turned by 90 degrees and twice as large, from 200, 100: the far corner at (30, 20) comes to (160, 160).
    const ring = (ofLayer(features, "HOUSE").geometry as Polygon).coordinates[0] ?? [];
    expect(ring.some((place) => Math.abs(away(place) - Math.hypot(160, 160)) < 0.001)).toBe(true);
  });

  test("what is on a sheet is left out, and what is not read is told", async () => {
    const { features } = await read();
    expect(features.length).toBe(13);
    const codes = await saidOf("drawn-r2000.dxf", fixture("drawn-r2000.dxf"), { system: local });
    expect(codes).toEqual(["readers/not-drawn", "readers/curves-as-corners", "readers/symbols-as-points"]);
  });

  test("an old one in a code page is read in it", async () => {
    const answers = { system: local, unit: "m" } as const;
    const { features } = await found("drawn-r12.dxf", fixture("drawn-r12.dxf"), answers);
    expect(ofLayer(features, "NOTES").name).toBe("Süd");
    expect(ofLayer(features, "PARZELLE").geometry.type).toBe("Polygon");
    expect(
      (ofLayer(features, "ROW").geometry as { coordinates: Position[] }).coordinates.map((place) => place[2]),
    ).toEqual([101, 102]);
  });
});

describe("units", () => {
  const stateplane = drawing(pointAt(6_360_000, 1_900_000), "9\n$INSUNITS\n70\n2\n");

  // Feet taken for survey feet are 4 m off at State Plane California II (FORMATS, A6).
  test("feet are asked about where the system counts survey feet", async () => {
    const { questions } = await found("a.dxf", stateplane, { system: "EPSG:2226" });
    expect(questions.map(({ about }) => about)).toEqual(["unit"]);
    const place = async (unit: "ft" | "us-ft") => {
      const { features } = await found("a.dxf", stateplane, { system: "EPSG:2226", unit });
      const [lon = 0, lat = 0] = placeOf(features[0]);
      return lonLat(lon, lat);
    };
    expect(geodesic(await place("ft"), await place("us-ft")).length_m).toBeCloseTo(4.04, 1);
  });

  test.each([0, 1, 2, 4, 5, 10, 99])("$INSUNITS %i is asked about in a plane of metres", async (units) => {
    const text = drawing(pointAt(5, 5) + pointAt(8, 9), `9\n$INSUNITS\n70\n${units}\n`);
    const { questions } = await found("a.dxf", text, { system: local });
    expect(questions.map(({ about }) => about)).toEqual(["unit"]);
  });

  test("millimetres are believed where the drawing is as large as a field in them, and told", async () => {
    const text = drawing(pointAt(0, 0) + pointAt(100_000, 0), "9\n$INSUNITS\n70\n4\n");
    const { features } = await found("a.dxf", text, { system: local });
    expect(away(placeOf(features[1]))).toBeCloseTo(100, 3);
    expect(await saidOf("a.dxf", text, { system: local })).toEqual(["readers/drawn-small"]);
  });

  test("a drawing in degrees is offered to be read as such", async () => {
    const text = drawing(pointAt(-122.5, 38.2), "");
    const { questions } = await found("a.dxf", text);
    expect(questions[0]?.offered.map(({ value }) => value)).toEqual(["EPSG:4326"]);
    const { features } = await found("a.dxf", text, { system: "EPSG:4326" });
    expect(placeOf(features[0])[0]).toBeCloseTo(-122.5, 12);
    expect(placeOf(features[0])[1]).toBeCloseTo(38.2, 12);
  });
});

describe("order and system", () => {
  const turned = drawing(pointAt(4_240_000, 500_000));

  test("northings where eastings should be are asked about", async () => {
    const { questions } = await found("a.dxf", turned, { system: "EPSG:32610" });
    expect(questions.map(({ about }) => about)).toEqual(["order"]);
    const { features } = await found("a.dxf", turned, { system: "EPSG:32610", isSwapped: true });
    expect(placeOf(features[0])[0]).toBeCloseTo(-123, 6);
  });

  test("numbers that lie nowhere in the system are refused", async () => {
    expect(await saidOf("a.dxf", drawing(pointAt(9e7, 9e7)), { system: "EPSG:32610" })).toEqual([
      "readers/numbers-off-system",
    ]);
  });

  test("an answer that is no system is refused in words", async () => {
    expect(await saidOf("a.dxf", turned, { system: "the county grid" })).toEqual(["systems/bad-system"]);
  });
});

describe("broken and hostile drawings", () => {
  const whole = drawing(pointAt(1, 1));
  const answers = { system: local } as const;

  test.each([
    ["cut off within a group", whole.slice(0, whole.indexOf("10\n1\n") + 3), "readers/broken-file"],
    ["cut off before its end", whole.slice(0, whole.lastIndexOf("0\nENDSEC")), "readers/broken-file"],
    ["binary", `AutoCAD Binary DXF\r\n\u001a\0${"\0".repeat(50)}`, "readers/broken-file"],
    ["zeros", "\0".repeat(6400), "readers/broken-file"],
    ["empty", "", "readers/broken-file"],
    ["without anything", drawing(""), "readers/nothing-found"],
    ["with nothing but what is not read", drawing("0\nREGION\n8\n0\n"), "readers/nothing-found"],
  ])("a drawing that is %s is refused", async (_, text, code) => {
    expect(await saidOf("a.dxf", text, answers)).toEqual([code]);
  });

  test("things whose numbers are none are left out and told", async () => {
    const text = drawing(pointAt("NaN", 1) + pointAt("1e999", 1) + pointAt("0x10", 2) + pointAt("", 2) + pointAt(3, 4));
    expect((await found("a.dxf", text, answers)).features.length).toBe(1);
    expect(await saidOf("a.dxf", text, answers)).toEqual(["readers/without-numbers"]);
  });

  test("symbols in symbols in symbols are refused before they fill the memory", async () => {
    const insert = (name: string) => `0\nINSERT\n8\n0\n2\n${name}\n10\n0\n20\n0\n`;
    const levels = Array.from(
      { length: 12 },
      (_, i) => `0\nBLOCK\n2\nB${i}\n10\n0\n20\n0\n${insert(`B${i + 1}`).repeat(10)}0\nENDBLK\n`,
    );
    const last = "0\nBLOCK\n2\nB12\n10\n0\n20\n0\n0\nLINE\n8\n0\n10\n0\n20\n0\n11\n100\n21\n0\n0\nENDBLK\n";
    const text = drawing(insert("B0"), "9\n$INSUNITS\n70\n6\n", levels.join("") + last);
    expect(await saidOf("a.dxf", text, answers)).toEqual(["readers/too-much-drawn"]);
  });

  test("a symbol that stands in itself ends", async () => {
    const insert = "0\nINSERT\n8\n0\n2\nB\n10\n1\n20\n0\n";
    const block = `0\nBLOCK\n2\nB\n10\n0\n20\n0\n${insert}0\nLINE\n8\n0\n10\n0\n20\n0\n11\n100\n21\n0\n0\nENDBLK\n`;
    expect(await saidOf("a.dxf", drawing(insert, "9\n$INSUNITS\n70\n6\n", block), answers)).toEqual([
      "readers/too-much-drawn",
    ]);
  });

  test("names of the language and marks of a page are names like others", async () => {
    const text = drawing(
      "0\nINSERT\n8\n__proto__\n2\nconstructor\n66\n1\n10\n1\n20\n1\n0\nATTRIB\n8\n0\n10\n0\n20\n0\n1\n<img src=x onerror=alert(1)>\n2\n__proto__\n0\nSEQEND\n8\n0\n",
    );
    const { features } = await found("a.dxf", text, answers);
    expect(features[0]).toMatchObject({ layer: "__proto__" });
    expect(features[0]?.values).toEqual([
      ["entity", "INSERT"],
      ["block", "constructor"],
      ["__proto__", "<img src=x onerror=alert(1)>"],
    ]);
  });

  test("letters that are not of the stated page are told", async () => {
    const header = "9\n$ACADVER\n1\nAC1021\n9\n$INSUNITS\n70\n6\n";
    const text = drawing(pointAt(1, 1).replace("TREES", "S\u00fcd"), header);
    const bytes = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    const { features } = await found("a.dxf", bytes, answers);
    expect(features[0]?.layer).toBe("Süd");
    expect(await saidOf("a.dxf", bytes, answers)).toEqual(["readers/letters-differ"]);
  });

  test("a drawing whose lines end as on other machines is read alike", async () => {
    expect((await found("a.dxf", whole.replaceAll("\n", "\r\n"), answers)).features.length).toBe(1);
    expect((await found("a", `999\r\nmade by hand\r\n${whole}`, answers)).format).toBe("DXF");
  });

  test("reading is stopped when it is asked to", async () => {
    const stop = new AbortController();
    const text = drawing(pointAt(1, 1).repeat(20_000));
    const outcome = await dxfReader.read(fileOf("a.dxf", text), noAnswers, {
      signal: stop.signal,
      progress: () => stop.abort(),
    });
    expect(outcome.findings.map(({ code }) => code)).toEqual(["readers/stopped"]);
  });
});

test("flat drawings have no heights, and a zero among heights is one", async () => {
  const answers = { system: local } as const;
  const height = async (...heights: readonly number[]) => {
    const { features } = await found(
      "a.dxf",
      drawing(heights.map((z) => pointAt(1, 1, `30\n${z}\n`)).join("")),
      answers,
    );
    return features.map((feature) => placeOf(feature)[2]);
  };
  expect(await height(0, 0)).toEqual([undefined, undefined]);
  expect(await height(0, 12.5)).toEqual([0, 12.5]);
});
