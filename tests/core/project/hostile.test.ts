import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { parseProject } from "../../../src/core/project/parse.ts";
import { serializeProject } from "../../../src/core/project/serialize.ts";
import { codes, createFeature, createFile, field, point, projectIn } from "../../support/project-files.ts";

describe("a file made to do harm gets an answer", () => {
  const megabytes = 1024 * 1024;

  test.each([
    ["40 MB of nothing", () => " ".repeat(40 * megabytes), "project/empty-file"],
    ["200 MB of nothing", () => " ".repeat(200 * megabytes), "project/too-large"],
    ["40 MB of zero bytes", () => "\u0000".repeat(40 * megabytes), "project/not-json"],
    ["a million opening brackets", () => "[".repeat(1_000_000), "project/too-deep"],
    ["a million nested objects", () => '{"a":'.repeat(1_000_000), "project/too-deep"],
    ["a text of 20 MB that never ends", () => `{"type": "${"x".repeat(20 * megabytes)}`, "project/truncated"],
    ["a lone backslash at the end", () => '{"type": "\\', "project/truncated"],
    ["a lone surrogate", () => '{"\ud800', "project/truncated"],
  ])("%s", (_, make, code) => {
    expect(codes(parseProject(make()).findings)).toEqual([code]);
  });

  test("brackets inside a text do not count as depth", () => {
    const name = `${"[{".repeat(500)}\\"${"[".repeat(500)}`;
    const read = parseProject(createFile({ name }));
    expect(read.ok && read.value.name).toBe(name);
  });

  test("five thousand levels within a feature's properties", () => {
    const deep = `{"type":"Feature","properties":${'{"a":'.repeat(5000)}1${"}".repeat(5000)},"geometry":null}`;
    expect(codes(parseProject(deep).findings)).toEqual(["project/too-deep"]);
  });

  test("twenty thousand bad positions are one finding", () => {
    const ring = JSON.stringify(Array.from({ length: 20_000 }, () => ["x", null]));
    const read = parseProject(`{"type":"Polygon","coordinates":[${ring}]}`);
    expect(codes(read.findings).filter((code) => code === "project/bad-coordinate")).toHaveLength(1);
  });

  test("twenty thousand bad rings are one finding", () => {
    const rings = JSON.stringify(Array.from({ length: 20_000 }, () => field.slice(0, 1)));
    const read = parseProject(`{"type":"Polygon","coordinates":${rings}}`);
    expect(codes(read.findings).filter((code) => code === "project/bad-structure")).toHaveLength(1);
  });

  test("a thousand broken features are listed up to twenty, and the rest is counted", () => {
    const trees = Array.from({ length: 1000 }, (_, i) =>
      createFeature(`tree-${i}`, { role: "obstacle" }, point(-200, 42)),
    );
    const found = codes(projectIn(createFile(undefined, trees)).findings);
    expect(found.filter((code) => code === "project/out-of-range")).toHaveLength(20);
    expect(found.filter((code) => code === "project/more-findings")).toHaveLength(1);
  });

  test("an outline that crosses itself thousands of times names ten places and says there are more", () => {
    const zigzag = Array.from({ length: 2000 }, (_, i) => {
      const turn = (i * 997 * 2 * Math.PI) / 2000;
      return [-76.9 + 0.001 * Math.cos(turn), 42.6 + 0.001 * Math.sin(turn)];
    });
    const found = codes(parseProject(JSON.stringify({ type: "Polygon", coordinates: [zigzag] })).findings);
    expect(found.filter((code) => code === "project/self-crossing")).toHaveLength(10);
  });
});

const geometryTypes = [
  "Point",
  "MultiPoint",
  "LineString",
  "MultiLineString",
  "Polygon",
  "MultiPolygon",
  "GeometryCollection",
];

/** JSON that looks like GeoJSON in places, with anything in the others. */
const nearlyGeoJson = fc.letrec((tie) => ({
  any: fc.jsonValue({ maxDepth: 3 }),
  number: fc.oneof(
    fc.double({ min: -200, max: 200, noNaN: true }),
    fc.constantFrom(-76.9, 42.6, 0, 1e308, 179.99, -179.99),
  ),
  position: fc.oneof(
    { weight: 9, arbitrary: fc.tuple(tie("number"), tie("number")) },
    { weight: 1, arbitrary: tie("any") },
  ),
  positions: fc.oneof(
    { weight: 9, arbitrary: fc.array(tie("position"), { maxLength: 6 }) },
    { weight: 1, arbitrary: tie("any") },
  ),
  rings: fc.oneof(
    { weight: 9, arbitrary: fc.array(tie("positions"), { maxLength: 3 }) },
    { weight: 1, arbitrary: tie("any") },
  ),
  areas: fc.array(tie("rings"), { maxLength: 2 }),
  geometry: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    fc.constant(null),
    fc.record({
      type: fc.constantFrom(...geometryTypes, "__proto__", "Circle"),
      coordinates: fc.oneof(tie("position"), tie("positions"), tie("rings"), tie("areas")),
    }),
    fc.record({ type: fc.constant("GeometryCollection"), geometries: fc.array(tie("geometry"), { maxLength: 2 }) }),
  ),
  properties: fc.oneof(
    tie("any"),
    fc.record(
      {
        role: fc.constantFrom(
          "parcel",
          "block",
          "edge",
          "obstacle",
          "no-plant",
          "cross-alley",
          "row",
          "keep-row",
          "mark",
          "odd",
        ),
        setback: fc.oneof(tie("any"), fc.constantFrom("3 m", "-1 m", 5)),
        block: fc.constantFrom("1", 1, "east", null),
        row: fc.constantFrom(3, "4a", null),
        tapedLength: fc.oneof(tie("any"), fc.constant("30 m")),
      },
      { requiredKeys: [] },
    ),
  ),
  feature: fc.oneof(
    {
      weight: 9,
      arbitrary: fc.record(
        {
          type: fc.constant("Feature"),
          id: fc.constantFrom(1, "1", "oak", "#2"),
          properties: tie("properties"),
          geometry: tie("geometry"),
        },
        { requiredKeys: ["type"] },
      ),
    },
    { weight: 1, arbitrary: tie("any") },
  ),
  section: fc.oneof(
    tie("any"),
    fc.record(
      {
        rowSpacing: fc.constantFrom("8 ft", -1, "2,4 m", null),
        bearing: fc.oneof(tie("any"), fc.constantFrom("best", 24)),
        wires: tie("any"),
        minRow: tie("any"),
      },
      { requiredKeys: [] },
    ),
  ),
  settings: fc.oneof(
    tie("any"),
    fc.record(
      {
        version: fc.constantFrom(1, 2, "1"),
        units: fc.constantFrom("us", "metric", 3),
        rows: tie("section"),
        trellis: tie("section"),
        blocks: fc.oneof(
          tie("any"),
          fc.array(fc.record({ id: fc.constantFrom("east", 1), rows: tie("section") }, { requiredKeys: [] }), {
            maxLength: 3,
          }),
        ),
      },
      { requiredKeys: [] },
    ),
  ),
  file: fc.record(
    {
      type: fc.constant("FeatureCollection"),
      features: fc.array(tie("feature"), { maxLength: 5 }),
      tautrow: tie("settings"),
      crs: tie("any"),
      name: tie("any"),
    },
    { requiredKeys: ["type", "features"] },
  ),
}));

describe("whatever is in the file", () => {
  it("any text is answered, never thrown at", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), fc.string({ unit: "binary" })), (raw) => {
        const read = parseProject(raw);
        expect(read.ok || read.findings.length > 0).toBe(true);
      }),
      { seed: 31, numRuns: 1000 },
    );
  });

  it("any JSON value is answered; what has a project is written back as it was", () => {
    fc.assert(
      fc.property(fc.oneof(nearlyGeoJson.file, nearlyGeoJson.feature, nearlyGeoJson.geometry), (value) => {
        const raw = JSON.stringify(value);
        const read = parseProject(raw);
        expect(read.ok || read.findings.some(({ severity }) => severity === "error")).toBe(true);
        if (!read.ok) return;
        const written = serializeProject(read.value);
        const again = projectIn(written);
        expect(again.document).toEqual(read.value.document);
        if (raw.startsWith('{"type":"FeatureCollection"')) expect(JSON.parse(written)).toEqual(JSON.parse(raw));
        expect(serializeProject(again)).toBe(written);
      }),
      { seed: 32, numRuns: 1000 },
    );
  });

  it("reading changes nothing of what it read", () => {
    fc.assert(
      fc.property(nearlyGeoJson.file, (value) => {
        const read = parseProject(JSON.stringify(value));
        if (!read.ok) return;
        const before = JSON.stringify(read.value.document);
        parseProject(serializeProject(read.value));
        expect(JSON.stringify(read.value.document)).toBe(before);
        expect(before).toBe(JSON.stringify(JSON.parse(JSON.stringify(value))));
      }),
      { seed: 33, numRuns: 500 },
    );
  });

  it("numbers that JSON can hold but not write survive", () => {
    const raw = createFile({ name: "x" }).replace('"name":"x"', '"name":"x","odd":[-0,1e999,-1e999,1e-400]');
    const read = projectIn(raw);
    expect(JSON.parse(serializeProject(read))).toEqual(JSON.parse(raw));
  });
});
