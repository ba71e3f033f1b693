import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readFile } from "../../../src/readers/read-file.ts";
import { noAnswers } from "../../../src/readers/reading.ts";
import { createTrenchPlan } from "../../support/create-trench-plan.ts";
import { handedOver, textsOf } from "../../support/handed-over.ts";
import { fileOf, found, saidOf } from "../../support/survived.ts";
import { apart_m, givenFeatures, valueIn } from "./map-files.ts";

const folder = "tests/fixtures/exchange/tables";
const tableFile = (name: string) => new Uint8Array(readFileSync(`${folder}/${name}`));
/** A table of text. */
const table = (text: string, answers = {}) => found("table.csv", text, answers);
const said = (text: string | Uint8Array, answers = {}) => saidOf("table.csv", text, answers);
const bytes = (...all: readonly number[]) => Uint8Array.from(all);

describe("files that GDAL and GPSBabel wrote from the same features", () => {
  test.each(["gdal-xy.csv", "gdal-xyz-semicolon.csv"])("%s: points with names, places and values", async (name) => {
    const { features, questions } = await found(name, tableFile(name));
    const given = givenFeatures("Point");
    expect(questions).toEqual([]);
    expect(features.map((each) => each.name)).toEqual(given.map((each) => each.name));
    for (const [i, feature] of given.entries()) {
      const [lon = 0, lat = 0] = feature.geometry.type === "Point" ? feature.geometry.coordinates : [];
      const back = features[i]?.geometry;
      if (back?.type !== "Point") throw new Error("lost");
      expect(back.coordinates[0]).toBe(lon);
      expect(back.coordinates[1]).toBe(lat);
      expect(valueIn(features[i], "role")).toBe("mark");
    }
  });

  test("a height whose head names no unit stays among the values: it is not taken for metres here", async () => {
    const { features } = await found("a.csv", tableFile("gdal-xyz-semicolon.csv"));
    expect(features.map((each) => valueIn(each, "Z"))).toEqual([101.25, 0]);
    const { features: told } = await found("a.csv", tableFile("gdal-xyz-semicolon.csv"), { unit: "m" });
    expect(told.map(({ geometry }) => geometry.type === "Point" && geometry.coordinates[2])).toEqual([101.25, 0]);
  });

  test.each([
    ["gdal-wkt.csv", {}],
    ["gdal-us-feet.csv", { system: "EPSG:2226" }],
  ] as const)("%s: every shape as well-known text, with a byte order mark or tabs", async (name, answers) => {
    const { features } = await found(name, tableFile(name), answers);
    const given = givenFeatures();
    expect(features.map((each) => each.name)).toEqual(given.map((each) => each.name));
    for (const [i, feature] of given.entries()) {
      const back = features[i];
      if (back === undefined) throw new Error("lost");
      expect(apart_m(back.geometry, feature.geometry), feature.name).toBeLessThan(0.002);
    }
  });

  test("feet without a system are asked for it, never taken as degrees", async () => {
    const { features, questions } = await found("a.csv", tableFile("gdal-us-feet.csv"));
    expect(features).toEqual([]);
    expect(questions.map(({ about }) => about)).toEqual(["system"]);
  });

  test("babel-unicsv.csv: the six decimals it keeps, under the names", async () => {
    const { features } = await found("a.csv", tableFile("babel-unicsv.csv"));
    expect(features.map((each) => each.name)).toEqual(["Gate pin", "=1+1"]);
    for (const [i, feature] of givenFeatures("Point").entries()) {
      const back = features[i];
      if (back === undefined) throw new Error("lost");
      expect(apart_m(back.geometry, feature.geometry)).toBeLessThan(0.12);
    }
  });
});

describe("round trip of what is handed over", () => {
  const plan = createTrenchPlan((station_m) => 100 + station_m / 50);

  test.each([null, "EPSG:32618", "EPSG:2260"])(
    "in %s every thing of every layer comes back within 2 mm",
    async (system) => {
      const of = ["rows", "posts", "pegs", "blocks", "parcels", "route", "stations", "fittings"] as const;
      const handed = handedOver(plan, { as: "csv", of, system });
      const texts = textsOf(handed);
      for (const layer of handed.layers) {
        const { features } = await found(`${layer.kind}.csv`, texts[`${layer.kind}.csv`] ?? "", { system });
        const handedOut = [...layer.features()];
        expect(features.map(({ name }) => name)).toEqual(handedOut.map((feature) => handed.names.of(feature)));
        for (const [i, { geometry }] of handedOut.entries()) {
          const back = features[i]?.geometry;
          const corners =
            geometry.shape === "point"
              ? [geometry.place]
              : geometry.shape === "line"
                ? geometry.places
                : geometry.polygons.flat(2);
          const positions =
            back?.type === "Point"
              ? [back.coordinates]
              : back?.type === "LineString"
                ? back.coordinates
                : back?.type === "Polygon"
                  ? back.coordinates.flatMap((ring) => ring.slice(0, -1))
                  : [];
          expect(positions).toHaveLength(corners.length);
          for (const [k, { at }] of corners.entries()) {
            expect(Math.abs((positions[k]?.[0] ?? 0) - at[0])).toBeLessThan(1e-8);
            expect(Math.abs((positions[k]?.[1] ?? 0) - at[1])).toBeLessThan(1e-8);
          }
        }
      }
    },
  );
});

describe("heads and columns", () => {
  test.each([
    ["Latitude,Longitude", "38.2921,-122.7165"],
    ["LAT;LON", "38.2921;-122.7165"],
    ["lon\tlat", "-122.7165\t38.2921"],
    ["lng|lat", "-122.7165|38.2921"],
    ['"Longitude (deg)","Latitude [deg]"', '"-122.7165","38.2921"'],
    ["Längengrad;Breitengrad", "-122,7165;38,2921"],
    ["longitud;latitud", "-122,7165;38,2921"],
  ])("%s", async (head, line) => {
    const { features } = await table(`${head}\r\n${line}\r\n`);
    expect(features.map(({ geometry }) => geometry)).toEqual([{ type: "Point", coordinates: [-122.7165, 38.2921] }]);
  });

  test("feet in the head of a height are feet, and survey feet are survey feet (NIST SP 811, appendix B.6)", async () => {
    const height = async (head: string) => {
      const { features } = await table(`lon,lat,${head}\n-122.7165,38.2921,1000\n`);
      const [first] = features;
      return first?.geometry.type === "Point" ? first.geometry.coordinates[2] : undefined;
    };
    expect(await height("Elevation (ft)")).toBeCloseTo(304.8, 9);
    expect(await height("elev_usft")).toBeCloseTo(304.8006096, 6);
    expect(await height("height_m")).toBe(1000);
  });

  test("with coordinates in feet a height without a unit is asked for", async () => {
    const text = "point,northing,easting,elevation\nA,1869008.6,6356019.2,100\n";
    const { questions } = await table(text, { system: "EPSG:2226" });
    expect(questions.map(({ about, offered }) => [about, offered.length])).toEqual([["unit", 3]]);
    const { features } = await table(text, { system: "EPSG:2226", unit: "us-ft" });
    const [first] = features;
    expect(first?.geometry.type === "Point" && first.geometry.coordinates[2]).toBeCloseTo(30.48006096, 7);
  });

  test("metres in the heads and feet in the system do not agree, and are refused", async () => {
    expect(await said("easting_m,northing_m\n6356019.2,1869008.6\n", { system: "EPSG:2226" })).toEqual([
      "readers/units-disagree",
    ]);
    expect(await said("easting_ft,northing_ft\n6356019.2,1869008.6\n", { system: "EPSG:2226" })).toEqual([]);
  });

  test("a title above the heads is left out, and told", async () => {
    const text = "Points of the oak corner\n\nname,lon,lat\na,-122.7,38.29\n";
    expect((await table(text)).features).toHaveLength(1);
    expect(await said(text)).toEqual(["readers/lines-before-heads"]);
  });

  test("a table without places says what its heads are", async () => {
    expect(await said("variety,count\nred,12\n")).toEqual(["readers/columns-without-place"]);
    expect(await said("")).toEqual(["readers/columns-without-place"]);
  });

  test("lines without a number are left out, with their line and why", async () => {
    const text = 'name,lon,lat\na,-122.7,38.29\nb,,38.29\n"c\nd",-122.7,x\ne,-122.7\n';
    const outcome = await table(text);
    expect(outcome.features.map(({ name }) => name)).toEqual(["a"]);
    expect(await said(text)).toEqual(["readers/lines-without-place"]);
    expect(await said("name,lon,lat\nb,,38.29\n")).toEqual(["readers/nothing-found", "readers/lines-without-place"]);
  });

  test("cells beyond the heads are kept, zeros in front of numbers too", async () => {
    const { features } = await table("lon,lat,tag\n-122.7,38.29,007,more\n");
    expect(features[0]?.values).toEqual([
      ["tag", "007"],
      ["column 4", "more"],
    ]);
  });

  test("corners under one name make a line, with parts and rings an area; a ring of two corners makes none", async () => {
    const { features } = await table(
      "name,corner,lon,lat\na,1,-122.7,38\na,2,-122.71,38\nb,1,-122.7,38.1\nb,2,-122.7,38.2\nb,3,-122.7,38.3\n",
    );
    expect(features.map(({ name, geometry }) => [name, geometry.type])).toEqual([
      ["a", "LineString"],
      ["b", "LineString"],
    ]);
    expect(await said("name,ring,corner,lon,lat\na,1,1,-122.7,38\na,1,2,-122.71,38\n")).toContain(
      "readers/lines-without-place",
    );
  });
});

describe("without heads", () => {
  const form = "101,4265432.12,512345.45,102.3,FENCE\n102,4265442.12,512355.45,,TREE\n";

  test("point, northing, easting, height, code: system and order are asked", async () => {
    const { questions, features } = await found("job.txt", form);
    expect(questions.map(({ about }) => about)).toEqual(["system", "order"]);
    expect(features).toEqual([]);
  });

  test("answered, the first line is a point like the others", async () => {
    const { features } = await table(form, { system: "EPSG:32610", isSwapped: false });
    const swapped = form.replace(/^(\d+),([\d.]+),([\d.]+)/gm, "$1,$3,$2");
    expect((await table(swapped, { system: "EPSG:32610", isSwapped: true })).features).toEqual(features);
    expect(features.map(({ name, values }) => [name, values])).toEqual([
      ["101", [["code", "FENCE"]]],
      ["102", [["code", "TREE"]]],
    ]);
    const [first, second] = features.map(({ geometry }) => geometry.type === "Point" && geometry.coordinates.length);
    expect([first, second]).toEqual([3, 2]);
  });

  test("parted by spaces or tabs", async () => {
    for (const gap of ["   ", "\t"]) {
      const { features } = await table(form.replace(",,", ",0,").replaceAll(",", gap), {
        system: "EPSG:32610",
        isSwapped: false,
      });
      expect(features).toHaveLength(2);
    }
  });

  test("of degrees the order is asked, unless one of the two can be no latitude", async () => {
    expect((await table("38.29210,-122.71650\n")).features[0]?.geometry).toEqual({
      type: "Point",
      coordinates: [-122.7165, 38.2921],
    });
    expect((await table("-122.71650,38.29210\n")).features[0]?.geometry).toEqual({
      type: "Point",
      coordinates: [-122.7165, 38.2921],
    });
    const open = await table("45.12345,8.12345\n");
    expect(open.questions.map(({ about }) => about)).toEqual(["order"]);
    expect((await table("45.12345,8.12345\n", { isSwapped: false })).features[0]?.geometry).toEqual({
      type: "Point",
      coordinates: [8.12345, 45.12345],
    });
  });

  test("numbers with the decimals of a survey may be metres of a local plane: the system is asked", async () => {
    const { questions } = await table("a,22.5,38.25\nb,22.75,38.5\n");
    expect(questions.map(({ about }) => about)).toEqual(["system", "order"]);
    expect(questions[0]?.offered.map(({ value }) => value)).toEqual(["EPSG:4326"]);
  });
});

describe("numbers", () => {
  test("decimal commas between semicolons are told (FORMATS A6: 38,2921;-122,7165)", async () => {
    const text = "lat;lon\n38,2921;-122,7165\n";
    expect((await table(text)).features[0]?.geometry).toEqual({ type: "Point", coordinates: [-122.7165, 38.2921] });
    expect(await said(text)).toEqual(["readers/decimal-commas"]);
  });

  test("thousands with points and decimals with commas, or spaces or apostrophes between thousands", async () => {
    const answers = { system: "EPSG:32610" };
    const plain = await table("northing;easting\n4265432.10;512345.45\n", answers);
    for (const line of ["4.265.432,10;512.345,45", "4 265 432,10;512 345,45", "4'265'432.10;512'345.45"]) {
      expect((await table(`northing;easting\n${line}\n`, answers)).features).toEqual(plain.features);
    }
  });

  test('"38,292" may be 38 thousand: refused; so are points and commas mixed', async () => {
    expect(await said('lat,lon\n"38,292","12,716"\n')).toEqual(["readers/decimals-doubtful"]);
    expect(await said("lat;lon\n38,2921;-122.7165\n")).toEqual(["readers/decimals-doubtful"]);
  });

  test.each([
    ["38°17'31.56\"N", "122°42'59.4\"W"],
    ["N 38 17 31.56", "W 122 42 59.4"],
    ["38° 17.526' N", "122° 42.99' W"],
    ["38:17:31.56", "-122:42:59.4"],
    ["38.2921 N", "122.7165 W"],
    ["38º17′31,56″N", "122º42′59,4″W"],
  ])("degrees, minutes and seconds: %s %s", async (lat, lon) => {
    const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;
    const { features } = await table(`lat,lon\n${quoted(lat)},${quoted(lon)}\n`);
    const [first] = features;
    const [x = 0, y = 0] = first?.geometry.type === "Point" ? first.geometry.coordinates : [];
    expect(x).toBeCloseTo(-122.7165, 9);
    expect(y).toBeCloseTo(38.2921, 9);
  });

  test("sixty minutes, a sign with a letter, and two latitudes are no place", async () => {
    for (const [lat, lon] of [
      ["38 60 00N", "122 42 59W"],
      ["-38 10 00N", "122 42 59W"],
      ["38 10 00N", "122 42 59N"],
    ]) {
      expect(await said(`lat,lon\n${lat},${lon}\n`)).toEqual(["readers/nothing-found", "readers/lines-without-place"]);
    }
  });

  test("letters say which is which, whatever the heads say", async () => {
    const { features } = await table("lat,lon\n122 42 59.4W,38 17 31.56N\n");
    const [first] = features;
    expect(first?.geometry.type === "Point" && first.geometry.coordinates[1]).toBeCloseTo(38.2921, 9);
  });

  test("a latitude beyond 90 asks whether the heads stand the wrong way round; projected numbers ask for the system", async () => {
    const swapped = "name,lat,lon\na,-122.7165,38.2921\n";
    expect((await table(swapped)).questions.map(({ about }) => about)).toEqual(["order"]);
    expect((await table(swapped, { isSwapped: true })).features[0]?.geometry).toEqual({
      type: "Point",
      coordinates: [-122.7165, 38.2921],
    });
    expect(await said(swapped, { isSwapped: false })).toContain("readers/nothing-found");
    const projected = await table("name,lat,lon\na,4265432.1,512345.4\n");
    expect(projected.questions.map(({ about }) => about)).toEqual(["system"]);
  });
});

describe("letters", () => {
  const encoded = (text: string, encoding: "utf-16le" | "utf-16be") =>
    Uint8Array.from(
      [...text].flatMap((letter) => {
        const code = letter.charCodeAt(0);
        return encoding === "utf-16le" ? [code & 255, code >> 8] : [code >> 8, code & 255];
      }),
    );

  test("UTF-8 with and without a mark, UTF-16 both ways", async () => {
    const text = "name,lon,lat\nViña Süd,-122.7,38.29\n";
    for (const content of [
      text,
      `\uFEFF${text}`,
      encoded(`\uFEFF${text}`, "utf-16le"),
      encoded(`\uFEFF${text}`, "utf-16be"),
      encoded(text, "utf-16le"),
    ]) {
      expect((await found("table.csv", content)).features[0]?.name).toBe("Viña Süd");
    }
  });

  test("Windows-1252 is read as such, and told", async () => {
    const content = Uint8Array.from([..."name,lon,lat\nViña,-122.7,38.29\n"].map((letter) => letter.charCodeAt(0)));
    expect((await found("table.csv", content)).features[0]?.name).toBe("Viña");
    expect(await said(content)).toEqual(["readers/letters-differ"]);
  });

  test("a file that is no text, by whatever name, is refused", async () => {
    expect(await said(bytes(0, 1, 2, 3, 4, 5))).toEqual(["readers/broken-file"]);
    expect(await said(bytes(0x50, 0x4b, 3, 4, 0, 0, 0, 0))).toEqual(["readers/broken-file"]);
  });
});

describe("hostile and broken files", () => {
  test("HTML, formulas and names of the language are text like any other", async () => {
    const { features } = await table(
      "name,lon,lat,__proto__,constructor\n<img src=x onerror=alert(1)>,-122.7,38.29,a,b\n'=1+1,-122.7,38.29,c,d\n",
    );
    expect(features.map(({ name }) => name)).toEqual(["<img src=x onerror=alert(1)>", "=1+1"]);
    expect(features[0]?.values).toEqual([
      ["__proto__", "a"],
      ["constructor", "b"],
    ]);
    expect(Object.hasOwn(Object.prototype, "a")).toBe(false);
  });

  test("a quote that is never closed, an endless line, thousands of cells", async () => {
    expect(await said('name,lon,lat\n"a,-122.7,38.29\n')).toEqual(["readers/broken-file"]);
    expect(await said(`name,lon,lat\n"${"a".repeat(40_000)}",-122.7,38.29\n`)).toEqual(["readers/broken-file"]);
    expect(await said(`lon,lat\n-122.7,${"3".repeat(1_100_000)}`)).toEqual(["readers/broken-file"]);
    expect(await said(`lon,lat\n${"1,".repeat(1001)}\n`)).toEqual(["readers/broken-file"]);
  });

  test("more than 300,000 lines or 3 million cells are refused", async () => {
    expect(await said(`lon,lat\n${`1,2${",3".repeat(900)}\n`.repeat(3400)}`)).toEqual(["readers/too-many-lines"]);
    expect(await said(`lon,lat\n${"-122.7,38.29\n".repeat(300_001)}`)).toEqual(["readers/too-many-lines"]);
  });

  test("a file cut in the middle of a line, or of a letter, keeps what is whole", async () => {
    const text = "name,lon,lat\nViña,-122.71,38.29\nSüd,-122.7";
    expect((await table(text)).features).toHaveLength(1);
    const cut = new TextEncoder().encode("name,lon,lat\nViña,-122.71,38.29\nSñ").slice(0, -1);
    expect((await found("table.csv", cut)).features).toHaveLength(1);
    expect(await said(cut)).toEqual(["readers/lines-without-place"]);
  });

  test("numbers that are no place in the system are left out, and told", async () => {
    expect(await said("easting,northing\n1e300,1e300\n", { system: "EPSG:32610" })).toContain(
      "readers/lines-without-place",
    );
    expect(await said("lon,lat\n-122.7,38.2\n", { system: "EPSG:27700" })).not.toEqual([]);
  });

  test("well-known text that is broken, empty, too deep or of its own system", async () => {
    const wkt = (text: string) => `wkt\n"${text}"\n`;
    for (const text of ["POINT (1", "POINT EMPTY", `${"(".repeat(500)}`, "POLYGON ((0 0,1 1,0 0))", "CIRCLE (1 2)"]) {
      const codes = await said(wkt(text), { system: "EPSG:4326" });
      expect(codes, text).toContain("readers/nothing-found");
    }
    const own = await table(wkt("SRID=32610;POINT (512345.45 4265432.12)"), { system: "EPSG:4326" });
    expect(own.features[0]?.geometry.type === "Point" && own.features[0].geometry.coordinates[0]).toBeCloseTo(
      -122.858,
      3,
    );
    expect((await table(wkt("MULTIPOINT ((1.12345 2),(3 4))"))).features[0]?.geometry.type).toBe("MultiPoint");
  });

  test("reading stops when it is asked to", async () => {
    const stop = new AbortController();
    stop.abort();
    const many = fileOf("table.csv", `lon,lat\n${"-122.7,38.29\n".repeat(20_000)}`);
    const outcome = await readFile(many, noAnswers, { signal: stop.signal });
    expect(outcome.findings.map(({ code }) => code)).toEqual(["readers/stopped"]);
  });
});
