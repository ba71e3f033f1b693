import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { createPlanner } from "../../src/core/index.ts";
import { createFeature, projectIn } from "../support/project-files.ts";
import { createFolder, createParcelText, say } from "./create-terminal.ts";

const heights = (name: string) => fileURLToPath(new URL(`../fixtures/heights/${name}`, import.meta.url));

/** A parcel of 35 by 22 m in the middle of utm.tif, rows short enough for it; invented. */
function createProjectText(): string {
  const [lon, lat] = [-122.302025, 38.288267];
  const ring = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
    [-1, -1],
  ].map(([east = 0, north = 0]) => [lon + 0.0002 * east, lat + 0.0001 * north]);
  const parcel = createFeature("home", { role: "parcel" }, { type: "Polygon", coordinates: [ring] });
  const settings = { rows: { headland: 1, minRow: 4 }, ground: { setback: 1 } };
  return JSON.stringify({ type: "FeatureCollection", features: [parcel], tautrow: { version: 1, ...settings } });
}

describe("tautrow heights", () => {
  test("takes a track with heights in without asking for a unit", async () => {
    const points = [
      [-122.3021, 38.2882, 100],
      [-122.3019, 38.2882, 101],
      [-122.302, 38.2884, 103],
    ].map(([lon, lat, height]) => `<trkpt lat="${lat}" lon="${lon}"><ele>${height}</ele></trkpt>`);
    const gpx = `<gpx version="1.1"><trk><trkseg>${points.join("")}</trkseg></trk></gpx>`;
    const folder = createFolder({ "hill.geojson": createProjectText(), "walk.gpx": gpx, "none.gpx": "<gpx/>" });
    const said = await say(["heights", "hill.geojson", "walk.gpx", "-o", "out.geojson"], { folder });
    expect(said).toMatchObject({ code: 0, out: "", notes: "Took in 3 heights along a track. Wrote out.geojson.\n" });
    const project = projectIn(readFileSync(join(folder, "out.geojson"), "utf8"));
    expect(project.spotHeights.map(({ height_m }) => height_m)).toEqual([100, 101, 103]);
    const again = await say(["heights", "out.geojson", "walk.gpx"], { folder });
    expect(projectIn(again.out).spotHeights).toEqual(project.spotHeights);
    const none = await say(["heights", "hill.geojson", "none.gpx"], { folder });
    expect(none.code).toBe(1);
    expect(none.notes).toContain("none.gpx holds no track with heights");
  });

  test("writes the project with the heights around its parcels, and tells what was taken in", async () => {
    const folder = createFolder({ "hill.geojson": createProjectText() });
    const said = await say(["heights", "hill.geojson", heights("utm.tif"), "--unit", "m", "-o", "out.geojson"], {
      folder,
    });
    expect(said).toMatchObject({ code: 0, out: "" });
    expect(said.notes).toMatch(
      /Took in \d+ × \d+ heights, 1 m apart, from 1\d\d\S* m to 1\d\d\S* m\. Wrote out\.geojson\.\n$/,
    );
    // The file is smaller than the ground that heights are wanted of.
    expect(said.notes).toContain("has no heights on");
    const project = projectIn(readFileSync(join(folder, "out.geojson"), "utf8"));
    expect(project.heightGrids.map(({ key, name }) => [key, name])).toEqual([["heights-utm", "utm.tif"]]);
    const { rows } = createPlanner().plan(project);
    expect(rows?.rows.length).toBeGreaterThan(3);
    for (const row of rows?.rows ?? []) expect(row.groundLength_m).toBeGreaterThan(row.length_m);
  });

  test("without --out it writes to standard output; a file read again takes the place of its earlier heights", async () => {
    const folder = createFolder({ "hill.geojson": createProjectText() });
    const once = await say(["heights", "hill.geojson", heights("feet.tif").replace("feet", "utm"), "--unit=ft"], {
      folder,
    });
    const again = await say(["heights", "-", heights("utm.tif"), "--unit=m"], { folder, input: once.out });
    const [feet, metres] = [projectIn(once.out), projectIn(again.out)];
    expect([feet.heightGrids.length, metres.heightGrids.length]).toEqual([1, 1]);
    const middle = ({ heightGrids: [grid] }: typeof feet): number => {
      const { rows = 0, columns = 0, height_m = [] } = grid ?? {};
      return Number(height_m[Math.floor(rows / 2) * columns + Math.floor(columns / 2)]);
    };
    expect(middle(metres) / middle(feet)).toBeCloseTo(1 / 0.3048, 3);
  });

  test("without --unit it asks, and says what the file says of it", async () => {
    const folder = createFolder({ "hill.geojson": createProjectText() });
    const { code, notes } = await say(["heights", "hill.geojson", heights("utm.tif")], { folder });
    expect(code).toBe(2);
    expect(notes).toBe(
      "State what the heights in utm.tif are counted in: --unit m, --unit ft or --unit us-ft (US survey feet). The file does not say.\n",
    );
    const wrong = await say(["heights", "hill.geojson", heights("utm.tif"), "--unit", "yards"], { folder });
    expect(wrong.notes).toContain('"yards" is none of them');
  });

  test("a system that is not known is asked for with the words to give it", async () => {
    const folder = createFolder({ "hill.geojson": createProjectText() });
    const asked = await say(["heights", "hill.geojson", heights("british.tif"), "--unit", "m"], { folder });
    expect(asked.code).toBe(1);
    expect(asked.notes).toContain("EPSG 27700");
    const stated = await say(
      ["heights", "hill.geojson", heights("british.tif"), "--unit", "m", "--crs", "EPSG:32610"],
      { folder },
    );
    // Taken for UTM these numbers lie far away.
    expect(stated.code).toBe(1);
    expect(stated.notes).toContain("has no heights on this ground");
  });

  test("progress is only for a person who looks", async () => {
    const folder = createFolder({ "hill.geojson": createProjectText() });
    const lines: string[] = [];
    const args = ["heights", "hill.geojson", heights("utm.tif"), "--unit", "m"];
    const seen = await say(args, { folder, progress: (line) => lines.push(line) });
    expect(lines.at(0)).toBe("Reading utm.tif: 0 %");
    expect(lines.slice(-2)).toEqual(["Reading utm.tif: 100 %", ""]);
    expect(seen.notes).not.toContain("%\r");
  });

  test.each([
    [["heights"], 2, "Give a project and a GeoTIFF"],
    [["heights", "p.geojson"], 2, "Give a project and a GeoTIFF"],
    [["heights", "p.geojson", "nowhere.tif", "--unit", "m"], 2, "nowhere.tif does not exist"],
    [["heights", "p.geojson", "p.geojson", "--unit", "m"], 1, "is not a GeoTIFF file"],
    [["heights", "empty.geojson", "p.geojson", "--unit", "m"], 1, "empty"],
    [["heights", "p.geojson", "p.geojson", "--bearing", "3"], 2, "--bearing"],
  ])("%j gives %d and says why", async (args, code, says) => {
    const folder = createFolder({ "p.geojson": createParcelText(), "empty.geojson": "" });
    const said = await say(args, { folder });
    expect([said.code, said.out]).toEqual([code, ""]);
    expect(said.notes).toContain(says);
  });
});
