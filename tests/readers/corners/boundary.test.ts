import { Geodesic } from "geographiclib-geodesic";
import { describe, expect, it, test } from "vitest";
import { text } from "../../../src/core/units.ts";
import { type CornerList, readCornerList } from "../../../src/readers/corners/read-corner-list.ts";
import { closureOf } from "../../../src/readers/corners/traverse.ts";
import { noAnswers, type ReadingAnswers } from "../../../src/readers/reading.ts";
import { codes } from "../../support/project-files.ts";

const begin = [-122.458, 38.2914] as const;

function reading(
  pasted: string,
  answers: Partial<ReadingAnswers> = { north: "true" },
  from: readonly [number, number] | null = begin,
): { list: CornerList; said: readonly string[]; sentences: string } {
  const outcome = readCornerList(pasted, { ...noAnswers, ...answers }, from);
  if (!outcome.ok) throw new Error(codes(outcome.findings).join(", "));
  const sentences = outcome.findings.map(({ message }) => text(message, "metric")).join(" ");
  return { list: outcome.value, said: codes(outcome.findings), sentences };
}

function cornersOf({ list }: { list: CornerList }): readonly (readonly number[])[] {
  const geometry = list.features[0]?.geometry;
  return geometry?.type === "Polygon" ? (geometry.coordinates[0]?.slice(0, -1) ?? []) : [];
}

describe("how a boundary closes, reckoned by hand", () => {
  test("300 ft north, 400 ft east, 300 ft south, 399.5 ft west: half a foot east, 1 in 2799", () => {
    const { list, said } = reading("North 300 feet\nEast 400 feet\nSouth 300 feet\nWest 399.5 feet");
    expect(list.closure?.east_m).toBeCloseTo(0.5 * 0.3048, 9);
    expect(list.closure?.north_m).toBeCloseTo(0, 9);
    expect(list.closure?.error_m).toBeCloseTo(0.1524, 9);
    expect(list.closure?.length_m).toBeCloseTo(1399.5 * 0.3048, 9);
    expect(list.closure?.ratio).toBeCloseTo(2799, 6);
    expect(said).toEqual(["readers/closure-error"]);
    expect(cornersOf({ list })).toHaveLength(4);
  });

  test("a right triangle of 30, 40 and 50 m whose angle is 36°52'11.63\" closes", () => {
    const { list, said } = reading("N 40 m\nE 30 m\nS 36°52'11.6315\" W 50 m");
    expect(list.closure?.error_m).toBeLessThan(1e-6);
    expect([list.closure?.ratio, said]).toEqual([null, []]);
  });

  // The worked traverse of five sides in Ghilani and Wolf, Elementary Surveying, chapter on traverse computations (from memory): departures add
  // up to 0.026 ft, latitudes to 0.077 ft, the perimeter is 2466.00 ft.
  test("a printed traverse of five sides misses by 0.026 ft east and 0.077 ft north", () => {
    const sides = [
      [126 + 55 / 60 + 17 / 3600, 647.25],
      [178 + 18 / 60 + 58 / 3600, 203.03],
      [15 + 31 / 60 + 54 / 3600, 720.35],
      [284 + 35 / 60 + 20 / 3600, 610.24],
      [206 + 9 / 60 + 41 / 3600, 285.13],
    ].map(([bearing_deg = NaN, length_m = NaN]) => ({ bearing_deg, length_m }));
    const { east_m, north_m, length_m } = closureOf(sides);
    expect(Math.abs(east_m - 0.026)).toBeLessThan(2e-3);
    expect(Math.abs(north_m - 0.077)).toBeLessThan(2e-3);
    expect(Math.abs(length_m - 2466)).toBeLessThan(1e-6);
  });

  test("a last side that is not told is drawn and said, not passed off as an error", () => {
    const read = reading("North 300 feet\nEast 400 feet\nSouth 300 feet");
    expect(read.said).toEqual(["readers/closing-side"]);
    expect(read.sentences).toContain("270.00°");
    expect(cornersOf(read)).toHaveLength(4);
  });

  test("a careful survey has a note, a blunder a warning", () => {
    const severity = (last: string) =>
      readCornerList(`North 300 m\nEast 400 m\nSouth 300 m\nWest ${last} m`, { ...noAnswers, north: "true" }, begin)
        .findings[0]?.severity;
    expect([severity("399.9"), severity("390")]).toEqual(["note", "warning"]);
  });
});

describe("where the corners lie", () => {
  // Calculation handbook, section 8.2: by geographiclib-geodesic 2.2.0.
  it.each([
    ["N 37° E 300 m", 42.60215680222, -76.89779998363],
    ["S 37° E 250 m", 42.59820263193, -76.89816676895],
    ["East 100 m", 42.59999999352, -76.89878149686],
    ["Azimuth 143°00'00\" 250 m", 42.59820263193, -76.89816676895],
  ])("42.6, -76.9: %s", (side, lat, lon) => {
    const read = readCornerList(side, { ...noAnswers, north: "true" }, [-76.9, 42.6]);
    const geometry = read.ok ? read.value.features[0]?.geometry : undefined;
    const end = geometry?.type === "LineString" ? geometry.coordinates[1] : undefined;
    // A millimetre in 100 m of longitude is the plane's curvature; here it is a hundredth of that.
    expect(Math.abs((end?.[1] ?? NaN) - lat)).toBeLessThan(1e-9);
    expect(Math.abs((end?.[0] ?? NaN) - lon)).toBeLessThan(1e-9);
  });

  test("first sides by grid and compass north are turned as geodesics say", () => {
    const first = (north: string, system: string | null) =>
      cornersOf(reading("N 300 m\nE 400 m\nS 300 m\nW 400 m", { north, system }))[1] ?? [];
    const ahead = (azimuth: number) => Geodesic.WGS84.Direct(begin[1], begin[0], azimuth, 300);
    // Grid north of UTM zone 10 at 0.542 degrees east of its meridian: true = grid + convergence (Snyder 1987, spherical form).
    const convergence =
      (Math.atan(Math.tan((0.542 * Math.PI) / 180) * Math.sin((38.2914 * Math.PI) / 180)) * 180) / Math.PI;
    for (const [place, azimuth] of [
      [first("true", null), 0],
      [first("grid", "EPSG:32610"), convergence],
      [first("13.5", null), 13.5],
      [first("11.2 W", null), -11.2],
    ] as const) {
      const { lat2 = NaN, lon2 = NaN } = ahead(azimuth);
      // The spherical convergence is good to 1e-5 degree: a tenth of a millimetre in 300 m.
      expect(Math.hypot((place[1] ?? NaN) - lat2, (place[0] ?? NaN) - lon2) * 111_320).toBeLessThan(3e-4);
    }
  });

  test("a corner in the text before the first side is the beginning", () => {
    const sides = "N 45 E 100 ft\nS 45 E 100 ft\nS 45 W 100 ft\nN 45 W 100 ft";
    const degrees = reading(`Beginning at 38.2914, -122.458, an iron pin;\n${sides}`, { north: "true" }, null);
    expect(cornersOf(degrees)[0]).toEqual([-122.458, 38.2914]);
    const plane = reading(`Beginning at N 1870090.2 E 6480120.1 (EPSG:2226);\n${sides}`, { north: "grid" }, null);
    expect(cornersOf(plane)[0]?.[1]).toBeCloseTo(38.29695, 4);
    expect([degrees.said, plane.said]).toEqual([[], []]);
  });
});

describe("what a description leaves open is asked", () => {
  const deed =
    "thence N 45°30'15\" E 250.00;\nthence S 44°29'45\" E 300.00;\nthence S 45°30'15\" W 250.00;\nthence N 44°29'45\" W 300.00.";
  const asked = (answers: Partial<ReadingAnswers>) => {
    const { list } = reading(deed, answers);
    return [list.questions.map(({ about }) => about), list.features.length];
  };

  test("the unit, the north, and of grid north the system", () => {
    expect(asked({})).toEqual([["unit", "north"], 0]);
    expect(asked({ unit: "ft" })).toEqual([["north"], 0]);
    expect(asked({ unit: "ft", north: "grid" })).toEqual([["system"], 0]);
    expect(asked({ unit: "ft", north: "a compass" })).toEqual([["north"], 0]);
    expect(asked({ unit: "ft", north: "grid", system: "EPSG:2226" })).toEqual([[], 1]);
  });

  test("the beginning; the closure is told without it", () => {
    const read = reading(deed, { north: "true", unit: "m" }, null);
    expect([read.said, read.list.features, read.list.closure?.length_m]).toEqual([["readers/no-beginning"], [], 1100]);
  });

  test("feet of either kind are told where they differ by more than a hair", () => {
    const far = "North 3000 ft\nEast 3000 ft\nSouth 3000 ft\nWest 3000 ft";
    expect(reading(far).said).toEqual(["readers/feet-taken"]);
    expect(reading(far, { north: "true", unit: "us-ft" }).list.closure?.length_m).toBeCloseTo(
      (12_000 * 1200) / 3937,
      9,
    );
    expect(reading(far.replaceAll("ft", "US survey feet")).list.closure?.length_m).toBeCloseTo(
      (12_000 * 1200) / 3937,
      9,
    );
  });
});

describe("how descriptions are written", () => {
  const square = 4 * 250 * 0.3048;

  it.each([
    [
      "prose",
      "Beginning at an iron pin; thence N 45°30'15\" E 250.00 ft; thence S 44°29'45\" E, a distance of 250.00 feet to a stake; thence S 45°30'15\" W 250.00 feet; thence N 44°29'45\" W 250.00 feet to the point of beginning.",
    ],
    [
      "prose over lines",
      "thence North 45 degrees 30 minutes 15 seconds East\n250.00 feet; thence South 44°29'45\"\nEast 250 feet; thence S 45°30'15\" W\n250 feet; thence N 44°29'45\" W 250 feet",
    ],
    ["dashes", "N45-30-15E 250 ft\nS44-29-45E 250 ft\nS45-30-15W 250 ft\nN44-29-45W 250 ft"],
    [
      "a table, distance behind",
      "L1 N45°30'15\"E 250.00'\nL2 S44°29'45\"E 250.00'\nL3 S45°30'15\"W 250.00'\nL4 N44°29'45\"W 250.00'",
    ],
    [
      "a table, distance before",
      "L1 | 250.00' | N45°30'15\"E\nL2 | 250.00' | S44°29'45\"E\nL3 | 250.00' | S45°30'15\"W\nL4 | 250.00' | N44°29'45\"W",
    ],
    ["decimals of a degree", "N 45.504167 E 250 ft\nS 44.495833 E 250 ft\nS 45.504167 W 250 ft\nN 44.495833 W 250 ft"],
    ["azimuths", "45°30'15\" 250 ft\n135°30'15\" 250 ft\nAz 225°30'15\", 250 ft\nAzimuth of 315-30-15, 250 ft"],
    ["marks of typesetting", "N 45° 30′ 15″ E 250′\nS 44° 29′ 45″ E 250′\nS 45° 30′ 15″ W 250′\nN 44° 29′ 45″ W 250′"],
  ])("%s", (_what, pasted) => {
    const read = reading(pasted);
    expect(read.list.closure?.length_m).toBeCloseTo(square, 6);
    expect(read.list.closure?.error_m).toBeLessThan(1e-4);
    expect(cornersOf(read)).toHaveLength(4);
  });

  test("chains, links and rods: 10 chains, 5 chains 50 links, 40 rods and 363 feet", () => {
    const read = reading(
      "thence North 10 chains; thence East 5 chains 50 links; thence South 40 rods; thence due West 363 feet",
    );
    expect(read.list.closure?.length_m).toBeCloseTo((660 + 363 + 660 + 363) * 0.3048, 9);
    expect(read.list.closure?.error_m).toBeLessThan(1e-9);
  });

  test("a side that is not understood is told with its line, and never takes the distance of the next", () => {
    const read = reading("N 45 E\nS 44 E 250 ft\nN 95°30' E 100 ft\nS 44°75' W 100 ft\nS 45 W 100 ft");
    expect(read.said.filter((code) => code === "readers/line-unread")).toHaveLength(3);
    expect(read.sentences).toContain("Line 1");
    expect(read.list.closure?.length_m).toBeCloseTo(350 * 0.3048, 9);
  });

  test("a curve is said to be read by its chord, and a date is no side", () => {
    const read = reading("30 June 2019\nNorth 250 feet\nalong a curve, chord N 45 E 120 feet\nEast 100 feet");
    expect(read.said).toContain("readers/curve-as-chord");
    expect(read.list.closure?.length_m).toBeCloseTo(470 * 0.3048, 9);
  });
});
