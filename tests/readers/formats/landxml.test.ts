import type { Position } from "geojson";
import { describe, expect, test } from "vitest";
import { landXmlReader } from "../../../src/readers/formats/landxml.ts";
import { type FoundFeature, noAnswers } from "../../../src/readers/reading.ts";
import { fileOf, found, saidOf } from "../../support/survived.ts";

/* Invented, around the middle meridian of UTM zone 10 (123 W). */
const metres = '<Units><Metric linearUnit="meter" areaUnit="squareMeter"/></Units>';
const utm = '<CoordinateSystem name="UTM10" epsgCode="32610"/>';
const file = (inside: string, head = metres + utm) =>
  `<?xml version="1.0"?><LandXML xmlns="http://www.landxml.org/schema/LandXML-1.2" version="1.2">${head}${inside}</LandXML>`;
const point = (name: string, text: string, more = "") => `<CgPoint name="${name}"${more}>${text}</CgPoint>`;
const points = (inside: string) => `<CgPoints name="stakes">${inside}</CgPoints>`;
const line = (from: string, to: string) => `<Line><Start>${from}</Start><End>${to}</End></Line>`;

function placeOf(feature: FoundFeature | undefined): Position {
  if (feature?.geometry.type !== "Point") throw new Error("not a point");
  return feature.geometry.coordinates;
}

describe("what survey offices write", () => {
  test("northing comes first, then easting, then a height", async () => {
    const { features } = await found(
      "a.xml",
      file(points(point("1", "4240000 500000 101.5", ' code="IP" desc="iron pin"'))),
    );
    const [lon, lat, height] = placeOf(features[0]);
    expect(lon).toBeCloseTo(-123, 9);
    expect(lat).toBeCloseTo(38.3081, 4);
    expect(height).toBe(101.5);
    expect(features[0]).toMatchObject({
      name: "1",
      layer: "stakes",
      values: [
        ["code", "IP"],
        ["desc", "iron pin"],
      ],
    });
  });

  test("a parcel whose corners are points by name is an outline", async () => {
    const corners = ["4240000 500000", "4240000 500100", "4240080 500100", "4240080 500000"];
    const named = points(corners.map((text, i) => point(`P${i}`, text)).join(""));
    const sides = corners.map((_, i) => `<Line><Start pntRef="P${i}"/><End pntRef="P${(i + 1) % 4}"/></Line>`).join("");
    const parcel = `<Parcels><Parcel name="Lot 7" area="8000"><CoordGeom>${sides}</CoordGeom></Parcel></Parcels>`;
    const { features } = await found("a.xml", file(parcel + named));
    const lot = features.find(({ name }) => name === "Lot 7");
    expect(lot?.geometry).toMatchObject({ type: "Polygon", coordinates: [{ length: 5 }] });
  });

  test("a curve becomes corners on its circle, whichever way it turns", async () => {
    const curve = (rot: string) =>
      `<Curve rot="${rot}"><Start>4240000 500000</Start><Center>4240000 500010</Center><End>4240010 500010</End></Curve>`;
    for (const [rot, share] of [
      ["cw", 0.25],
      ["ccw", 0.75],
    ] as const) {
      const text = file(
        `<Alignments><Alignment name="a"><CoordGeom>${curve(rot)}</CoordGeom></Alignment></Alignments>`,
      );
      const { features } = await found("a.xml", text);
      const { geometry } = features[0] ?? {};
      if (geometry?.type !== "LineString") throw new Error("not a line");
      // The clockwise way from the west of the circle to its north is a quarter.
      expect(geometry.coordinates.length).toBeGreaterThan(90 * share);
      const north = Math.max(...geometry.coordinates.map(([, lat = 0]) => lat));
      const south = Math.min(...geometry.coordinates.map(([, lat = 0]) => lat));
      expect(north - south > 15 / 111_000).toBe(rot === "ccw");
      expect(await saidOf("a.xml", text)).toEqual(["readers/curves-as-corners"]);
    }
  });

  test("pieces that do not meet are a line in parts, lists of points one line", async () => {
    const gap = line("4240000 500000", "4240000 500010") + line("4240000 500020", "4240000 500030");
    const list = "<IrregularLine><PntList3D>4240000 500000 1 4240010 500000 2</PntList3D></IrregularLine>";
    const text = file(
      `<PlanFeatures name="fences"><PlanFeature name="a"><CoordGeom>${gap}</CoordGeom></PlanFeature><PlanFeature name="b"><CoordGeom>${list}</CoordGeom></PlanFeature></PlanFeatures>`,
    );
    const { features } = await found("a.xml", text);
    expect(features.map(({ geometry }) => geometry.type)).toEqual(["MultiLineString", "LineString"]);
  });

  test("points and breaklines of a surface come in, its triangles do not", async () => {
    const surface =
      '<Surfaces><Surface name="ground"><SourceData><Breaklines><Breakline><PntList3D>4240000 500000 1 4240010 500000 2</PntList3D></Breakline></Breaklines></SourceData>' +
      '<Definition><Pnts><P id="1">4240000 500000 10</P><P id="2">4240000 500010 11</P></Pnts><Faces><F>1 2 3</F></Faces></Definition></Surface></Surfaces>';
    const { features } = await found("a.xml", file(surface));
    expect(features.map(({ geometry, layer }) => [geometry.type, layer])).toEqual([
      ["LineString", "ground"],
      ["Point", "ground"],
      ["Point", "ground"],
    ]);
  });

  test("a spiral and a profile are not read, and told", async () => {
    const text = file(
      `<Alignments><Alignment name="a"><CoordGeom><Spiral><Start>1 2</Start><End>3 4</End></Spiral></CoordGeom><Profile/></Alignment></Alignments>${points(point("1", "4240000 500000"))}`,
    );
    expect((await found("a.xml", text)).features.length).toBe(1);
    expect(await saidOf("a.xml", text)).toEqual(["readers/not-drawn"]);
  });
});

describe("units, system and order", () => {
  const one = points(point("1", "1900000 6360000"));
  const feet = (unit: string) => `<Units><Imperial linearUnit="${unit}"/></Units>`;
  const california = '<CoordinateSystem epsgCode="2226"/>';

  test("survey feet in a system of survey feet leave nothing open", async () => {
    const { questions } = await found("a.xml", file(one, feet("USSurveyFoot") + california));
    expect(questions).toEqual([]);
  });

  // The trap: 4.04 m at 6.36 million feet (FORMATS, A6).
  test.each(["foot", "inch"])("%s in a system of survey feet is asked about", async (unit) => {
    const { questions } = await found("a.xml", file(one, feet(unit) + california));
    expect(questions.map(({ about }) => about)).toEqual(["unit"]);
  });

  test("without units they are asked about, without a system that is", async () => {
    const noUnits = await found("a.xml", file(one, california));
    expect(noUnits.questions.map(({ about }) => about)).toEqual(["unit"]);
    const noSystem = await found("a.xml", file(one, feet("USSurveyFoot")));
    expect(noSystem.questions.map(({ about }) => about)).toEqual(["system"]);
    const zero = await found("a.xml", file(one, `${feet("USSurveyFoot")}<CoordinateSystem epsgCode="0"/>`));
    expect(zero.questions.map(({ about }) => about)).toEqual(["system"]);
  });

  test("a code that is not served is asked about, and told", async () => {
    const text = file(one, `${metres}<CoordinateSystem epsgCode="27700"/>`);
    expect((await found("a.xml", text)).questions.map(({ about }) => about)).toEqual(["system"]);
    expect(await saidOf("a.xml", text)).toEqual(["readers/stated-system-unread"]);
  });

  test("easting before northing is found out and asked about", async () => {
    const text = file(points(point("1", "500000 4240000")));
    expect((await found("a.xml", text)).questions.map(({ about }) => about)).toEqual(["order"]);
    const { features } = await found("a.xml", text, { isSwapped: true });
    expect(placeOf(features[0])[0]).toBeCloseTo(-123, 9);
  });

  test("heights in feet beside a plan in metres are metres", async () => {
    const units = '<Units><Metric linearUnit="meter" elevationUnit="feet"/></Units>';
    const { features } = await found("a.xml", file(points(point("1", "4240000 500000 100")), units + utm));
    expect(placeOf(features[0])[2]).toBeCloseTo(30.48, 9);
  });

  test("heights in survey feet are metres", async () => {
    const text = file(points(point("1", "1900000 6360000 3937")), feet("USSurveyFoot") + california);
    expect(placeOf((await found("a.xml", text)).features[0])[2]).toBeCloseTo(1200, 9);
  });
});

describe("broken and hostile files", () => {
  const whole = file(points(point("1", "4240000 500000")));
  const bomb = '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>';
  const outside = '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]>';

  test.each([
    ["cut off", whole.slice(0, -20), "readers/broken-file"],
    ["with entities of its own", whole.replace("?>", `?>${bomb}`), "readers/broken-file"],
    ["with entities from outside", whole.replace("?>", `?>${outside}`), "readers/broken-file"],
    ["without a place", file(""), "readers/nothing-found"],
  ])("a file that is %s is refused", async (_, text, code) => {
    expect(await saidOf("a.xml", text)).toEqual([code]);
  });

  test("XML of another kind, called .landxml, is refused", async () => {
    expect(await saidOf("a.landxml", "<?xml version='1.0'?><invoice/>")).toEqual(["readers/broken-file"]);
  });

  test.each([
    ["of words", point("2", "north east")],
    ["of one number", point("2", "4240000")],
    ["that refer to nothing", point("2", "", ' pntRef="9"')],
    ["that refer to each other", point("2", "", ' pntRef="3"') + point("3", "", ' pntRef="2"')],
    ["beyond all numbers", point("2", "1e999 1")],
  ])("points %s are left out and told, the others come in", async (_, inside) => {
    const text = file(points(point("1", "4240000 500000") + inside));
    expect((await found("a.xml", text)).features.map(({ name }) => name)).toEqual(["1"]);
    expect(await saidOf("a.xml", text)).toEqual(["readers/without-numbers"]);
  });

  test("names and properties of the language are pairs like others", async () => {
    const feature = '<Feature><Property label="__proto__" value="&lt;script&gt;"/></Feature>';
    const parcel = `<Parcels><Parcel name="constructor"><CoordGeom>${line("4240000 500000", "4240000 500010")}</CoordGeom>${feature}</Parcel></Parcels>`;
    const { features } = await found("a.xml", file(parcel));
    expect(features[0]).toMatchObject({ name: "constructor", values: [["__proto__", "<script>"]] });
  });

  test("more corners than fit into memory are refused", async () => {
    const list = `<IrregularLine><PntList2D>${"1 2 ".repeat(600_001)}</PntList2D></IrregularLine>`;
    const text = file(
      `<PlanFeatures><PlanFeature name="a"><CoordGeom>${list}</CoordGeom></PlanFeature></PlanFeatures>`,
    );
    expect(await saidOf("a.xml", text)).toEqual(["readers/too-much-drawn"]);
  });

  test("reading is stopped when it is asked to", async () => {
    const stop = new AbortController();
    const outcome = await landXmlReader.read(
      fileOf("a.xml", file(points(point("1", "4240000 500000").repeat(20_000)))),
      noAnswers,
      {
        signal: stop.signal,
        progress: () => stop.abort(),
      },
    );
    expect(outcome.findings.map(({ code }) => code)).toEqual(["readers/stopped"]);
  });
});
