import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import type { LonLat } from "../../src/core/plane/coordinate.ts";
import type { Project } from "../../src/core/project/project.ts";
import { projectIn } from "../support/project-files.ts";
import { createFolder, say } from "./create-terminal.ts";

const sample = readFileSync(
  fileURLToPath(new URL("../../samples/acre-with-notch/project.geojson", import.meta.url)),
  "utf8",
);
/** The bar for positions that leave and come back. */
const most_m = 0.002;
const degree_m = 111_320;

function apart_m([lon, lat]: LonLat, [otherLon, otherLat]: LonLat): number {
  return Math.hypot((lon - otherLon) * Math.cos((lat * Math.PI) / 180), lat - otherLat) * degree_m;
}

/** Every place that came back: corners of the parcel, ends of rows, marks, the main line. */
function placesOf({ parcels, givenRows, marks, mainLines }: Project): readonly LonLat[] {
  return [
    ...parcels.flatMap(({ polygons }) => polygons.flat(2)),
    ...givenRows.flatMap(({ ends }) => ends ?? []),
    ...marks.map(({ at }) => at),
    ...mainLines.flatMap(({ line }) => line),
  ];
}

async function comesBack(format: string): Promise<Project> {
  const folder = createFolder({ "acre.geojson": sample });
  const of = "parcels,rows,vines,marks,route";
  const out = await say(["export", "acre.geojson", "--of", of, "--as", format, "--out", "out"], { folder });
  expect(out.code).toBe(0);
  const files = readdirSync(join(folder, "out"))
    .filter((name) => !name.endsWith("-about.txt"))
    .map((name) => join("out", name));
  const back = await say(["import", ...files], { folder });
  expect(back.notes).toContain("745 points");
  expect(back.code).toBe(0);
  return projectIn(back.out);
}

// Rows come back as rows that stand, vines only when they are asked for: a plan works them out by itself.
test.each(["kml", "kmz", "gpx", "dxf", "shapefile", "xlsx", "landxml"])(
  "what was handed over as %s comes back in its roles, to two millimetres of what comes back as GeoJSON",
  async (format) => {
    const [wanted, found] = [await comesBack("geojson"), await comesBack(format)];
    const count = ({ parcels, givenRows, marks, mainLines }: Project) => ({
      parcels: parcels.length,
      rows: givenRows.length,
      marks: marks.length,
      mainLines: mainLines.length,
    });
    expect(count(wanted)).toEqual({ parcels: 1, rows: 39, marks: 1, mainLines: 3 });
    expect(count(found)).toEqual(count(wanted));
    const places = placesOf(found);
    for (const [i, place] of placesOf(wanted).entries()) {
      const nearest = Math.min(...places.map((each) => apart_m(place, each)));
      expect({ i, isNear: nearest < most_m }).toEqual({ i, isNear: true });
    }
  },
  60_000,
);
