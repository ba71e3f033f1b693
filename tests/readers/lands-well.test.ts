import { expect, test } from "vitest";
import { type CoordinateSystem, statedSystem } from "../../src/core/systems/coordinate-system.ts";
import { landsWell } from "../../src/readers/lands-well.ts";

function system(text: string): CoordinateSystem {
  const read = statedSystem(text);
  if (!read.ok) throw new Error(`${text} is no system`);
  return read.value;
}

// The middle meridian of UTM zone 10 is 500,000 m east; vineyards grow between 25 and 58 degrees of latitude.
test("eastings and northings of a zone land, the other way round they do not", () => {
  const zone = system("EPSG:32610");
  expect(landsWell(zone, 512_000, 4_238_000)).toBe(true);
  expect(landsWell(zone, 4_238_000, 512_000)).toBe(false);
  expect(landsWell(zone, Number.NaN, 0)).toBe(false);
  expect(landsWell(zone, 1e12, 1e12)).toBe(false);
});

test("in a system of survey feet too", () => {
  const feet = system("EPSG:2226");
  expect(landsWell(feet, 6_360_000, 1_900_000)).toBe(true);
  expect(landsWell(feet, 63_600_000, 19_000_000)).toBe(false);
});

test("a plane around a place is for that place", () => {
  const plane = system("+proj=tmerc +lat_0=38 +lon_0=-122 +datum=WGS84");
  expect(landsWell(plane, 150, -80)).toBe(true);
  expect(landsWell(plane, 512_000, 4_238_000)).toBe(false);
});

test("degrees land where there are such", () => {
  const degrees = system("EPSG:4326");
  expect(landsWell(degrees, -122, 38)).toBe(true);
  expect(landsWell(degrees, 38, -122)).toBe(false);
});
