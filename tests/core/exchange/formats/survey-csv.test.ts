import { describe, expect, test } from "vitest";
import { surveyCsv } from "../../../../src/core/exchange/formats/survey-csv.ts";
import { namesOf } from "../../../../src/core/exchange/naming.ts";
import { systemOfCode } from "../../../../src/core/systems/coordinate-system.ts";
import { createHandOverJob, createLayer, createLayerFeature, placeOf } from "../../../support/create-hand-over-job.ts";
import { createTrenchPlan } from "../../../support/create-trench-plan.ts";
import { handedOver, textsOf } from "../../../support/handed-over.ts";
import { found } from "../../../support/survived.ts";

const plan = createTrenchPlan(() => 100);
const linesOf = (text: string | undefined) => (text ?? "").trimEnd().split("\r\n");

// The form is common practice, no source: PRACTICE of the trade says headless point, northing, easting, height, code, or easting first.
test("points stand without heads: name, northing, easting, height, code; or easting before northing", () => {
  const choice = { as: "survey-csv", of: ["posts"], system: "EPSG:32618" } as const;
  const north = linesOf(textsOf(handedOver(plan, choice))["posts.csv"]);
  const east = linesOf(textsOf(handedOver(plan, { ...choice, order: "easting-first" }))["posts.csv"]);
  expect(north).toHaveLength(308);
  expect(north[0]).toMatch(/^R1E01,4718\d{3}\.\d{4},344\d{3}\.\d{4},100\.0000,ENDPOST$/);
  expect(north[1]).toMatch(/^R1P02,.*,LINEPOST$/);
  const [name, n, e, ...others] = north[0]?.split(",") ?? [];
  expect(east[0]).toBe([name, e, n, ...others].join(","));
});

test("names are letters and digits of ASCII, at most 16, and unique; no quote and no apostrophe stands anywhere", () => {
  const names = ['=HYPERLINK("x")', "Söhne & Töchter, oben", "-5", "gate, pin", "gate; pin", "x".repeat(40)];
  const marks = names.map((name, i) =>
    createLayerFeature(`mark-${i}`, name, { shape: "point", place: placeOf(-122.7, 38.3 + i / 1000) }),
  );
  const layers = [createLayer({ kind: "marks", shape: "point" }, marks)];
  const system = systemOfCode(32610);
  if (!system.ok) throw new Error("no system");
  const job = createHandOverJob(layers, {
    system: system.value,
    names: namesOf(layers, { pattern: "{id}", longest: surveyCsv.nameLength, letters: surveyCsv.letters }),
  });
  const [file] = surveyCsv.write(job).files;
  if (file?.content.kind !== "chunks") throw new Error("no file");
  const text = [...file.content.chunks()].join("");
  const points = linesOf(text).map((line) => line.split(",")[0] ?? "");
  expect(new Set(points).size).toBe(names.length);
  for (const point of points) expect(point).toMatch(/^[A-Za-z0-9_][A-Za-z0-9._#-]{0,15}$/);
  expect(text).not.toMatch(/["']/);
  for (const line of linesOf(text)) expect(line.split(",")).toHaveLength(5);
});

test("heights count what the other numbers count, and are empty where they are not known: 0 would be a height", () => {
  const marks = [null, 0, 30.48].map((height_m, i) =>
    createLayerFeature(`mark-${i}`, `M${i}`, { shape: "point", place: placeOf(-122.7, 38.3, height_m) }),
  );
  const system = systemOfCode(2226);
  if (!system.ok) throw new Error("no system");
  const job = createHandOverJob([createLayer({ kind: "marks", shape: "point" }, marks)], { system: system.value });
  const [file, about] = surveyCsv.write(job).files;
  if (file?.content.kind !== "chunks" || about?.content.kind !== "chunks") throw new Error("no file");
  const heights = linesOf([...file.content.chunks()].join("")).map((line) => line.split(",")[3]);
  // 30.48 m are 100 international feet, and 99.9998 US survey feet (NIST SP 811, appendix B.6).
  expect(heights).toEqual(["", "0.0000", "99.9998"]);
  expect([...about.content.chunks()].join("")).toContain("height of the ground in US survey feet (1200/3937 m)");
});

test("what the codes mean, and how many there are of each, stands beside it", () => {
  const about = textsOf(handedOver(plan, { as: "survey-csv", of: ["posts", "fittings"], system: "EPSG:32618" }))[
    "plan-about.txt"
  ];
  expect(about).toContain("  Code ENDPOST: end post, 44\r\n");
  expect(about).toContain("  Code LINEPOST: line post, 264\r\n");
  expect(about).toContain("  Code ROWTEE: row tee, 22\r\n");
});

describe("round trip through our own reader", () => {
  test.each(["northing-first", "easting-first"] as const)(
    "%s: the order is asked, and every point comes back within 2 mm",
    async (order) => {
      const handed = handedOver(plan, { as: "survey-csv", of: ["posts"], system: "EPSG:32618", order });
      const text = textsOf(handed)["posts.csv"] ?? "";
      const asked = await found("posts.csv", text);
      expect(asked.questions.map(({ about }) => about)).toEqual(["system", "order"]);
      expect(asked.features).toEqual([]);
      const { features, questions } = await found("posts.csv", text, {
        system: "EPSG:32618",
        isSwapped: order === "easting-first",
      });
      expect(questions).toEqual([]);
      const handedOut = [...(handed.layers[0]?.features() ?? [])];
      expect(features).toHaveLength(handedOut.length);
      for (const [i, feature] of handedOut.entries()) {
        const back = features[i];
        if (feature.geometry.shape !== "point" || back?.geometry.type !== "Point") throw new Error("no point");
        expect(back.name).toBe(handed.names.of(feature));
        expect(Math.abs((back.geometry.coordinates[0] ?? 0) - feature.geometry.place.at[0])).toBeLessThan(1e-8);
        expect(Math.abs((back.geometry.coordinates[1] ?? 0) - feature.geometry.place.at[1])).toBeLessThan(1e-8);
        expect(back.values.map(([, value]) => value)).toEqual([feature.parts.kind.toUpperCase().replace("-", "")]);
      }
    },
  );
});
