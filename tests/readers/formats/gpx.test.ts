import { describe, expect, test } from "vitest";
import { readFile } from "../../../src/readers/read-file.ts";
import { noAnswers } from "../../../src/readers/reading.ts";
import { fileOf, found, saidOf } from "../../support/survived.ts";
import { apart_m, foundIn, givenFeatures, valueIn } from "./map-files.ts";

const head = `<?xml version="1.0"?><gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">`;
const gpx = (inside: string) => `${head}${inside}</gpx>`;

describe("files that GDAL and GPSBabel wrote from the same features", () => {
  for (const name of ["gdal-waypoints.gpx", "babel-waypoints.gpx", "babel-waypoints-1.0.gpx"]) {
    test(`${name}: points with their names, heights and values`, async () => {
      const { features, format } = await foundIn(name);
      const given = givenFeatures("Point");
      expect(format).toBe(name.includes("1.0") ? "GPX 1.0" : "GPX 1.1");
      expect(features.map((feature) => feature.name)).toEqual(given.map((feature) => feature.name));
      for (const [i, feature] of given.entries()) {
        const back = features[i];
        if (back === undefined) throw new Error("lost");
        expect(apart_m(back.geometry, feature.geometry), feature.name).toBeLessThan(0.002);
        expect(valueIn(back, "role")).toBe("mark");
        expect(back.layer).toBe("waypoints");
      }
      // A height of 0 is a height.
      expect(features.map(({ geometry }) => geometry.type === "Point" && geometry.coordinates[2])).toEqual([101.25, 0]);
    });
  }

  for (const [name, layer] of [
    ["gdal-tracks.gpx", "tracks"],
    ["gdal-routes.gpx", "routes"],
    ["babel-tracks.gpx", "tracks"],
  ] as const) {
    test(`${name}: lines with their names and corners`, async () => {
      const { features } = await foundIn(name);
      const given = givenFeatures("LineString");
      expect(features.map((feature) => feature.name)).toEqual(given.map((feature) => feature.name));
      for (const [i, feature] of given.entries()) {
        const back = features[i];
        if (back === undefined) throw new Error("lost");
        expect(apart_m(back.geometry, feature.geometry), feature.name).toBeLessThan(0.002);
        expect(back.layer).toBe(layer);
      }
    });
  }
});

test("a track of several segments is a line of several pieces, in their order", async () => {
  const point = (lon: number) =>
    `<trkpt lat="45" lon="${lon}"><ele>${lon}</ele><time>2026-01-01T00:00:00Z</time></trkpt>`;
  const { features } = await found(
    "a.gpx",
    gpx(
      `<trk><name>Fence</name><type>fence</type><trkseg>${point(1)}${point(2)}</trkseg><trkseg>${point(3)}${point(4)}</trkseg></trk>`,
    ),
  );
  expect(features).toEqual([
    {
      name: "Fence",
      layer: "tracks",
      geometry: {
        type: "MultiLineString",
        coordinates: [
          [
            [1, 45, 1],
            [2, 45, 2],
          ],
          [
            [3, 45, 3],
            [4, 45, 4],
          ],
        ],
      },
      values: [["type", "fence"]],
    },
  ]);
});

test("what has no place is counted and told: points off the globe, without numbers, segments of one point", async () => {
  const text = gpx(
    `<wpt lat="95" lon="1"><name>off</name></wpt><wpt lon="1"/><wpt lat="" lon="1"/><wpt lat="45" lon="1"><name>good</name></wpt>
     <trk><name>T</name><trkseg><trkpt lat="45" lon="1"/></trkseg></trk>
     <trk><name>U</name><trkseg><trkpt lat="45" lon="1"/></trkseg><trkseg><trkpt lat="45" lon="1"/><trkpt lat="45" lon="2"/></trkseg></trk>`,
  );
  const outcome = await readFile(fileOf("a.gpx", text), noAnswers);
  expect(outcome.ok && outcome.value.features.map(({ name }) => name)).toEqual(["good", "U"]);
  expect(outcome.findings.map(({ code }) => code)).toEqual(["readers/things-without-place"]);
  expect(outcome.findings[0]?.message.join("")).toContain("5 things");
});

test("a name with HTML, in CDATA or escaped, is the text that it is", async () => {
  const { features } = await found(
    "a.gpx",
    gpx(
      `<wpt lat="45" lon="1"><name><![CDATA[<script>alert(1)</script>]]></name></wpt><wpt lat="45" lon="1"><name>&lt;b&gt;</name></wpt>`,
    ),
  );
  expect(features.map(({ name }) => name)).toEqual(["<script>alert(1)</script>", "<b>"]);
});

test("letters by the encoding that the file states, and told where it is another", async () => {
  const text = gpx(`<wpt lat="45" lon="1"><name>Söhne</name></wpt>`);
  const latin = new Uint8Array(Buffer.from(text.replace("?>", ` encoding="ISO-8859-1"?>`), "latin1"));
  expect((await found("a.gpx", latin)).features[0]?.name).toBe("Söhne");
  expect(await saidOf("a.gpx", latin)).toEqual([]);
  const wide = new Uint8Array(Buffer.from(`\u{feff}${text}`, "utf16le"));
  expect((await found("a.gpx", wide)).features[0]?.name).toBe("Söhne");
  const wrong = new Uint8Array(Buffer.from(text, "latin1"));
  expect((await found("a.gpx", wrong)).features[0]?.name).toBe("Söhne");
  expect(await saidOf("a.gpx", wrong)).toEqual(["readers/letters-differ"]);
});

describe("refused in words", () => {
  const cases: readonly (readonly [told: string, text: string, code: string])[] = [
    ["cut off", gpx(`<wpt lat="45" lon="1"/>`).slice(0, -3), "readers/broken-file"],
    ["an encoding that nobody knows", `<?xml version="1.0" encoding="martian"?><gpx/>`, "readers/broken-file"],
    ["entities of its own", `<!DOCTYPE gpx [<!ENTITY a "b">]>${gpx("")}`, "readers/broken-file"],
    ["something else called .gpx", `<?xml version="1.0"?><html><gpx /></html>`, "readers/broken-file"],
    ["nothing in it", gpx(""), "readers/nothing-found"],
    ["an empty file", "", "readers/broken-file"],
    ["depth", gpx("<extensions>".repeat(10_000)), "readers/broken-file"],
  ];
  for (const [told, text, code] of cases) {
    test(told, async () => {
      expect(await saidOf("a.gpx", text)).toEqual([code]);
      await expect(found("a.gpx", text)).rejects.toThrow();
    });
  }
});

test("a reading that is stopped takes nothing", async () => {
  const text = gpx(`<wpt lat="45" lon="1"/>`.repeat(30_000));
  const shares: number[] = [];
  const stop = new AbortController();
  const outcome = await readFile(fileOf("a.gpx", text), noAnswers, {
    signal: stop.signal,
    progress: (share_ratio) => {
      shares.push(share_ratio);
      stop.abort();
    },
  });
  expect(outcome.ok).toBe(false);
  expect(outcome.findings.map(({ code }) => code)).toEqual(["readers/stopped"]);
  expect(shares).toHaveLength(1);
  expect(shares[0]).toBeGreaterThan(0.5);
});

test("more things than fit into memory are refused", async () => {
  expect(await saidOf("a.gpx", gpx(`<wpt lat="1" lon="1"/>`.repeat(400_001)))).toEqual(["readers/too-many-things"]);
});
