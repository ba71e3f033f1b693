import { gpx as byTogeojson } from "@tmcw/togeojson";
import { DOMParser } from "@xmldom/xmldom";
import { describe, expect, test } from "vitest";
import { gpx } from "../../../../src/core/exchange/formats/gpx.ts";
import { type LayerFeature, layerKinds } from "../../../../src/core/exchange/layers/layer.ts";
import { namesOf } from "../../../../src/core/exchange/naming.ts";
import { createPlanner } from "../../../../src/core/planner.ts";
import { createHandOverJob, createLayer, createLayerFeature, placeOf } from "../../../support/create-hand-over-job.ts";
import { createTrenchPlan } from "../../../support/create-trench-plan.ts";
import { bytesOf, handedOver, textsOf } from "../../../support/handed-over.ts";
import { has, inFolder, said } from "../../../support/outside.ts";
import { readSample } from "../../../support/sample-plans.ts";
import { found, survived } from "../../../support/survived.ts";
import { mapLayers, names } from "./map-layers.ts";
import { textOf, writtenBy } from "./written-by.ts";

const most_m = 0.002;
const plan = createTrenchPlan((station_m) => 100 + station_m / 50);
const brook = createPlanner().plan(readSample("brook-and-two-blocks"));
const things = layerKinds.filter((kind) => kind !== "vines" && kind !== "stakes");
const grammar = "tests/fixtures/exchange/map/gpx.rng";
const job = createHandOverJob(mapLayers());
const text = textOf(gpx, job);

const countOf = (of: string, element: string) => of.split(`<${element}`).length - 1;
const namesIn = (of: string) => [...of.matchAll(/<(?:wpt|trk)\b[^p]*?<name>(.*?)<\/name>/g)].map(([, name]) => name);

describe("what a GPX holds", () => {
  test("points are waypoints, lines tracks, outlines tracks with a closed segment a ring; waypoints come first", () => {
    expect([countOf(text, "wpt "), countOf(text, "trk>"), countOf(text, "trkseg>"), countOf(text, "rte")]).toEqual([
      2, 3, 5, 0,
    ]);
    expect(text.lastIndexOf("<wpt")).toBeLessThan(text.indexOf("<trk>"));
    const [, ring = ""] =
      /<trkseg>(.*?)<\/trkseg>/.exec(text.slice(text.indexOf("Söhne &amp; Töchter &lt;oben&gt;</name><desc>"))) ?? [];
    const points = [...ring.matchAll(/lat="(.*?)" lon="(.*?)"/g)].map(([, lat, lon]) => `${lat} ${lon}`);
    expect(points).toHaveLength(5);
    expect(points.at(-1)).toBe(points[0]);
  });

  test("that outlines are no areas is told", () => {
    const { findings } = gpx.write(job);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["exchange/outlines-as-tracks", "note"]]);
    expect(findings[0]?.message.join("")).toContain("2 outlines");
  });

  test("8 decimals without an exponent, heights where they are known, 0 too", () => {
    expect(text).toContain(`<wpt lat="38.29201235" lon="-122.71651235"><ele>0</ele><name>=1+1</name>`);
    expect(text).toContain(`<wpt lat="-0.00000001" lon="0.00000001"><name>`);
    expect(text).toContain(`<trkpt lat="38.29215679" lon="-122.71641235"><ele>101.1235</ele></trkpt>`);
  });

  test("values and the id stand in its description, the kind as its type", () => {
    expect(text).toContain("<desc>role parcel; length_m 12.345; rows 0; sketch; id parcel-1</desc><type>mark</type>");
  });

  test("the antimeridian is west in GPX, whose longitudes end below 180", () => {
    const layer = createLayer({ kind: "marks", shape: "point" }, [
      createLayerFeature("mark-1", "a", { shape: "point", place: placeOf(179.999999999, -17) }),
    ]);
    expect(textOf(gpx, createHandOverJob([layer]))).toContain(`lat="-17" lon="-180"`);
  });
});

describe("names that receivers can show", () => {
  test("as usual they have 10 letters at most, plain ones, all different", () => {
    const handed = handedOver(brook, { as: "gpx", of: ["posts", "vines"] });
    const called = namesIn(Object.values(textsOf(handed)).join(""));
    expect(called).toHaveLength(5970 + 1623);
    expect(new Set(called).size).toBe(called.length);
    for (const name of called) expect(name).toMatch(/^[ -~]{1,10}$/);
  });

  test("shorter where that is chosen, still all different, and what was changed is told", () => {
    const handed = handedOver(brook, { as: "gpx", of: ["posts"], nameLength: 6 });
    const called = namesIn(Object.values(textsOf(handed)).join(""));
    expect(new Set(called.map((name) => name?.toLowerCase())).size).toBe(1623);
    for (const name of called) expect(name?.length).toBeLessThanOrEqual(6);
  });
});

describe("files for receivers that hold few points", () => {
  const split = handedOver(brook, { as: "gpx", of: ["rows", "posts"], pointsAFile: 500 });
  const texts = textsOf(split);

  test("no file has more points than that, and together they have everything once", () => {
    const counts = Object.values(texts).map((each) => countOf(each, "wpt ") + countOf(each, "trkpt"));
    expect(Math.max(...counts)).toBeLessThanOrEqual(500);
    expect(counts.reduce((sum, each) => sum + each, 0)).toBe(1623 + 2 * 110);
    const whole = handedOver(brook, { as: "gpx", of: ["rows", "posts"] });
    expect(Object.values(texts).flatMap(namesIn)).toEqual(namesIn(Object.values(textsOf(whole))[0] ?? ""));
  });

  test("they are numbered, and say which of how many they are", () => {
    expect(Object.keys(texts)).toEqual(["plan-1.gpx", "plan-2.gpx", "plan-3.gpx", "plan-4.gpx"]);
    expect(texts["plan-2.gpx"]).toContain("plan-2.gpx: file 2 of 4");
  });

  test("a row is not torn apart", () => {
    const homes = new Map<string, Set<string>>();
    for (const [file, each] of Object.entries(texts)) {
      for (const [, row = ""] of each.matchAll(/<wpt .*?(block \w+; row \w+);/g)) {
        homes.set(row, (homes.get(row) ?? new Set()).add(file));
      }
    }
    expect(homes.size).toBe(110);
    for (const files of homes.values()) expect(files.size).toBe(1);
  });

  test("a row with more points than a file takes is split, an outline with more is told", () => {
    const point = (i: number): LayerFeature =>
      createLayerFeature(`vine-${i}`, null, { shape: "point", place: placeOf(1 + i / 1e6, 45) }, [], {
        row: "1",
        number: i,
      });
    const vines = createLayer(
      { kind: "vines", shape: "point" },
      Array.from({ length: 25 }, (_, i) => point(i)),
    );
    const layers = [...mapLayers().slice(0, 1), vines];
    const small = createHandOverJob(layers, {
      names: namesOf(layers, { pattern: "{id}", longest: null, letters: "any" }),
    });
    const few = { ...small, choice: { ...small.choice, pointsAFile: 9 } };
    const { findings } = gpx.write(few);
    expect(findings.map(({ code }) => code)).toEqual([
      "exchange/outlines-as-tracks",
      "exchange/more-points-than-a-file",
    ]);
    expect(findings[1]?.message.join("")).toContain(`${names.parcel} and ${names.two}`);
    const counts = Object.values(writtenBy(gpx, few)).map((each) => [countOf(each, "wpt "), countOf(each, "trkpt")]);
    expect(counts).toEqual([
      [9, 0],
      [9, 0],
      [7, 0],
      [0, 10],
      [0, 10],
    ]);
  });

  test("files may be asked for in any order, and again", () => {
    const again = [...split.files].reverse();
    expect(textsOf({ ...split, files: again })).toEqual(texts);
  });
});

test("everything of a plan comes back through our own reader, within 2 mm", async () => {
  const points = handedOver(plan, { as: "gpx", of: things.filter((kind) => kind !== "parcels" && kind !== "blocks") });
  const back = await survived(points, false);
  expect(back.handed).toBeGreaterThan(300);
  expect([back.lost, back.back]).toEqual([[], back.handed]);
  expect(back.worst_m).toBeLessThan(most_m);
  expect(back.worstHeight_m).toBeLessThan(most_m);
});

test("an outline with its hole comes back as a closed line of two pieces", async () => {
  const { features } = await found("plan.gpx", text);
  const parcel = features.find(({ name }) => name === names.parcel);
  expect(parcel?.geometry.type).toBe("MultiLineString");
  if (parcel?.geometry.type !== "MultiLineString") return;
  expect(parcel.geometry.coordinates.map((ring) => [ring.length, ring[0]?.join() === ring.at(-1)?.join()])).toEqual([
    [5, true],
    [5, true],
  ]);
});

test("another reader of GPX finds every feature, with its name and corners", () => {
  const { features } = byTogeojson(new DOMParser().parseFromString(text, "text/xml"));
  // It puts tracks before waypoints.
  expect(features.map(({ properties }) => properties?.name)).toEqual([
    names.row,
    names.parcel,
    names.two,
    names.mark,
    "Gate pin",
  ]);
  expect(features[0]?.geometry).toEqual({
    type: "LineString",
    coordinates: [
      [-122.71641235, 38.29215679, 101.1235],
      [-122.71411235, 38.29215679, 99],
    ],
  });
});

describe.skipIf(!has("xmllint"))("xmllint", () => {
  test("order, numbers and ranges are those of GPX 1.1, of every file", () => {
    const files = { ...textsOf(handedOver(plan, { as: "gpx", of: things, pointsAFile: 100 })), "job.gpx": text };
    expect(Object.keys(files).length).toBeGreaterThan(4);
    inFolder(files, (folder) => {
      const paths = Object.keys(files).map((name) => `${folder}/${name}`);
      expect(() => said("xmllint", ["--noout", "--nonet", "--relaxng", grammar, ...paths])).not.toThrow();
    });
  });

  test("the grammar would find another order, and a longitude of 180", () => {
    const wrong = [
      text.replace(/<name>(.*?)<\/name><desc>(.*?)<\/desc>/g, "<desc>$2</desc><name>$1</name>"),
      text.replace(`lon="-122.71651235"`, `lon="180"`),
    ];
    for (const each of wrong) {
      expect(each).not.toBe(text);
      inFolder({ "wrong.gpx": each }, (folder) => {
        expect(() => said("xmllint", ["--noout", "--nonet", "--relaxng", grammar, `${folder}/wrong.gpx`])).toThrow();
      });
    }
  });
});

describe.skipIf(!has("gpsbabel"))("GPSBabel", () => {
  test("reads every waypoint with its name and place", () => {
    const handed = handedOver(brook, { as: "gpx", of: ["posts"] });
    inFolder(bytesOf(handed), (folder) => {
      const [head = "", ...lines] = said("gpsbabel", [
        "-i",
        "gpx",
        "-f",
        `${folder}/posts.gpx`,
        "-o",
        "unicsv,prec=8",
        "-F",
        "-",
      ])
        .trim()
        .split("\n");
      expect(head).toContain("Latitude,Longitude,Name");
      const given = [...(handed.layers[0]?.features() ?? [])];
      expect(lines).toHaveLength(1623);
      for (const [i, feature] of given.entries()) {
        const [, lat, lon, name] = lines[i]?.split(",").map((cell) => cell.replaceAll('"', "")) ?? [];
        if (feature.geometry.shape !== "point") throw new Error("no point");
        const [lon_deg, lat_deg] = feature.geometry.place.at;
        expect(Math.abs(Number(lon) - lon_deg)).toBeLessThan(1.1e-8);
        expect(Math.abs(Number(lat) - lat_deg)).toBeLessThan(1.1e-8);
        expect(name).toBe(handed.names.of(feature));
      }
    });
  });
});

describe.skipIf(!has("ogrinfo") || !has("ogr2ogr"))("GDAL", () => {
  test("counts waypoints, tracks and their points", () => {
    inFolder({ "plan.gpx": text }, (folder) => {
      const told = said("ogrinfo", ["-ro", "-al", "-so", `${folder}/plan.gpx`]);
      for (const [layer, count] of [
        ["waypoints", 2],
        ["tracks", 3],
        ["track_points", 22],
        ["routes", 0],
      ] as const) {
        expect(told, layer).toMatch(
          new RegExp(`Layer name: ${layer}\\nGeometry: [^\\n]*\\nFeature Count: ${count}\\n`),
        );
      }
    });
  });

  test("gives back names, corners and heights to the last digit", () => {
    inFolder({ "plan.gpx": text }, (folder) => {
      const layer = (name: string) =>
        JSON.parse(
          said("ogr2ogr", [
            "-f",
            "GeoJSON",
            "--config",
            "GPX_ELE_AS_25D",
            "YES",
            "-lco",
            "COORDINATE_PRECISION=10",
            "/vsistdout/",
            `${folder}/plan.gpx`,
            name,
          ]),
        ).features;
      const tracks = layer("tracks");
      expect(tracks.map((each: { properties: { name: string } }) => each.properties.name)).toEqual([
        names.row,
        names.parcel,
        names.two,
      ]);
      expect(tracks[0].geometry.coordinates).toEqual([
        [
          [-122.71641235, 38.29215679, 101.1235],
          [-122.71411235, 38.29215679, 99],
        ],
      ]);
      expect(layer("waypoints").map((each: { properties: { name: string } }) => each.properties.name)).toEqual([
        names.mark,
        "Gate pin",
      ]);
    });
  });
});
