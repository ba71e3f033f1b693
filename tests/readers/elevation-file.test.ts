import { writeArrayBuffer } from "geotiff";
import { describe, expect, it, test } from "vitest";
import { heightReader } from "../../src/core/ground/elevation.ts";
import { gridGround } from "../../src/core/ground/grid-heights.ts";
import { lonLat, planePoint } from "../../src/core/plane/coordinate.ts";
import { createFrame, type Frame } from "../../src/core/plane/frame.ts";
import { parseProject } from "../../src/core/project/parse.ts";
import { mostGridHeights } from "../../src/core/project/project.ts";
import { text } from "../../src/core/units.ts";
import type { ElevationReading } from "../../src/readers/elevation-file.ts";
import { inspectElevationFile } from "../../src/readers/inspect-elevation-file.ts";
import type { LonLatBox } from "../../src/readers/lon-lat-box.ts";
import { readElevationFile } from "../../src/readers/read-elevation-file.ts";
import { codes, createFile } from "../support/project-files.ts";
import { createTiff, fixtureFile, fixtureLines, withTag } from "./create-tiff.ts";

const surveyFoot_m = 1200 / 3937;

/** A box so far east and north of an origin, and so far the other ways. */
function boxAround(frame: Frame, east_m: number, north_m: number): LonLatBox {
  const [west, south] = frame.toLonLat(planePoint(-east_m, -north_m));
  const [east, north] = frame.toLonLat(planePoint(east_m, north_m));
  return { west, south, east, north };
}

const reading = (box: LonLatBox, change: Partial<ElevationReading> = {}): ElevationReading => ({
  box,
  verticalUnit: "m",
  id: "heights",
  name: "hill.tif",
  ...change,
});

/** Reads heights the whole way: file, feature, project, ground in a frame. */
async function heightsOf(file: Blob, wish: ElevationReading, frame: Frame) {
  const read = await readElevationFile(file, wish);
  if (!read.ok) throw new Error(codes(read.findings).join(", "));
  const project = parseProject(createFile(undefined, [JSON.parse(JSON.stringify(read.value))]));
  const [grid] = project.ok ? project.value.heightGrids : [];
  if (grid === undefined) throw new Error(codes(project.findings).join(", "));
  return { grid, heightAt: heightReader(gridGround(grid, frame)), findings: read.findings };
}

/** Whole centimetres, and a millimetre for the rest. */
const tolerance_m = 0.006;

describe("heights of a GeoTIFF against GDAL (gdalwarp -r bilinear; the commands stand in tests/fixtures/heights/make.sh)", () => {
  const cases = [
    { name: "utm", says: "metres of a UTM zone", lat: 38.288267, lon: -122.302025, unit: "m" },
    { name: "lon-lat", says: "degrees, in tiles", lat: 38.2897, lon: -122.2996, unit: "m" },
    { name: "feet", says: "US survey feet both ways, with a hole", lat: 38.296944, lon: -122.284136, unit: "us-ft" },
    { name: "points", says: "heights at points, not of cells", lat: 38.288267, lon: -122.302025, unit: "m" },
    { name: "turned", says: "a grid turned by 20 degrees", lat: 38.288405, lon: -122.301933, unit: "m" },
  ] as const;

  it.each(cases)("$name: $says", async ({ name, lat, lon, unit }) => {
    const frame = createFrame(lonLat(lon, lat));
    // An odd number of places each way, so that they lie on whole metres like those that GDAL was asked for.
    const box = boxAround(frame, 15.9, 11.9);
    const { grid, heightAt } = await heightsOf(fixtureFile(`${name}.tif`), reading(box, { verticalUnit: unit }), frame);
    expect([grid.columns % 2, grid.rows % 2, 1 % grid.cell_m]).toEqual([1, 1, 0]);
    let [worst_m, compared, holes] = [0, 0, 0];
    for (const [x = NaN, y = NaN, stored = NaN] of fixtureLines(`${name}.csv`)) {
      if (Math.abs(x) > 15 || Math.abs(y) > 11) continue;
      const expected_m = unit === "m" ? stored : stored * surveyFoot_m;
      const height_m = heightAt(x, y);
      if (Number.isNaN(stored)) {
        holes++;
        expect(height_m).toBeNull();
      } else if (height_m !== null) {
        compared++;
        worst_m = Math.max(worst_m, Math.abs(height_m - expected_m));
      }
    }
    expect(compared).toBeGreaterThan(50);
    expect(holes > 0).toBe(name === "feet");
    expect(worst_m).toBeLessThan(tolerance_m);
  });

  it("half a cell of shift forgotten would be seen by far", async () => {
    const frame = createFrame(lonLat(-122.302025, 38.288267));
    const { heightAt } = await heightsOf(fixtureFile("utm.tif"), reading(boxAround(frame, 15.9, 11.9)), frame);
    const worst_m = Math.max(
      ...fixtureLines("utm.csv").map(([x = 0, y = 0, stored = 0]) => {
        const shifted = Math.abs(x) < 14 && Math.abs(y) < 10 ? heightAt(x + 1, y - 1) : null;
        return shifted === null ? 0 : Math.abs(shifted - stored);
      }),
    );
    expect(worst_m).toBeGreaterThan(50 * tolerance_m);
  });
});

describe("what a file says of itself", () => {
  test("is shown before it is read, with the unit of its heights only offered", async () => {
    const told = await inspectElevationFile(fixtureFile("feet.tif"), "feet.tif");
    expect(told.ok && told.value).toMatchObject({
      columns: 40,
      rows: 30,
      system: "EPSG 2226, NAD83 / California zone 2 (US survey feet)",
      heightsAre: "cells",
      noData: -9999,
      verticalUnit: null,
    });
    // Cells of 6 US survey feet, measured on a sphere for a word beside the file's name: half a per cent.
    expect(told.ok && told.value.cell_m?.[0]).toBeCloseTo(1.829, 1);
    const stated = createTiff({ tags: { VerticalUnitsGeoKey: 9003 } });
    const offered = await inspectElevationFile(stated, "feet.tif");
    expect(offered.ok && offered.value.verticalUnit).toBe("us-ft");
  });

  test("a system that is not in the list is asked for, and then taken as stated", async () => {
    const file = fixtureFile("british.tif");
    const told = await inspectElevationFile(file, "british.tif");
    expect(told.ok && [told.value.system, told.value.box]).toEqual([null, null]);
    expect(codes(told.findings)).toEqual(["systems/grid-system"]);
    expect(text(told.findings[0]?.message ?? [], "metric")).toContain("EPSG 27700");
    // The British grid without its shift, from EPSG Guidance Note 7-2: on the Airy ellipsoid the central meridian is 2 degrees west.
    const system = "+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy +units=m";
    const known = await inspectElevationFile(file, "british.tif", system);
    expect(known.ok && known.value.box?.west).toBeCloseTo(-2, 4);
    const refused = await readElevationFile(file, reading({ west: -2.1, south: 50.7, east: -1.9, north: 50.9 }));
    expect([refused.ok, codes(refused.findings)]).toEqual([false, ["systems/grid-system"]]);
    const box = { west: -2.1, south: 50.7, east: -1.9, north: 50.9 };
    expect((await readElevationFile(file, reading(box, { system }))).ok).toBe(true);
  });

  test.each([
    ["not a projection", "it does not name a projection"],
    ["+proj=tmerc +nadgrids=OSTN15_NTv2_OSGBtoETRS.gsb", "file of shifts"],
    ["+proj=nonsense +lat_0=3", "cannot be used"],
  ])("the system %j is refused", async (system, says) => {
    const { ok, findings } = await inspectElevationFile(fixtureFile("british.tif"), "british.tif", system);
    expect([ok, codes(findings)]).toEqual([false, ["systems/bad-system"]]);
    expect(text(findings[0]?.message ?? [], "metric")).toContain(says);
  });

  test("coordinates in feet under a system in metres are not guessed about", async () => {
    const { ok, findings } = await inspectElevationFile(
      createTiff({ tags: { ProjLinearUnitsGeoKey: 9003 } }),
      "odd.tif",
    );
    expect([ok, codes(findings)]).toEqual([true, ["readers/units-disagree"]]);
    const agreed = await inspectElevationFile(createTiff({ tags: { ProjLinearUnitsGeoKey: 9001 } }), "plain.tif");
    expect(codes(agreed.findings)).toEqual([]);
  });

  test.each([
    ["a text", new Blob(["{}"]), "readers/not-a-tiff"],
    ["an empty file", new Blob([]), "readers/not-a-tiff"],
    ["a picture", fixtureFile("picture.tif"), "readers/not-heights"],
    ["a file without a place", createTiff({ tags: { ModelPixelScale: [0, 0, 0] } }), "readers/without-place"],
  ])("%s is refused", async (_, file, code) => {
    const { ok, findings } = await inspectElevationFile(file, "hill.tif");
    expect([ok, codes(findings)]).toEqual([false, [code]]);
  });
});

/** Over the files of `createTiff`: 60 by 40 m. */
const middle = createFrame(lonLat(-122.302253, 38.288357));
const within = boxAround(middle, 15, 10);

describe("reading a file of heights", () => {
  test("only the cells over the box are read, progress goes up to 1, and the project's file stays small", async () => {
    const file = createTiff({ columns: 700, rows: 600, height: (column, row) => 200 + 0.1 * column - 0.05 * row });
    const frame = createFrame(lonLat(-122.2945, 38.2838));
    const shares: number[] = [];
    const box = boxAround(frame, 500, 400);
    const read = await readElevationFile(file, reading(box), { progress: (share) => shares.push(share) });
    if (!read.ok) throw new Error(codes(read.findings).join(", "));
    expect([shares[0], shares.at(-1)]).toEqual([0, 1]);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    const { columns, rows, cell } = read.value.properties?.grid ?? {};
    expect(cell).toBe(5);
    expect(columns * rows).toBeLessThanOrEqual(mostGridHeights);
    expect(JSON.stringify(read.value).length).toBeLessThan(420_000);
    const { heightAt } = await heightsOf(file, reading(box), frame);
    // A plane is a plane whatever the size of the cells: means of 2.5 cells each way keep it.
    const [here, east] = [Number(heightAt(0, 0)), Number(heightAt(100, 0))];
    const [north] = [Number(heightAt(0, 100))];
    // The UTM grid is turned against the meridian by 0.43 degrees here, which is 0.02 % of slope.
    expect((east - here) / 100).toBeCloseTo(0.05, 3);
    expect((north - here) / 100).toBeCloseTo(0.025, 3);
  });

  test("a coarser grid takes the mean of the ground, not one cell of it", async () => {
    // Furrows of 1 m from cell to cell: their mean is 100.
    const furrows = createTiff({ columns: 700, rows: 600, height: (column) => 100 + (column % 2 === 0 ? 0.5 : -0.5) });
    const frame = createFrame(lonLat(-122.2945, 38.2838));
    const { grid } = await heightsOf(furrows, reading(boxAround(frame, 500, 400)), frame);
    const off_m = Array.from(grid.height_m, (height) => Math.abs(height - 100));
    expect(Math.max(...off_m)).toBeLessThan(0.2);
    expect(off_m.reduce((sum, each) => sum + each, 0) / off_m.length).toBeLessThan(0.06);
  });

  test.each([
    ["m", 1],
    ["ft", 0.3048],
    ["us-ft", 1200 / 3937],
  ] as const)("heights in %s are turned into metres", async (verticalUnit, unit_m) => {
    const { heightAt } = await heightsOf(createTiff({ height: () => 3000 }), reading(within, { verticalUnit }), middle);
    expect(Math.abs(Number(heightAt(0, 0)) - 3000 * unit_m)).toBeLessThan(tolerance_m);
  });

  test("a unit that the file contradicts is warned of", async () => {
    const file = createTiff({ tags: { VerticalUnitsGeoKey: 9002 } });
    const { findings } = await heightsOf(file, reading(within), middle);
    expect(codes(findings)).toEqual(["readers/unit-differs"]);
  });

  test("cells without data stay without, and so does what lies next to them", async () => {
    const file = createTiff({
      height: (column, row) => (column >= 14 && row >= 9 ? -9999 : 100),
      tags: { GDAL_NODATA: "-9999" },
    });
    const { heightAt, findings } = await heightsOf(file, reading(within), middle);
    expect([heightAt(10, -8), heightAt(-10, 8)]).toEqual([null, 100]);
    expect(codes(findings)).toEqual(["readers/gaps"]);
  });

  test("a mark for no data that is not declared is not taken for a height", async () => {
    const file = createTiff({ height: (column) => (column === 14 ? -32768 : 100) });
    const { heightAt, findings } = await heightsOf(file, reading(within), middle);
    expect(codes(findings)).toEqual(["readers/impossible-heights", "readers/gaps"]);
    expect(heightAt(-12, 0)).toBe(100);
  });

  test("a file of other ground, or one without a height here, is refused", async () => {
    const far = { west: 10, south: 45, east: 10.01, north: 45.01 };
    const { ok, findings } = await readElevationFile(createTiff(), reading(far));
    expect([ok, codes(findings)]).toEqual([false, ["readers/elsewhere"]]);
    const bare = createTiff({ height: () => NaN });
    expect(codes((await readElevationFile(bare, reading(within))).findings)).toEqual(["readers/elsewhere"]);
  });

  test("of several numbers a cell the first is the height, and it is said", async () => {
    const cells = new Float32Array(2 * 30 * 20).map((_, i) => (i % 2 === 0 ? 150 : 7));
    const two = writeArrayBuffer(cells, {
      width: 30,
      height: 20,
      SamplesPerPixel: 2,
      BitsPerSample: [32, 32],
      SampleFormat: [3, 3],
      StripByteCounts: [4 * cells.length],
      PhotometricInterpretation: 1,
      GTModelTypeGeoKey: 1,
      ProjectedCSTypeGeoKey: 32610,
      ModelPixelScale: [2, 2, 0],
      ModelTiepoint: [0, 0, 0, 561000, 4238060, 0],
    });
    const { heightAt, findings } = await heightsOf(new Blob([two]), reading(within), middle);
    expect(codes(findings)).toEqual(["readers/several-bands"]);
    expect(heightAt(0, 0)).toBe(150);
  });

  test("it stops when it is told to, and takes nothing", async () => {
    const stop = new AbortController();
    const file = createTiff({ columns: 700, rows: 600 });
    const box = boxAround(createFrame(lonLat(-122.2945, 38.2838)), 500, 400);
    const { ok, findings } = await readElevationFile(file, reading(box), {
      progress: () => stop.abort(),
      signal: stop.signal,
    });
    expect([ok, codes(findings)]).toEqual([false, ["readers/stopped"]]);
  });

  test("a way of packing that is not known, and pieces too large to read in part, are said", async () => {
    const packed = await withTag(createTiff(), 259, 12_345);
    expect(codes((await readElevationFile(packed, reading(within))).findings)).toEqual(["readers/unreadable"]);
    const wide = await withTag(await withTag(await withTag(createTiff(), 256, 60_000), 257, 60_000), 278, 60_000);
    expect(codes((await readElevationFile(wide, reading(within))).findings)).toEqual(["readers/too-large-blocks"]);
  });
});
