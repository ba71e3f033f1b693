import { kml as byTogeojson } from "@tmcw/togeojson";
import { DOMParser } from "@xmldom/xmldom";
import { unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { featureGeometry } from "../../../../src/core/exchange/feature-geometry.ts";
import { kml } from "../../../../src/core/exchange/formats/kml.ts";
import { layerKinds } from "../../../../src/core/exchange/layers/layer.ts";
import { createHandOverJob } from "../../../support/create-hand-over-job.ts";
import { createTrenchPlan } from "../../../support/create-trench-plan.ts";
import { bytesOf, handedOver, textsOf } from "../../../support/handed-over.ts";
import { has, inFolder, said } from "../../../support/outside.ts";
import { survived } from "../../../support/survived.ts";
import { mapLayers, names } from "./map-layers.ts";
import { textOf } from "./written-by.ts";

const most_m = 0.002;
const plan = createTrenchPlan((station_m) => 100 + station_m / 50);
const things = layerKinds.filter((kind) => kind !== "vines" && kind !== "stakes");
const grammar = "tests/fixtures/exchange/map/kml.rng";
const job = createHandOverJob(mapLayers());
const text = textOf(kml, job);

describe("what a KML holds", () => {
  test("a folder a layer, its style and the types of its columns; no space behind a comma", () => {
    expect([...text.matchAll(/<Folder><name>(\w+)</g)].map(([, name]) => name)).toEqual(["parcels", "rows", "marks"]);
    expect(text).toContain(`<Style id="style-rows">`);
    expect(text).toContain(`<SimpleField type="double" name="length_m"/>`);
    expect(text).toContain(
      "<coordinates>-122.71641235,38.29215679,101.1235 -122.71411235,38.29215679,99</coordinates>",
    );
    expect(text).toContain("<coordinates>0.00000001,-0.00000001</coordinates>");
  });

  test("datum, what is in it and what its heights count from stand in its description", () => {
    const [, description = ""] = /<description>([\s\S]*?)<\/description>/.exec(text) ?? [];
    expect(description).toContain("WGS 84");
    expect(description).toContain("plan.kml: 2 parcels, 1 row, 2 marks");
    expect(description).toContain("Heights");
    expect(text).toContain("<name>Marbach &amp; Söhne &lt;oben&gt;</name>");
  });

  test("an area of two parts is one placemark, a hole an inner boundary", () => {
    expect([...text.matchAll(/<Placemark>/g)]).toHaveLength(5);
    expect([...text.matchAll(/<MultiGeometry><Polygon>/g)]).toHaveLength(1);
    expect([...text.matchAll(/<innerBoundaryIs>/g)]).toHaveLength(1);
  });

  test("nothing to hand over is no file", () => {
    expect(kml.write(createHandOverJob([])).files).toEqual([]);
  });
});

for (const as of ["kml", "kmz"] as const) {
  test(`everything of a plan comes back through our own reader of ${as.toUpperCase()}, with its values, within 2 mm`, async () => {
    const back = await survived(handedOver(plan, { as, of: things }), true);
    expect(back.handed).toBeGreaterThan(300);
    expect(back.lost).toEqual([]);
    expect(back.changedValues).toEqual([]);
    expect(back.back).toBe(back.handed);
    expect(back.worst_m).toBeLessThan(most_m);
    expect(back.worstHeight_m).toBeLessThan(most_m);
  });
}

test("another reader of KML finds every feature, with its name, corners and values", () => {
  const { features } = byTogeojson(new DOMParser().parseFromString(text, "text/xml"));
  const given = job.layers.flatMap(({ features: of }) => [...of()]);
  expect(features.map(({ properties }) => properties?.name)).toEqual([
    names.parcel,
    names.two,
    names.row,
    names.mark,
    "Gate pin",
  ]);
  for (const [i, feature] of given.entries()) {
    const { geometry } = features[i] ?? {};
    const wished = featureGeometry(feature.geometry);
    if (geometry?.type === "GeometryCollection") {
      expect(wished.type === "MultiPolygon" && wished.coordinates).toEqual(
        geometry.geometries.map((each) => each.type === "Polygon" && each.coordinates),
      );
    } else expect(geometry).toEqual(wished);
  }
  expect(features[0]?.properties).toMatchObject({
    id: "parcel-1",
    role: "parcel",
    length_m: 12.345,
    rows: 0,
    sketch: true,
  });
});

test("a KMZ has its KML first, as doc.kml, and the same bytes every time", () => {
  const packed = () => Object.entries(bytesOf(handedOver(plan, { as: "kmz", of: ["rows"] })));
  const [[name, bytes] = ["", new Uint8Array()]] = packed();
  expect(name).toBe("rows.kmz");
  expect(packed()[0]?.[1]).toEqual(bytes);
  const inside = unzipSync(bytes);
  expect(Object.keys(inside)).toEqual(["doc.kml"]);
  const [unpacked = ""] = Object.values(textsOf(handedOver(plan, { as: "kml", of: ["rows"] })));
  expect(new TextDecoder().decode(inside["doc.kml"])).toBe(
    unpacked.replaceAll("rows.kml", "rows.kmz").replace("KML 2.2, for", "KMZ (KML 2.2, packed), for"),
  );
});

describe.skipIf(!has("xmllint"))("xmllint", () => {
  test("order, types and numbers are those of KML 2.2 (OGC 07-147r2)", () => {
    const all = textsOf(handedOver(plan, { as: "kml", of: things }));
    inFolder({ "plan.kml": text, "all.kml": Object.values(all)[0] ?? "" }, (folder) => {
      for (const name of ["plan.kml", "all.kml"]) {
        expect(() => said("xmllint", ["--noout", "--nonet", "--relaxng", grammar, `${folder}/${name}`])).not.toThrow();
      }
    });
  });

  test("the grammar would find elements in another order and spaces in places", () => {
    const wrong = [
      text.replace(/<name>(.*?)<\/name><styleUrl>(.*?)<\/styleUrl>/, "<styleUrl>$2</styleUrl><name>$1</name>"),
      text.replace(/,38\./, ", 38."),
    ];
    for (const each of wrong) {
      expect(each).not.toBe(text);
      inFolder({ "wrong.kml": each }, (folder) => {
        expect(() => said("xmllint", ["--noout", "--nonet", "--relaxng", grammar, `${folder}/wrong.kml`])).toThrow();
      });
    }
  });
});

describe.skipIf(!has("ogrinfo") || !has("ogr2ogr"))("GDAL", () => {
  test("sees a layer a folder, with every feature, in KML and KMZ", () => {
    for (const as of ["kml", "kmz"] as const) {
      const handed = handedOver(plan, { as, of: things });
      inFolder(bytesOf(handed), (folder) => {
        const told = said("ogrinfo", ["-ro", "-al", "-so", `${folder}/plan.${as}`]);
        for (const { kind, count } of handed.layers) {
          expect(told, kind).toMatch(
            new RegExp(`Layer name: ${kind}\\nGeometry: [^\\n]*\\nFeature Count: ${count}\\n`),
          );
        }
      });
    }
  });

  test("gives back every corner to the last digit, every name, and values by their type", () => {
    inFolder({ "plan.kml": text }, (folder) => {
      for (const layer of job.layers) {
        const args = [
          "-f",
          "GeoJSON",
          "-lco",
          "RFC7946=YES",
          "-lco",
          "COORDINATE_PRECISION=10",
          "/vsistdout/",
          `${folder}/plan.kml`,
          layer.kind,
        ];
        const { features } = JSON.parse(said("ogr2ogr", args));
        const given = [...layer.features()];
        expect(features.map((feature: { geometry: unknown }) => feature.geometry)).toEqual(
          given.map(({ geometry }) => featureGeometry(geometry)),
        );
        expect(features.map((feature: { properties: { Name: string } }) => feature.properties.Name)).toEqual(
          given.map((feature) => job.names.of(feature)),
        );
      }
      const { features } = JSON.parse(
        said("ogr2ogr", ["-f", "GeoJSON", "/vsistdout/", `${folder}/plan.kml`, "parcels"]),
      );
      expect(features[0].properties).toMatchObject({ role: "parcel", length_m: 12.345, rows: 0, sketch: 1 });
    });
  });
});
