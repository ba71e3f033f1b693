import { describe, expect, it, test } from "vitest";
import { text } from "../../../src/core/units.ts";
import { type CornerList, readCornerList } from "../../../src/readers/corners/read-corner-list.ts";
import { noAnswers, type ReadingAnswers } from "../../../src/readers/reading.ts";
import { codes } from "../../support/project-files.ts";

/** A hundredth of a millimetre, in degrees. */
const tolerance_deg = 1e-10;

function reading(pasted: string, answers: Partial<ReadingAnswers> = {}): { list: CornerList; said: readonly string[] } {
  const outcome = readCornerList(pasted, { ...noAnswers, ...answers }, null);
  if (!outcome.ok) throw new Error(codes(outcome.findings).join(", "));
  return { list: outcome.value, said: codes(outcome.findings) };
}

function placesOf({ list }: { list: CornerList }): readonly (readonly number[])[] {
  const geometry = list.features[0]?.geometry;
  if (geometry?.type === "Polygon") return geometry.coordinates[0]?.slice(0, -1) ?? [];
  if (geometry?.type === "LineString") return geometry.coordinates;
  return geometry?.type === "Point" ? [geometry.coordinates] : [];
}

function expectPlaces(read: { list: CornerList }, wanted: readonly (readonly number[])[]): void {
  const places = placesOf(read);
  expect(places).toHaveLength(wanted.length);
  places.forEach((place, i) => {
    place.forEach((value, k) => {
      expect(Math.abs(value - (wanted[i]?.[k] ?? NaN))).toBeLessThan(tolerance_deg);
    });
  });
}

const triangle = [
  [-122.458, 38.2914],
  [-122.457, 38.2914],
  [-122.457, 38.292],
];

describe("corners in degrees", () => {
  it.each([
    ["latitude first", "38.2914, -122.458\n38.2914, -122.457\n38.292, -122.457"],
    ["longitude first, which the numbers prove", "-122.458 38.2914\n-122.457 38.2914\n-122.457 38.292"],
    ["decimal commas", "38,2914; -122,458\n38,2914; -122,457\n38,2920; -122,457"],
    ["decimal commas and spaces", "38,2914 -122,458\n38,2914 -122,457\n38,2920 -122,457"],
    ["tabs", "38.2914\t-122.458\n38.2914\t-122.457\n38.292\t-122.457"],
    ["letters behind", "38.2914 N 122.458 W\n38.2914 N 122.457 W\n38.292N 122.457W"],
    ["letters before, longitude first", "W122.458 N38.2914\nW122.457 N38.2914\nW122.457 N38.292"],
    ["names and numbers before", "P1: 38.2914 -122.458\nNE pin - 38.2914 -122.457\n3) 38.292 -122.457"],
    ["a row of numbers before", "1 38.2914 -122.458\n2 38.2914 -122.457\n3 38.292 -122.457"],
    ["words", "lat 38.2914 lon -122.458\nLatitude: 38.2914, Longitude: -122.457\nlongitude=-122.457 latitude=38.292"],
    ["brackets", "(38.2914, -122.458),\n(38.2914, -122.457),\n(38.292, -122.457)"],
    ["one line with semicolons", "38.2914,-122.458; 38.2914,-122.457; 38.292,-122.457"],
    ["lists in brackets", "[[-122.458,38.2914],[-122.457,38.2914],[-122.457,38.292]]"],
    ["well-known text", "POLYGON ((-122.458 38.2914, -122.457 38.2914, -122.457 38.292))"],
    ["minus signs of typesetting", "38.2914, −122.458\n38.2914, −122.457\n38.292, –122.457"],
    ["the first corner said again", "38.2914 -122.458\n38.2914 -122.457\n38.292 -122.457\n38.2914 -122.458"],
    [
      "headings, empty lines and remarks",
      "Corners of the block\n\n38.2914, -122.458\n# second 2\n38.2914, -122.457\n38.292, -122.457\n",
    ],
    ["lines of another system of files", "38.2914, -122.458\r\n38.2914, -122.457\r\n38.292, -122.457\r\n"],
  ])("%s", (_what, pasted) => {
    const read = reading(pasted);
    expectPlaces(read, triangle);
    expect([read.said, read.list.questions, read.list.closure]).toEqual([[], [], null]);
  });

  it.each([
    ["marks of the keyboard", "38°17'29.04\"N 122°27'28.8\"W"],
    ["marks of typesetting", "38° 17′ 29.04″ N, 122° 27′ 28.8″ W"],
    ["spaces alone, letters before", "N 38 17 29.04 W 122 27 28.8"],
    ["two single quotes for a double one", "38º17'29.04''N, 122º27'28.8''W"],
    ["degrees and minutes", "38° 17.484' N, 122° 27.48' W"],
    ["degrees and minutes without marks", "38 17.484 N 122 27.48 W"],
    ["words", "38 deg 17' 29.04\" North, 122 deg 27' 28.8\" West"],
    ["longitude first", "W122°27'28.8\" N38°17'29.04\""],
    ["signs", "38°17'29.04\" -122°27'28.8\""],
  ])("degrees, minutes and seconds: %s", (_what, pasted) => {
    expectPlaces(reading(pasted), [[-122.458, 38.2914]]);
  });

  test("two places are a line, one is a point", () => {
    expect(reading("38.2914 -122.458\n38.2914 -122.457").list.features[0]?.geometry.type).toBe("LineString");
    expect(reading("38.2914 -122.458").list.features[0]?.geometry.type).toBe("Point");
  });

  test("where the first number grows no vines and the second does, the order is asked", () => {
    const pasted = "6.1 49.6\n6.101 49.6\n6.101 49.601";
    const { list } = reading(pasted);
    expect([list.features, list.questions.map(({ about }) => about)]).toEqual([[], ["order"]]);
    expectPlaces(reading(pasted, { isSwapped: true }), [
      [6.1, 49.6],
      [6.101, 49.6],
      [6.101, 49.601],
    ]);
    expectPlaces(reading(pasted, { isSwapped: false }), [
      [49.6, 6.1],
      [49.6, 6.101],
      [49.601, 6.101],
    ]);
  });

  test("a third number beside degrees is told, because nothing says what it counts", () => {
    const read = reading("38.2914 -122.458 102.3\n38.2914 -122.457 101.2\n38.292 -122.457 101");
    expectPlaces(read, triangle);
    expect(read.said).toEqual(["readers/numbers-beside"]);
  });

  test("a line that is not understood is told with its number, and the others stay", () => {
    const outcome = readCornerList("38.2914, -122.458\n38.2914, -122,457.1.2\n38.292 -122.457", noAnswers, null);
    expect(codes(outcome.findings)).toEqual(["readers/line-unread"]);
    expect(text(outcome.findings[0]?.message ?? [], "metric")).toContain("Line 2");
  });

  test("of many such lines the first few are told and the rest counted", () => {
    const { said } = reading(`38.2914, -122.458\n${"38 99 12 N, 1 W\n".repeat(9)}`);
    expect(said).toEqual([...Array(5).fill("readers/line-unread"), "readers/lines-unread"]);
  });

  test("corners of two kinds are not mixed", () => {
    const outcome = readCornerList("38.2914, -122.458\n547321 4238115\n38.292 -122.457", noAnswers, null);
    expect(text(outcome.findings[0]?.message ?? [], "metric")).toContain("another kind");
  });
});

describe("eastings and northings", () => {
  // Calculation handbook, checks 8-11 and 8-10: by Karney's series.
  test("a zone of UTM stands before them, and its datum is said", () => {
    const read = reading("18N 344130.9096 4718146.6935");
    const [place] = placesOf(read);
    expect(Math.abs((place?.[0] ?? NaN) + 76.9)).toBeLessThan(1e-9);
    expect(Math.abs((place?.[1] ?? NaN) - 42.6)).toBeLessThan(1e-9);
    expect(read.list.system).toBe("EPSG 32618, WGS 84 / UTM zone 18 north");
    expect(read.said).toEqual(["readers/utm-datum-taken"]);
    const [baghdad] = placesOf(reading("zone 38 N, 444140.5449 mE, 3684706.3555 mN"));
    expect(Math.abs((baghdad?.[0] ?? NaN) - 44.4)).toBeLessThan(1e-8);
    expect(Math.abs((baghdad?.[1] ?? NaN) - 33.3)).toBeLessThan(1e-8);
  });

  test("bands of latitude tell the half of the globe; a northing that is not in the band is refused", () => {
    expect(reading("55H 321000 6182000").list.system).toBe("EPSG 32755, WGS 84 / UTM zone 55 south");
    expect(reading("10S 547321 6182000").list.system).toBe("EPSG 32710, WGS 84 / UTM zone 10 south");
    expect(codes(readCornerList("10T 547321 4238115", noAnswers, null).findings)).toEqual([
      "readers/corners-elsewhere",
    ]);
    expect(codes(readCornerList("10N 547321 14238115", noAnswers, null).findings)).toEqual([
      "readers/corners-elsewhere",
    ]);
  });

  test("10S may be a band of the north or the southern half: it is asked", () => {
    const { list } = reading("10S 547321.4 4238115.9");
    expect(list.questions.map(({ about, offered }) => [about, offered.map(({ value }) => value)])).toEqual([
      ["system", ["EPSG:32610", "EPSG:32710"]],
    ]);
    expect(placesOf(reading("10S 547321.4 4238115.9", { system: "EPSG:32610" }))[0]?.[1]).toBeCloseTo(38.29, 2);
  });

  test("without a system it is asked, with an EPSG code in the text it is taken, and feet are those of the system", () => {
    const pasted = "E 6480120.10 N 1870090.20\nN 1870090.20 E 6480320.10\nE 6480320.10, N 1870290.20";
    expect(reading(pasted).list.questions.map(({ about }) => about)).toEqual(["system"]);
    const read = reading(`EPSG:2226\n${pasted}`);
    expect(read.list.system).toBe("EPSG 2226, NAD83 / California zone 2 (US survey feet)");
    expect(read.said).toEqual(["systems/datum-differs"]);
    // Two hundred survey feet at the scale of the zone, 60.96 m, in degrees of longitude there.
    const [west, east] = placesOf(read);
    const apart_m = ((east?.[0] ?? 0) - (west?.[0] ?? 0)) * 111_320 * Math.cos((38.297 * Math.PI) / 180);
    expect(Math.abs(apart_m - 60.96)).toBeLessThan(0.2);
  });

  test("which number is the easting is asked where both orders are a place, and taken where one is none", () => {
    const pasted = "1, 6480120.10, 1870090.20\n2, 6480320.10, 1870090.20\n3, 6480320.10, 1870290.20";
    expect(reading(pasted, { system: "EPSG:2226" }).list.questions.map(({ about }) => about)).toEqual(["order"]);
    const eastFirst = placesOf(reading(pasted, { system: "EPSG:2226", isSwapped: false }));
    expect(eastFirst[0]?.[1]).toBeCloseTo(38.297, 3);
    const utm = reading("4238115.9 547321.4 101.5\n4238115.9 547421.4 102\n4238215.9 547421.4 103", {
      system: "EPSG:32610",
    });
    expect(utm.list.notation).toBe("northings, then eastings");
    expect(placesOf(utm).map((place) => place[2])).toEqual([101.5, 102, 103]);
  });

  it.each([
    ["thousands with commas", "547,321.4 4,238,115.9"],
    ["decimal commas", "547321,4 4238115,9"],
    ["a name before", "P7 547321.4 4238115.9"],
    ["letters behind", "547321.4 mE 4238115.9 mN"],
    ["letters before, northing first", "N: 4238115.9, E: 547321.4"],
  ])("%s", (_what, pasted) => {
    const [place] = placesOf(reading(pasted, { system: "EPSG:32610" }));
    expect(place?.[0]).toBeCloseTo(-122.45888047953, 10);
    expect(place?.[1]).toBeCloseTo(38.28986945211, 10);
  });

  test("numbers that are no place of the system, and systems that cannot be served, are refused", () => {
    const refused = (pasted: string, system: string) =>
      codes(readCornerList(pasted, { ...noAnswers, system }, null).findings);
    expect(refused("99999999 99999999", "EPSG:32610")).toEqual(["readers/corners-elsewhere"]);
    expect(refused("38.2914 -122.458", "EPSG:32610")).toEqual(["readers/corners-elsewhere"]);
    expect(refused("547321 4238115", "EPSG:4326")).toEqual(["readers/corners-elsewhere"]);
    expect(refused("547321 4238115", "EPSG:26710")).toEqual(["systems/grid-system"]);
  });
});

describe("texts that are none", () => {
  it.each([["hello"], ["1 2 3"], ["<script>alert(1)</script>"], ["=1+1"], ["__proto__ constructor 12"]])(
    "%s",
    (pasted) => {
      const outcome = readCornerList(pasted, noAnswers, null);
      expect([outcome.ok, codes(outcome.findings).at(-1)]).toEqual([false, "readers/no-corners"]);
    },
  );

  test("megabytes are refused, and the longest text that is read takes no more than a moment whatever is in it", () => {
    expect(codes(readCornerList("1".repeat(3_000_000), noAnswers, null).findings)).toEqual(["readers/list-too-long"]);
    const hostile = [
      "1",
      "1 ",
      "N ",
      "N 1 ",
      "1,",
      "1,111,",
      "°'",
      "((",
      "[[1,",
      "n 45 e\n",
      "north ",
      "a ",
      "1;",
      "lat ",
    ];
    for (const piece of hostile) {
      const began = performance.now();
      const outcome = readCornerList(piece.repeat(Math.floor(200_000 / piece.length)), noAnswers, null);
      expect(outcome.findings.length).toBeGreaterThan(0);
      expect([piece, performance.now() - began < 5000]).toEqual([piece, true]);
    }
  });
});
