import { describe, expect, it, test } from "vitest";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { withFeature, withoutFeature, withSetting } from "../../../src/core/project/edits.ts";
import { heightBox } from "../../../src/core/project/height-box.ts";
import { heightGridFeature } from "../../../src/core/project/height-grid-feature.ts";
import { type Json, type JsonObject, mostGridHeights } from "../../../src/core/project/project.ts";
import { serializeProject } from "../../../src/core/project/serialize.ts";
import { text } from "../../../src/core/units.ts";
import { codesButDefaults, createFeature, createFile, field, point, projectIn } from "../../support/project-files.ts";

const outline: Json = { type: "Polygon", coordinates: [field.map((place) => [...place])] };
const sound: JsonObject = {
  columns: 3,
  rows: 2,
  cell: 10,
  origin: [-76.8994, 42.6004],
  heights: [100, 200, 0, null, -50, 7],
};

const withGrid = (grid: Json) =>
  projectIn(createFile(undefined, [createFeature("survey", { role: "elevation", name: "drone", grid }, outline)]));

describe("a grid of heights in a project's file", () => {
  it("is read in metres, null as not known", () => {
    const { heightGrids, findings } = withGrid(sound);
    expect(codesButDefaults(findings)).toEqual([]);
    expect(heightGrids.length).toBe(1);
    expect(heightGrids[0]).toMatchObject({ key: "survey", name: "drone", columns: 3, rows: 2, cell_m: 10 });
    expect(Array.from(heightGrids[0]?.height_m ?? [])).toEqual([1, 2, 0, NaN, -0.5, 0.07]);
  });

  test.each<[string, Json, string, string]>([
    ["no object", 7, "project/bad-setting", "columns, rows"],
    ["no rows", { ...sound, rows: null }, "project/bad-setting", "grid"],
    ["half a column", { ...sound, columns: 2.5 }, "project/bad-setting", "whole number"],
    ["one column", { ...sound, columns: 1 }, "project/bad-setting", "whole number"],
    ["a cell of nothing", { ...sound, cell: 0 }, "project/setting-out-of-range", "grid.cell"],
    ["an origin off the globe", { ...sound, origin: [200, 42] }, "project/bad-setting", "longitude, latitude"],
    [
      "a height too few",
      { ...sound, heights: [1, 2, 3, 4, 5] },
      "project/bad-setting",
      "5 heights in place of 3 × 2 = 6",
    ],
    ["heights that are no list", { ...sound, heights: "1 2 3" }, "project/bad-setting", "list of whole centimetres"],
    ["a text among the heights", { ...sound, heights: [1, 2, "3", 4, 5, 6] }, "project/bad-setting", "grid.heights.2"],
    ["half a centimetre", { ...sound, heights: [1, 2, 3, 4.5, 5, 6] }, "project/bad-setting", "whole centimetres"],
    ["a height above all mountains", { ...sound, heights: [1, 2, 3, 4, 5, 1e6] }, "project/bad-setting", "500000"],
    ["too many heights", { ...sound, columns: 300, rows: 300 }, "project/bad-setting", String(mostGridHeights)],
  ])("with %s is not used, and it is said", (_, grid, code, says) => {
    const { heightGrids, findings } = withGrid(grid);
    expect(heightGrids).toEqual([]);
    expect(codesButDefaults(findings)).toEqual([code]);
    const found = findings.find((finding) => finding.code === code);
    expect(found?.feature).toBe("survey");
    expect(text(found?.message ?? [], "metric")).toContain(says);
  });

  it("needs an outline, and an outline needs a grid", () => {
    const bare = projectIn(createFile(undefined, [createFeature("survey", { role: "elevation" }, outline)]));
    expect(codesButDefaults(bare.findings)).toEqual(["project/wrong-geometry"]);
    const dot = projectIn(
      createFile(undefined, [createFeature("survey", { role: "elevation", grid: sound }, point(-76.9, 42.6))]),
    );
    expect(dot.heightGrids).toEqual([]);
    expect(codesButDefaults(dot.findings)).toEqual(["project/height-missing"]);
  });

  it("comes back from the file as it went in, to half a centimetre, and is taken out again", () => {
    const height_m = Float64Array.from({ length: 12 }, (_, i) => (i === 5 ? NaN : 100 + 0.123 * i));
    const grid = { origin: lonLat(-76.8994, 42.6004), columns: 4, rows: 3, cell_m: 2.5, height_m };
    const before = projectIn(createFile());
    const project = withFeature(before, heightGridFeature(grid, "survey", "drone"));
    const read = projectIn(serializeProject(project)).heightGrids[0];
    expect(read).toMatchObject({ key: "survey", name: "drone", origin: grid.origin, columns: 4, rows: 3, cell_m: 2.5 });
    for (const [i, height] of height_m.entries()) {
      if (i === 5) expect(read?.height_m[i]).toBeNaN();
      else expect(Math.abs(Number(read?.height_m[i]) - height)).toBeLessThan(0.005001);
    }
    expect(withoutFeature(project, "survey").heightGrids).toEqual([]);
  });

  it("stays the same object while other things change: it is large", () => {
    const project = withGrid(sound);
    const changed = withSetting(project, "rows.rowSpacing", 3);
    expect(changed.ok && changed.value.heightGrids).toBe(project.heightGrids);
    const moved = withFeature(project, {
      type: "Feature",
      id: "home",
      properties: { role: "parcel" },
      geometry: { type: "Polygon", coordinates: [field.map(([lon, lat]) => [lon + (lat > 42.6 ? 0.001 : 0), lat])] },
    });
    expect(moved.heightGrids[0]?.height_m).toBe(project.heightGrids[0]?.height_m);
    expect(moved.heightGrids).toBe(project.heightGrids);
  });
});

describe("heights that come with a walked track", () => {
  const line = (...places: readonly (readonly number[])[]): Json => ({ type: "LineString", coordinates: places });
  const walked = line([-76.9, 42.6, 100], [-76.899, 42.6, 101], [-76.899, 42.6006, 0], [-76.8995, 42.6007]);

  it("are spot heights, also of several lines; positions without one are said", () => {
    const several: Json = {
      type: "MultiLineString",
      coordinates: [
        [
          [-76.9, 42.6, 5],
          [-76.899, 42.6, 6],
        ],
        [
          [-76.9, 42.6005, 7],
          [-76.899, 42.6005, 8],
        ],
      ],
    };
    const { spotHeights, findings } = projectIn(
      createFile(undefined, [
        createFeature("walk", { role: "elevation" }, walked),
        createFeature("laps", { role: "elevation" }, several),
      ]),
    );
    expect(spotHeights.map(({ key, height_m, isOnLine }) => [key, height_m, isOnLine])).toEqual([
      ["walk", 100, true],
      ["walk", 101, true],
      ["walk", 0, true],
      ["laps", 5, true],
      ["laps", 6, true],
      ["laps", 7, true],
      ["laps", 8, true],
    ]);
    expect(codesButDefaults(findings)).toEqual([
      "project/height-missing",
      "project/track-heights",
      "project/track-heights",
    ]);
  });
});

describe("the ground that heights are wanted of", () => {
  it("lies around parcels, sources and main lines with 60 m to spare", () => {
    const box = heightBox(
      projectIn(createFile(undefined, [createFeature("well", { role: "source" }, point(-76.8975, 42.6004))])),
    );
    const metres = (degrees: number) => degrees * 111_320;
    expect(metres(42.6 - Number(box?.south))).toBeCloseTo(60, 3);
    expect(metres(Number(box?.north) - 42.6008)).toBeCloseTo(60, 3);
    expect(metres(Number(box?.east) + 76.8975) * Math.cos((42.6004 * Math.PI) / 180)).toBeCloseTo(60, 3);
    expect(metres(-76.9 - Number(box?.west)) * Math.cos((42.6004 * Math.PI) / 180)).toBeCloseTo(60, 3);
  });

  it("is none without any of them", () => {
    expect(heightBox(projectIn(JSON.stringify({ type: "FeatureCollection", features: [] })))).toBeNull();
  });
});
