import { describe, expect, it, test } from "vitest";
import { statedSystem, systemOfCode } from "../../../src/core/systems/coordinate-system.ts";
import { text } from "../../../src/core/units.ts";
import { fixtureLines } from "../../readers/create-tiff.ts";
import { codes } from "../../support/project-files.ts";

/** A millimetre, in the system's own unit. */
const tolerance = 1e-3;

describe("coordinate systems against the register of PROJ (gdaltransform; the commands stand in tests/fixtures/heights/make.sh)", () => {
  const stored = fixtureLines("systems.csv");

  it.each(stored.map((line) => [line[0] ?? 0, line] as const))(
    "EPSG %d",
    (code, [, lon = 0, lat = 0, x = 0, y = 0]) => {
      const read = systemOfCode(code);
      if (!read.ok) throw new Error(codes(read.findings).join(", "));
      const [east, north] = read.value.fromLonLat(lon, lat);
      expect(Math.abs(east - x)).toBeLessThan(tolerance);
      expect(Math.abs(north - y)).toBeLessThan(tolerance);
      const [backLon, backLat] = read.value.toLonLat(x, y);
      expect(Math.abs(backLon - lon)).toBeLessThan(1e-8);
      expect(Math.abs(backLat - lat)).toBeLessThan(1e-8);
    },
  );

  test("8-12 Snyder 1987, p. 269: a place on the Clarke 1866 ellipsoid in a stated transverse Mercator", () => {
    const read = statedSystem("+proj=tmerc +lat_0=0 +lon_0=-75 +k=0.9996 +x_0=0 +y_0=0 +ellps=clrk66 +units=m");
    const [x, y] = read.ok ? read.value.fromLonLat(-73.5, 40.5) : [0, 0];
    expect(Math.abs(x - 127_106.5)).toBeLessThan(0.05);
    expect(Math.abs(y - 4_484_124.4)).toBeLessThan(0.05);
  });

  test("a US survey foot is no foot: 4 m at California zone 2", () => {
    const [survey] = systemOfCode(2226).ok ? [systemOfCode(2226)] : [];
    const feet = statedSystem(
      "+proj=lcc +lat_1=39.83333333333334 +lat_2=38.33333333333334 +lat_0=37.66666666666666 +lon_0=-122 +x_0=2000000 +y_0=500000 +ellps=GRS80 +units=ft",
    );
    if (!survey?.ok || !feet.ok) throw new Error("both are known");
    const [lon, lat] = survey.value.toLonLat(6_480_120, 1_870_090);
    const [wrongLon] = feet.value.toLonLat(6_480_120, 1_870_090);
    const apart_m = Math.abs(lon - wrongLon) * 111_320 * Math.cos((lat * Math.PI) / 180);
    expect(apart_m).toBeGreaterThan(3.5);
    expect(apart_m).toBeLessThan(4.5);
  });

  test.each([26924, 32661, 0])("EPSG %d is refused: nothing is guessed", (code) => {
    expect(codes(systemOfCode(code).findings)).toEqual(["systems/unknown-system"]);
  });

  test.each([
    [27700, "OSGB36"],
    [4267, "NAD27"],
    [26710, "NAD27"],
    [28992, "Amersfoort"],
    [31467, "DHDN"],
  ])("EPSG %d is refused in words, because its datum %s needs a file of shifts", (code, datum) => {
    const { findings } = systemOfCode(code);
    expect(codes(findings)).toEqual(["systems/grid-system"]);
    expect(text(findings[0]?.message ?? [], "metric")).toContain(datum);
  });

  test("a code may be stated in place of a proj4 text", () => {
    for (const text of ["EPSG:26910", "epsg 26910", "26910"]) {
      const read = statedSystem(text);
      expect(read.ok && read.value.name).toBe("EPSG 26910, NAD83 / UTM zone 10 north");
    }
  });
});
