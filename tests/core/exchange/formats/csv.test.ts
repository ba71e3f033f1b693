import { describe, expect, test } from "vitest";
import { csvTables } from "../../../../src/core/exchange/formats/csv.ts";
import { createHandOverJob, createLayer, createLayerFeature, placeOf } from "../../../support/create-hand-over-job.ts";
import { createTrenchPlan } from "../../../support/create-trench-plan.ts";
import { handedOver, textsOf } from "../../../support/handed-over.ts";
import { has, inFolder, said } from "../../../support/outside.ts";

const plan = createTrenchPlan((station_m) => 100 + station_m / 50);

const linesOf = (text: string | undefined) => (text ?? "").trimEnd().split("\r\n");

describe("what stands in a table", () => {
  test("points have a line each: name, place to 8 decimals, height, then what they say (RFC 4180: CRLF, one line of heads)", () => {
    const text = textsOf(handedOver(plan, { as: "csv", of: ["posts"] }))["posts.csv"];
    const [head, first, ...others] = linesOf(text);
    expect(head).toBe("name,longitude,latitude,height_m,role,block,row,number,station_m");
    expect(first).toMatch(/^post-1-1,-76\.\d{8},42\.\d{8},\d+\.\d{3},end-post,1,1,1,0$/);
    expect(others).toHaveLength(307);
    expect(text?.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  });

  test("rows have a line each with both ends, in a chosen system with its unit in the heads", () => {
    const us = textsOf(handedOver(plan, { as: "csv", of: ["rows"], system: "EPSG:32618" }))["rows.csv"];
    expect(linesOf(us)[0]).toMatch(
      /^name,startEasting_m,startNorthing_m,startHeight_m,endEasting_m,endNorthing_m,endHeight_m,role,block,row,length_m,/,
    );
    const local = textsOf(handedOver(plan, { as: "csv", of: ["rows"], system: "local", unit: "us-ft" }))["rows.csv"];
    expect(linesOf(local)[0]).toMatch(/^name,startEast_usft,startNorth_usft,startHeight_m,/);
  });

  test("areas have a line a corner, with the number of the piece, of the ring and of the corner", () => {
    const square = (lon: number, size: number) =>
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ].map(([x = 0, y = 0]) => placeOf(lon + x * size, 38 + y * size));
    const area = createLayerFeature("parcel-a", "a", {
      shape: "area",
      polygons: [[square(-122, 0.01), square(-121.995, 0.001)], [square(-121, 0.01)]],
    });
    const job = createHandOverJob([createLayer({ kind: "parcels", shape: "area" }, [area])]);
    const [file] = csvTables.write(job).files;
    if (file?.content.kind !== "chunks") throw new Error("no file");
    const lines = linesOf([...file.content.chunks()].join(""));
    expect(lines[0]).toBe("name,part,ring,corner,longitude,latitude");
    expect(lines.slice(1).map((line) => line.split(",").slice(0, 4).join(" "))).toEqual(
      [1, 2, 3].flatMap((ring) =>
        [1, 2, 3, 4].map((corner) => `a ${ring < 3 ? 1 : 2} ${ring < 3 ? ring : 1} ${corner}`),
      ),
    );
  });

  test("a name that an office program would run has an apostrophe before it, numbers below 0 have none", () => {
    const marks = ["=1+1", "+1", "-1", "@x"].map((name) =>
      createLayerFeature(`mark-${name}`, name, { shape: "point", place: placeOf(-122, -38) }),
    );
    const job = createHandOverJob([createLayer({ kind: "marks", shape: "point" }, marks)]);
    const [file] = csvTables.write(job).files;
    if (file?.content.kind !== "chunks") throw new Error("no file");
    expect(linesOf([...file.content.chunks()].join("")).slice(1)).toEqual(
      ["'=1+1", "'+1", "'-1", "'@x"].map((name) => `${name},-122.00000000,-38.00000000`),
    );
  });

  test("pieces of a file have at most 500 lines, so that a page can do something in between", () => {
    const many = Array.from({ length: 1201 }, (_, i) =>
      createLayerFeature(`vine-${i}`, null, { shape: "point", place: placeOf(0, i / 1e5) }),
    );
    const [file] = csvTables.write(createHandOverJob([createLayer({ kind: "vines", shape: "point" }, many)])).files;
    if (file?.content.kind !== "chunks") throw new Error("no file");
    const counts = [...file.content.chunks()].map((chunk) => String(chunk).split("\r\n").length - 1);
    expect(counts).toEqual([501, 500, 201]);
  });
});

describe("the text beside it", () => {
  test("says the system with its code and scale, what heights count from, what columns mean and which names changed", () => {
    const about = textsOf(handedOver(plan, { as: "csv", of: ["rows", "posts"], system: "EPSG:32618" }))[
      "plan-about.txt"
    ];
    expect(about).toContain("rows.csv: 22 rows, a line each, with both ends\r\n");
    expect(about).toContain("posts.csv: 308 posts, a line each\r\n");
    expect(about).toContain("Easting and northing in metres, EPSG 32618,");
    // On UTM 1.9 degrees from its middle at this latitude: 0.9996 / cos of the way, about 0.99990 (Snyder 1987, formula 8-11).
    expect(about).toMatch(/Scale factor 0\.9998\d+ at longitude -76\.\d+, latitude 42\.\d+/);
    expect(about).toContain("counted from the same zero as the heights that were brought into the project");
    expect(about).toContain("  startEasting_m: east by the numbers of the system, at the start of the row\r\n");
    expect(about).toContain("  station_m: metres from the start of the row");
  });

  test("every column of every layer and list is told in words", () => {
    const of = [
      "rows",
      "posts",
      "pegs",
      "blocks",
      "parcels",
      "route",
      "stations",
      "fittings",
      "materials",
      "coils",
    ] as const;
    const about = textsOf(handedOver(plan, { as: "csv", of }))["plan-about.txt"] ?? "";
    const heads = Object.entries(textsOf(handedOver(plan, { as: "csv", of })))
      .filter(([name]) => name.endsWith(".csv"))
      .flatMap(([, text]) => linesOf(text)[0]?.split(",") ?? []);
    for (const head of new Set(heads)) expect(about).toContain(`\r\n  ${head}: `);
  });

  test("lists have no place and no text beside them", () => {
    expect(handedOver(plan, { as: "csv", of: ["materials"] }).files.map(({ name }) => name)).toEqual(["materials.csv"]);
  });

  test("of a walked outline it says that it is not for staking", () => {
    const walked = {
      ...plan,
      project: {
        ...plan.project,
        parcels: plan.project.parcels.map((each) => ({ ...each, outline: "walked" as const })),
      },
    };
    expect(textsOf(handedOver(walked, { as: "csv", of: ["rows"] }))["rows-about.txt"]).toContain("Not for staking\r\n");
    expect(textsOf(handedOver(plan, { as: "csv", of: ["rows"] }))["rows-about.txt"]).not.toContain("Not for staking");
  });

  test("names that changed stand in it as wished and as they are", () => {
    const mark = (id: string) => createLayerFeature(id, "pin", { shape: "point", place: placeOf(-122, 38) });
    const job = createHandOverJob([createLayer({ kind: "marks", shape: "point" }, [mark("mark-a"), mark("mark-b")])]);
    const about = csvTables.write(job).files[1];
    if (about?.content.kind !== "chunks") throw new Error("no text");
    expect([...about.content.chunks()].join("")).toContain("  pin -> pin-2\r\n");
  });
});

describe.skipIf(!has("ogr2ogr"))("GDAL reads it back, feature by feature", () => {
  test("every post has its name, its values and its place within 2 mm", () => {
    const handed = handedOver(plan, { as: "csv", of: ["posts"] });
    const [layer] = handed.layers;
    const read = inFolder(textsOf(handed), (folder) =>
      said("ogr2ogr", [
        ...["-f", "GeoJSON", "/vsistdout/", `${folder}/posts.csv`, "-lco", "COORDINATE_PRECISION=10"],
        ...["-oo", "X_POSSIBLE_NAMES=longitude", "-oo", "Y_POSSIBLE_NAMES=latitude", "-oo", "AUTODETECT_TYPE=YES"],
      ]),
    );
    const { features } = JSON.parse(read);
    expect(features).toHaveLength(layer?.count ?? 0);
    for (const [i, feature] of [...(layer?.features() ?? [])].entries()) {
      if (feature.geometry.shape !== "point") throw new Error("no point");
      const { at } = feature.geometry.place;
      const [lon, lat] = features[i].geometry.coordinates;
      // Half of the eighth decimal, which is half a millimetre.
      expect(Math.abs(lon - at[0])).toBeLessThan(6e-9);
      expect(Math.abs(lat - at[1])).toBeLessThan(6e-9);
      expect(features[i].properties.name).toBe(handed.names.of(feature));
      for (const [k, { name }] of (layer?.columns ?? []).entries()) {
        expect(String(features[i].properties[name])).toBe(String(feature.values[k]));
      }
    }
  });

  test("metres of UTM lead back to the same places by PROJ", () => {
    const handed = handedOver(plan, { as: "csv", of: ["pegs"], system: "EPSG:32618" });
    const read = inFolder(textsOf(handed), (folder) =>
      said("ogr2ogr", [
        ...["-f", "GeoJSON", "/vsistdout/", `${folder}/pegs.csv`, "-lco", "COORDINATE_PRECISION=10"],
        ...["-s_srs", "EPSG:32618", "-t_srs", "EPSG:4326"],
        ...["-oo", "X_POSSIBLE_NAMES=easting_m", "-oo", "Y_POSSIBLE_NAMES=northing_m"],
      ]),
    );
    const { features } = JSON.parse(read);
    const handedOut = [...(handed.layers[0]?.features() ?? [])];
    expect(features).toHaveLength(handedOut.length);
    for (const [i, { geometry }] of handedOut.entries()) {
      if (geometry.shape !== "point") throw new Error("no point");
      const [lon, lat] = features[i].geometry.coordinates;
      expect(Math.abs(lon - geometry.place.at[0])).toBeLessThan(1e-8);
      expect(Math.abs(lat - geometry.place.at[1])).toBeLessThan(1e-8);
    }
  });
});

describe.skipIf(!has("gpsbabel"))("GPSBabel reads it as a table of points", () => {
  test("every peg is a waypoint of its name", () => {
    const handed = handedOver(plan, { as: "csv", of: ["pegs"] });
    const gpx = inFolder(textsOf(handed), (folder) =>
      said("gpsbabel", ["-i", "unicsv", "-f", `${folder}/pegs.csv`, "-o", "gpx", "-F", "-"]),
    );
    const names = [...gpx.matchAll(/<name>([^<]*)<\/name>/g)].map(([, name]) => name);
    const wished = [...(handed.layers[0]?.features() ?? [])].map((feature) => handed.names.of(feature));
    expect(names).toEqual(wished);
    expect(gpx.match(/<wpt /g)).toHaveLength(wished.length);
  });
});
