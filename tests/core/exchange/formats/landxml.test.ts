import { describe, expect, test } from "vitest";
import { layerKinds } from "../../../../src/core/exchange/layers/layer.ts";
import { createPlanner } from "../../../../src/core/planner.ts";
import { handedOver, textsOf } from "../../../support/handed-over.ts";
import { has, inFolder, said } from "../../../support/outside.ts";
import { readSample } from "../../../support/sample-plans.ts";
import { survived } from "../../../support/survived.ts";

/*
 * The schema LandXML-1.2.xsd is not here: its terms of use are not settled (FORMATS, open points). What it asks for was read off it in the trial that
 * FORMATS.md tells of, and is held below; element by element from memory.
 */
const most_m = 0.002;
const brook = createPlanner().plan(readSample("brook-and-two-blocks"));
const strip = createPlanner().plan(readSample("crooked-strip"));
const light = layerKinds.filter((kind) => kind !== "vines" && kind !== "stakes");

const textOf = (choice: Parameters<typeof handedOver>[1], plan = strip) => {
  const [text = ""] = Object.values(textsOf(handedOver(plan, { as: "landxml", ...choice })));
  return text;
};

describe("what a file says about itself", () => {
  // The foot and the US survey foot are two values of linearUnit; all five of these attributes are asked for.
  test.each([
    [
      "m",
      '<Metric areaUnit="squareMeter" linearUnit="meter" volumeUnit="cubicMeter" temperatureUnit="celsius" pressureUnit="HPA"',
    ],
    [
      "ft",
      '<Imperial areaUnit="squareFoot" linearUnit="foot" volumeUnit="cubicFeet" temperatureUnit="fahrenheit" pressureUnit="inHG"',
    ],
    ["us-ft", '<Imperial areaUnit="squareFoot" linearUnit="USSurveyFoot" volumeUnit="cubicFeet"'],
  ] as const)("its unit, %s", (unit, element) => {
    expect(textOf({ of: ["marks", "posts"], unit })).toContain(element);
  });

  test("date, time and version, and the code of its system", () => {
    const text = textOf({ of: ["posts"], system: "EPSG:32633" });
    expect(text).toMatch(/<LandXML [^>]*version="1.2" date="2026-11-26" time="06:00:00"/);
    expect(text).toMatch(/<CoordinateSystem [^>]*epsgCode="32633"/);
  });

  test("a local plane by its definition, without a code", () => {
    const text = textOf({ of: ["posts"] });
    expect(text).toMatch(/<CoordinateSystem [^>]*desc="\+proj=tmerc [^"]*\+units=m \+no_defs"\/>/);
    expect(text).not.toContain("epsgCode");
  });
});

describe("the trench", () => {
  const text = textOf({ of: ["route", "stations"] });
  const [first = ""] = /<Alignment .*?<\/Alignment>/s.exec(text) ?? [];

  test("is an alignment with its length and where its stations begin", () => {
    const [, length = ""] = /^<Alignment name="[^"]+" length="([\d.]+)" staStart="0.0000">/.exec(first) ?? [];
    const lines = [...first.matchAll(/<Line length="([\d.]+)">/g)].map(([, each]) => Number(each));
    expect(Number(length)).toBeGreaterThan(0);
    expect(lines.reduce((sum, each) => sum + each, 0)).toBeCloseTo(Number(length), 2);
  });

  test("has the ground as a surface and the pipe as what is laid, station by station", () => {
    const [, list = ""] = /<ProfSurf name="ground"><PntList2D>([^<]+)</.exec(first) ?? [];
    const ground = list.split(" ").map(Number);
    const pipe = [...first.matchAll(/<PVI>(\S+) (\S+)<\/PVI>/g)].map(([, station, height]) => [
      Number(station),
      Number(height),
    ]);
    const profile = strip.trench?.profiles[0];
    expect(ground.length / 2).toBe(pipe.length);
    expect(pipe.length).toBeGreaterThan(5);
    expect(ground[1]).toBeCloseTo(profile?.ground_m[0] ?? Number.NaN, 3);
    for (const [i, [station, height = 0]] of pipe.entries()) {
      expect(station).toBe(ground[2 * i]);
      expect(height).toBeLessThan(ground[2 * i + 1] ?? 0);
    }
  });

  test("stations end where the alignment ends, in a projection that stretches too", () => {
    for (const system of ["local", "EPSG:32633"]) {
      const projected = textOf({ of: ["route", "stations"], system });
      const [whole = ""] = /<Alignment .*?<\/Alignment>/s.exec(projected) ?? [];
      const [, length = ""] = / length="([\d.]+)"/.exec(whole) ?? [];
      const last = [...whole.matchAll(/<PVI>(\S+) /g)].at(-1)?.[1];
      expect(Number(last)).toBeCloseTo(Number(length), 2);
    }
  });

  test("without heights there is an alignment and no profile", () => {
    const flat = textOf({ of: ["route", "stations"] }, brook);
    expect(flat).toContain("<Alignment ");
    expect(flat).not.toContain("<Profile");
  });

  test("stations alone make an alignment through their places", () => {
    const alone = textOf({ of: ["stations"] });
    expect(alone).toContain("<Alignment ");
    expect(alone).toContain("<ProfAlign ");
  });
});

describe("read back by our own reader", () => {
  test.each([
    ["local metres", strip, {}],
    ["local US survey feet", strip, { unit: "us-ft" }],
    ["local feet", brook, { unit: "ft" }],
    ["UTM zone 33 north", strip, { system: "EPSG:32633" }],
  ] as const)("in %s everything comes back in its place and height, with its name", async (_, plan, choice) => {
    const handed = handedOver(plan, { as: "landxml", of: light, ...choice });
    const back = await survived(handed, false);
    expect(back.lost).toEqual([]);
    expect(back.back).toBe(back.handed);
    expect(back.worst_m).toBeLessThan(most_m);
    expect(back.worstHeight_m).toBeLessThan(most_m);
  });

  // Properties are text in LandXML.
  test("columns come back as text", async () => {
    const { changedValues } = await survived(handedOver(strip, { as: "landxml", of: light }), true);
    expect(changedValues.length).toBeGreaterThan(0);
    for (const change of changedValues) {
      const [, wished, became] = /: (.*) became (.*)$/s.exec(change) ?? [];
      expect(became).toBe(wished);
    }
  });
});

describe.skipIf(!has("xmllint"))("read by xmllint", () => {
  test("it is well formed, northing before easting", () => {
    const handed = handedOver(strip, { as: "landxml", of: light });
    const [text = ""] = Object.values(textsOf(handed));
    const ask = (path: string) =>
      inFolder({ "plan.xml": text }, (folder) =>
        said("xmllint", ["--nonet", "--xpath", path, `${folder}/plan.xml`]).trim(),
      );
    for (const { kind, count, shape } of handed.layers) {
      if (count === 0 || kind === "route") continue;
      const [all, each] =
        shape === "point"
          ? ["CgPoints", "CgPoint"]
          : shape === "area"
            ? ["Parcels", "Parcel"]
            : ["PlanFeatures", "PlanFeature"];
      expect(Number(ask(`count(//*[local-name()='${all}'][@name='${kind}']/*[local-name()='${each}'])`)), kind).toBe(
        count,
      );
    }
    const [north, east] = ask("string((//*[local-name()='CgPoints'][@name='posts']/*)[1])").split(" ").map(Number);
    const start = strip.rows?.rows[0]?.start ?? [0, 0];
    expect(Math.hypot((east ?? 0) - start[0], (north ?? 0) - start[1])).toBeLessThan(most_m);
  });
});
