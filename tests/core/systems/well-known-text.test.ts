import { describe, expect, it, test } from "vitest";
import { lonLat } from "../../../src/core/plane/coordinate.ts";
import { createFrame } from "../../../src/core/plane/frame.ts";
import { lonLatSystem, statedSystem, systemOfCode } from "../../../src/core/systems/coordinate-system.ts";
import { esriWkt } from "../../../src/core/systems/esri-wkt.ts";
import { localSystem } from "../../../src/core/systems/local-system.ts";
import { systemOfWkt } from "../../../src/core/systems/system-of-wkt.ts";
import { text } from "../../../src/core/units.ts";
import { has, inFolder, said } from "../../support/outside.ts";
import { codes } from "../../support/project-files.ts";
import { createSystem, storedAnswers, storedTexts } from "./create-systems.ts";

function why(wkt: string): string {
  const read = systemOfWkt(wkt);
  expect(codes(read.findings)).toEqual(["systems/bad-system"]);
  return text(read.findings[0]?.message ?? [], "metric");
}

const feet = (unit: string) =>
  `PROJCS["a plane",GEOGCS["GCS_North_American_1983",DATUM["D_North_American_1983",SPHEROID["GRS_1980",6378137.0,298.257222101]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Lambert_Conformal_Conic"],PARAMETER["False_Easting",6561666.667],PARAMETER["False_Northing",1640416.667],PARAMETER["Central_Meridian",-122.0],PARAMETER["Standard_Parallel_1",39.8333333333333],PARAMETER["Standard_Parallel_2",38.3333333333333],PARAMETER["Latitude_Of_Origin",37.6666666666667],${unit}]`;

describe("well-known text that GDAL writes (tests/fixtures/systems/wkt.json)", () => {
  const known = storedTexts().filter(({ code }) => systemOfCode(code).ok);

  test("is of some thirty systems of every projection", () => {
    expect(known.length).toBeGreaterThan(30);
  });

  it.each(known.map((each) => [each.code, each] as const))(
    "EPSG %d is known by its numbers in every spelling",
    (code, each) => {
      for (const wkt of [each.esri, each.version1, each.version2]) {
        const read = systemOfWkt(wkt);
        expect([read.ok && read.value.code, codes(read.findings)]).toEqual([code, []]);
      }
    },
  );
});

describe("our own well-known text", () => {
  test("leads back to the same system for the whole list", () => {
    const lost: string[] = [];
    for (const { code } of storedAnswers()) {
      const system = createSystem(code);
      const wkt = esriWkt(system);
      const read = wkt === null ? null : systemOfWkt(wkt);
      const back = read?.ok === true ? read.value : null;
      // Several codes have the same numbers: (E-N) and (N-E), and the provinces' own.
      const isSame =
        back !== null && (back.code === code || (back.definition === system.definition && back.datum === system.datum));
      if (!isSame) lost.push(`${system.name}: ${wkt}`);
    }
    expect(lost).toEqual([]);
  });
});

describe.skipIf(!has("gdaltransform"))("GDAL reads our well-known text as the system of the register", () => {
  const chosen = storedTexts().flatMap(({ code }) => (systemOfCode(code).ok ? [createSystem(code)] : []));

  it.each(chosen.filter(({ kind }) => kind === "projected").map((system) => [system.name, system] as const))(
    "%s",
    (_name, system) => {
      const answer = storedAnswers().find(({ code }) => code === system.code);
      if (answer === undefined) throw new Error("a place of every system is stored");
      const [x, y] = inFolder({ "ours.prj": esriWkt(system) ?? "" }, (folder) =>
        said(
          "gdaltransform",
          ["-output_xy", "-s_srs", `EPSG:${system.code}`, "-t_srs", `ESRI::${folder}/ours.prj`],
          `${answer.x} ${answer.y}\n`,
        )
          .trim()
          .split(" ")
          .map(Number),
      );
      expect(Math.hypot((x ?? NaN) - answer.x, (y ?? NaN) - answer.y)).toBeLessThan(1e-4);
    },
  );
});

describe("text that cannot be told or read", () => {
  test("the plane of a project and a shift without a name have no text of their own", () => {
    expect(esriWkt(localSystem(createFrame(lonLat(-122, 38)), "m"))).toBeNull();
    const shifted = statedSystem("+proj=tmerc +lat_0=0 +lon_0=9 +ellps=bessel +towgs84=598.1,73.7,418.2 +units=m");
    expect(shifted.ok && esriWkt(shifted.value)).toBeNull();
    expect(esriWkt(lonLatSystem)).toContain('GEOGCS["GCS_WGS_1984"');
  });

  test("feet are told apart by their length, and a name that says otherwise is not passed over", () => {
    const unitOf = (unit: string) => {
      const read = systemOfWkt(feet(unit));
      return read.ok ? [read.value.code, read.value.unit] : codes(read.findings);
    };
    expect(unitOf('UNIT["Foot_US",0.3048006096012192]')).toEqual([2226, "us-ft"]);
    expect(unitOf('UNIT["Foot",0.3048006]')).toEqual([2226, "us-ft"]);
    expect(unitOf('UNIT["Foot",0.3048]')).toEqual([null, "ft"]);
    expect(unitOf('UNIT["Foot_US",0.3048]')).toEqual(["systems/bad-system"]);
    expect(unitOf('UNIT["Chain",20.1168]')).toEqual(["systems/bad-system"]);
    expect(unitOf('UNIT["Foot"]')).toEqual(["systems/bad-system"]);
  });

  test("a datum that needs a file of shifts is refused by its name", () => {
    const old = feet('UNIT["Foot_US",0.3048006096012192]').replaceAll("1983", "1927");
    const read = systemOfWkt(old);
    expect(codes(read.findings)).toEqual(["systems/grid-system"]);
    expect(text(read.findings[0]?.message ?? [], "metric")).toContain("NAD27");
    // The new Swiss frame is not the old one, though its name differs by one sign.
    expect(
      codes(
        systemOfWkt(
          'GEOGCS["GCS_CH1903",DATUM["D_CH1903",SPHEROID["Bessel_1841",6377397.155,299.1528128]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]]',
        ).findings,
      ),
    ).toEqual(["systems/grid-system"]);
  });

  test("heights and shifts around a system are set aside or taken", () => {
    const level = `COMPD_CS["plane and height",${feet('UNIT["Foot_US",0.3048006096012192]')},VERT_CS["NAVD88",VERT_DATUM["North American Vertical Datum 1988",2005],UNIT["metre",1]]]`;
    const read = systemOfWkt(level);
    expect(read.ok && read.value.code).toBe(2226);
    const own = systemOfWkt(
      'PROJCS["own",GEOGCS["own",DATUM["own",SPHEROID["Bessel 1841",6377397.155,299.1528128],TOWGS84[598.1,73.7,418.2,0.202,0.045,-2.455,6.7]],PRIMEM["Greenwich",0],UNIT["degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["latitude_of_origin",0],PARAMETER["central_meridian",9],PARAMETER["scale_factor",1],PARAMETER["false_easting",3500000],PARAMETER["false_northing",0],UNIT["metre",1]]',
    );
    expect(
      own.ok && [
        own.value.code,
        own.value.datum,
        own.value.definition.includes("+towgs84=598.1,73.7,418.2,0.202,0.045,-2.455,6.7"),
      ],
    ).toEqual([null, null, true]);
  });

  test("a code and numbers that contradict each other are not chosen between", () => {
    const wkt = feet('UNIT["Foot_US",0.3048006096012192],AUTHORITY["EPSG","2227"]');
    expect(why(wkt)).toContain("EPSG 2227");
  });

  test.each([
    ["nothing", "", "no well-known text"],
    ["words", "NAD83 UTM 10N", "no well-known text"],
    ["a text that is cut off", feet('UNIT["Meter",1.0]').slice(0, 300), "only part of one"],
    ["a site grid without a place on the earth", 'LOCAL_CS["site",UNIT["metre",1]]', "where on the earth"],
    [
      "an unknown datum on an old ellipsoid",
      feet('UNIT["Meter",1.0]')
        .replace("D_North_American_1983", "D_Own")
        .replace("GCS_North_American_1983", "GCS_Own")
        .replace('"GRS_1980",6378137.0,298.257222101', '"Clarke_1866",6378206.4,294.9786982'),
      "D_Own",
    ],
    [
      "longitudes from Paris",
      feet('UNIT["Meter",1.0]').replace('"Greenwich",0.0', '"Paris",2.337229166666667'),
      "Paris",
    ],
    ["grads", feet('UNIT["Meter",1.0]').replace('"Degree",0.0174532925199433', '"Grad",0.01570796326794897'), "Grad"],
    [
      "a projection of the moon",
      feet('UNIT["Meter",1.0]').replace("Lambert_Conformal_Conic", "Quadrilateralized"),
      "Quadrilateralized",
    ],
    ["a number that is none", feet('UNIT["Meter",1.0]').replace("6561666.667", "east"), "False_Easting"],
  ])("%s: refused with the reason", (_what, wkt, reason) => {
    expect(why(wkt)).toContain(reason);
  });

  test("brackets in brackets without an end, and a text of megabytes, are refused at once", () => {
    expect(why("A[".repeat(9000))).toContain("no well-known text");
    expect(why(`${"A[".repeat(4000)}1${"]".repeat(4000)}`)).toContain("no well-known text");
    expect(why(`GEOGCS["${"x".repeat(3_000_000)}"]`)).toContain("no well-known text");
  });
});
