import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { createDrawing, type Place } from "../support/drawing-text.ts";
import { createFile, projectIn } from "../support/project-files.ts";
import { createFolder, say } from "./create-terminal.ts";

/* The places are invented, around the field of the test files. */
const outline: readonly Place[] = [
  [-76.9, 42.6],
  [-76.8988, 42.6],
  [-76.8988, 42.6008],
  [-76.9, 42.6008],
];
const pond: readonly Place[] = [
  [-76.8996, 42.6002],
  [-76.8995, 42.6002],
  [-76.8995, 42.6003],
];
const oak: Place = [-76.8994, 42.6004];
const degrees = ["--crs", "EPSG:4326"];

describe("tautrow import", () => {
  test("makes a project of a file, and says what became of each thing", async () => {
    const folder = createFolder({
      "north field.dxf": createDrawing([
        ["LOT", outline],
        ["TREES", [oak]],
        ["SKETCH", pond],
      ]),
    });
    const said = await say(["import", "north field.dxf", ...degrees, "--units", "us"], { folder });
    expect(said.code).toBe(0);
    const project = projectIn(said.out);
    expect([project.name, project.units, project.parcels.length, project.keepOuts.length]).toEqual([
      "north field",
      "us",
      1,
      1,
    ]);
    expect(said.notes).toContain("north field.dxf: DXF, read as ");
    expect(said.notes).toContain("  area of LOT: parcel, parcel-1\n");
    expect(said.notes).toContain("  point of TREES: obstacle, obstacle-1\n");
    expect(said.notes).toContain("  area of SKETCH: left out; no role was told (--role)\n");
    expect(said.notes).toContain("Took in 2 things.\n");
  });

  test("takes things into a project that is there, in roles by layer, name or shape, the last rule first", async () => {
    const folder = createFolder({
      "home.geojson": createFile({ version: 1, name: "Home" }),
      "trees.dxf": createDrawing([
        ["SURVEY", [oak]],
        ["SURVEY", [[-76.8991, 42.6001]]],
        ["SURVEY", pond],
      ]),
    });
    const roles = ["--role", "survey=none", "--role", "points=mark"];
    const said = await say(
      ["import", "trees.dxf", ...degrees, "--into", "home.geojson", ...roles, "-o", "out.geojson"],
      { folder },
    );
    expect(said).toMatchObject({ code: 0, out: "" });
    const project = projectIn(readFileSync(join(folder, "out.geojson"), "utf8"));
    expect([project.name, project.parcels.length, project.marks.length, project.keepOuts.length]).toEqual([
      "Home",
      1,
      2,
      0,
    ]);
    expect(said.notes).toContain("Took in 2 things. Wrote out.geojson.\n");
  });

  test("of many things alike only the number is said", async () => {
    const vines = Array.from({ length: 60 }, (_, i): Place => [-76.8998 + i * 1e-5, 42.6004]);
    const folder = createFolder({
      "home.geojson": createFile(),
      "rows.dxf": createDrawing([["TREES", [oak]], ...vines.map((at) => ["VINES", [at]] as const)]),
    });
    const said = await say(["import", "rows.dxf", ...degrees, "--into", "home.geojson"], { folder });
    expect(said.notes).toContain("  60 points of VINES: left out; a plan works it out by itself (--role takes it)\n");
    const taken = await say(["import", "rows.dxf", ...degrees, "--into", "home.geojson", "--role", "VINES=mark"], {
      folder,
    });
    expect(taken.notes).toContain("  60 points of VINES: mark, mark-1 to mark-60\n");
  });

  test("corners that come point by point are joined into an outline where that is asked for", async () => {
    const folder = createFolder({ "corners.dxf": createDrawing(outline.map((at) => ["CORNERS", [at]] as const)) });
    const said = await say(["import", "corners.dxf", ...degrees, "--join", "corners"], { folder });
    expect(said.code).toBe(0);
    expect(projectIn(said.out).parcels[0]?.polygons).toEqual([[outline]]);
    const none = await say(["import", "corners.dxf", ...degrees, "--join", "trees"], { folder });
    expect(none).toMatchObject({ code: 2, out: "" });
    expect(none.notes).toContain("--join trees: no file has from 3 to 500 points of that layer");
  });

  test("what the file leaves open is asked, and nothing is written until it is answered", async () => {
    const folder = createFolder({ "lot.dxf": createDrawing([["LOT", outline]]) });
    const said = await say(["import", "lot.dxf", "-o", "out.geojson"], { folder });
    expect(said).toMatchObject({ code: 1, out: "" });
    expect(said.notes).toContain("does not say which coordinate system its numbers are in");
    expect(said.notes).toContain("--crs EPSG:4326  Longitude and latitude");
    expect(said.notes).toMatch(/Nothing was written\.\n$/);
    expect(() => readFileSync(join(folder, "out.geojson"))).toThrow("ENOENT");
  });

  test("one file of several that cannot be read leaves everything as it was", async () => {
    const folder = createFolder({ "lot.dxf": createDrawing([["LOT", outline]]), "letter.pdf": "Dear neighbour" });
    const said = await say(["import", "lot.dxf", "letter.pdf", ...degrees], { folder });
    expect(said).toMatchObject({ code: 1, out: "" });
    expect(said.notes).toContain("letter.pdf is in no format that is read here");
    expect(said.notes).toContain("(readers/unknown-format)");
  });

  test("nothing that can be taken, or a project that is none, gives nothing", async () => {
    const folder = createFolder({ "lot.dxf": createDrawing([["LOT", outline]]), "bad.geojson": "Dear neighbour" });
    const none = await say(["import", "lot.dxf", ...degrees, "--role", "none"], { folder });
    expect(none).toMatchObject({ code: 1, out: "" });
    const bad = await say(["import", "lot.dxf", ...degrees, "--into", "bad.geojson"], { folder });
    expect(bad).toMatchObject({ code: 1, out: "" });
    expect(bad.notes).toContain("(project/not-json)");
  });

  test.each([
    [["import"], "Give a file of outlines, lines or points."],
    [["import", "lot.dxf", "--unit", "cubits"], "--unit takes m, ft or us-ft"],
    [["import", "lot.dxf", "--swap", "maybe"], "--swap takes yes or no"],
    [["import", "lot.dxf", "--role", "LOT=garden"], '"garden" is no role; there is parcel, block'],
    [["import", "lot.dxf", "--role", "Oak=obstacle"], "--role Oak=obstacle: nothing in the files is called so."],
    [["import", "none.dxf"], "none.dxf does not exist."],
  ])("%j is wrong usage", async (args, told) => {
    const folder = createFolder({ "lot.dxf": createDrawing([["LOT", outline]]) });
    const said = await say([...args, ...degrees], { folder });
    expect([said.code, said.out]).toEqual([2, ""]);
    expect(said.notes).toContain(told);
  });

  test("names that would move the cursor or break a line are said on one line", async () => {
    const folder = createFolder({ "lot.dxf": createDrawing([["LOT\u001b[2J", outline]]) });
    const said = await say(["import", "lot.dxf", ...degrees, "--role", "parcel"], { folder });
    expect(said.code).toBe(0);
    expect(said.notes).not.toContain("\u001b");
  });
});
