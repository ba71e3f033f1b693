import { describe, expect, test } from "vitest";
import { unitLength_m } from "../../../src/core/systems/unit-length.ts";
import { createSystem, storedAnswers } from "./create-systems.ts";

/** How far a place may be from where PROJ puts it: a tenth of a millimetre. */
const tolerance_m = 1e-4;

describe("the bundled list", () => {
  const answers = storedAnswers();

  test("has the families that vineyards are surveyed in", () => {
    const families = [
      [32610, "WGS 84 / UTM zone 10 north"],
      [6339, "NAD83(2011) / UTM zone 10 north"],
      [25832, "ETRS89 / UTM zone 32 north"],
      [28355, "GDA94 / MGA zone 55"],
      [2226, "NAD83 / California zone 2 (US survey feet)"],
      [26942, "NAD83 / California zone 2"],
      [6418, "NAD83(2011) / California zone 2 (US survey feet)"],
      [2994, "NAD83(HARN) / Oregon GIC Lambert (feet)"],
      [2262, "NAD83 / New York West (US survey feet)"],
      [2284, "NAD83 / Virginia South (US survey feet)"],
      [2154, "RGF93 v1 / Lambert-93"],
      [2193, "NZGD2000 / New Zealand Transverse Mercator 2000"],
      [2056, "CH1903+ / LV95"],
      [3763, "ETRS89 / Portugal TM06"],
      [31983, "SIRGAS 2000 / UTM zone 23 south"],
    ] as const;
    for (const [code, name] of families) expect(createSystem(code).name).toBe(`EPSG ${code}, ${name}`);
  });

  test("puts a place of every system where PROJ puts it, and leads back (tests/fixtures/systems/make-answers.py)", () => {
    expect(answers.length).toBeGreaterThan(2000);
    const off: string[] = [];
    for (const { code, lon_deg, lat_deg, x, y } of answers) {
      const system = createSystem(code);
      const [east, north] = system.fromLonLat(lon_deg, lat_deg);
      const [lon, lat] = system.toLonLat(x, y);
      const unit_m = system.unit === "deg" ? NaN : unitLength_m[system.unit];
      const there_m = Math.hypot(east - x, north - y) * unit_m;
      const back_m = Math.hypot(lon - lon_deg, lat - lat_deg) * 111_320;
      if (!(there_m < tolerance_m) || !(back_m < tolerance_m)) off.push(`${system.name}: ${there_m} ${back_m}`);
    }
    expect(off).toEqual([]);
  });
});
