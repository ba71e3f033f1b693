import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { z } from "zod";
import { createFolder, createParcelText, say } from "./create-terminal.ts";

const plan = z.object({
  source: z.string().nullable(),
  ground: z.object({ parcelArea_m2: z.number().nullable(), plantingArea_m2: z.number().nullable() }),
  blocks: z.array(z.object({ bearing_deg: z.number(), compass: z.object({ date: z.string() }).nullable() })),
  rows: z.array(z.object({ id: z.string(), length_m: z.number(), vines: z.number() })),
  totals: z.object({ rows: z.number(), rowLength_m: z.number(), vines: z.number() }),
  findings: z.array(z.object({ code: z.string(), severity: z.string(), message: z.string() })),
});

const delivered = [
  "coils.csv",
  "fittings.geojson",
  "materials.csv",
  "pipes.geojson",
  "plan-about.txt",
  "plan.json",
  "posts.geojson",
  "route.geojson",
  "rows.csv",
  "rows.geojson",
  "stations.csv",
  "vines.geojson",
];
const degrees_digits = 6;

async function planned(args: readonly string[], text = createParcelText()) {
  const { code, out, notes } = await say(["plan", "-", "--json", ...args], { input: text });
  return { code, notes, json: plan.parse(JSON.parse(out)) };
}

test("a bare polygon is planned with defaults, and a note says so", async () => {
  const { code, json } = await planned([]);
  expect(code).toBe(0);
  expect(json.totals.rows).toBeGreaterThan(5);
  expect(json.findings.filter((finding) => finding.severity === "note").length).toBeGreaterThan(0);
});

test("tables name the parcel, every row, the sum and what to buy, in the units asked for", async () => {
  const metric = await say(["plan", "-"], { input: createParcelText() });
  expect(metric.out).toMatch(/^all +[\d,.]+ m /m);
  expect(metric.out).toMatch(/^Wire +[\d,]+ m +\d+ of 304\.8 m\n +2\.324 mm/m);
  expect(metric.out).toContain("to find your way, not to stake");
  const us = await say(["plan", "-", "--units", "us"], { input: createParcelText() });
  expect(us.out).toMatch(/^all +[\d,.]+ ft /m);
  expect(us.out).toMatch(/^Wire +[\d,]+ ft +\d+ of 1,000 ft\n +13 ga/m);
});

test("an input that cannot be planned still gives the object, without rows", async () => {
  for (const text of ["", "{", '{"type":"FeatureCollection","features":[]}']) {
    const { code, json } = await planned([], text);
    expect(code).toBe(1);
    expect(json.rows).toEqual([]);
    expect(json.totals).toEqual({ rows: 0, rowLength_m: 0, vines: 0 });
    expect(json.findings.some((finding) => finding.severity === "error")).toBe(true);
  }
});

test.each([
  ["-10", 170],
  ["24", 24],
  ["24 deg", 24],
  ["204", 24],
  ["0", 0],
])("--bearing %j lays the rows at %d°", async (given, bearing_deg) => {
  const { code, json } = await planned(["--bearing", given]);
  expect(code).toBe(0);
  expect(json.blocks[0]?.bearing_deg).toBeCloseTo(bearing_deg, degrees_digits);
});

test("--bearing best is the best of the sweep", async () => {
  const swept = await say(["sweep", "-", "--json"], { input: createParcelText() });
  const { blocks } = z
    .object({ blocks: z.array(z.object({ best: z.object({ bearing_deg: z.number() }) })) })
    .parse(JSON.parse(swept.out));
  const { json } = await planned(["--bearing", "best"]);
  expect(json.blocks[0]?.bearing_deg).toBeCloseTo(blocks[0]?.best.bearing_deg ?? -1, degrees_digits);
});

test.each([
  [["--row-spacing", "16 ft"], "fewer rows"],
  [["--headland", "20 m"], "shorter rows"],
  [["--setback", "12 m"], "shorter rows"],
  [["--vine-spacing", "3 m"], "fewer vines"],
  [["--min-row", "300 m"], "no rows"],
  [["--min-row", "100 vines"], "no rows"],
  [["--set", "rows.endGap=6"], "fewer vines"],
  [["--set", 'rows.minRow={"vines":100}'], "no rows"],
  [["--set", "rows.headland=60 ft"], "shorter rows"],
])("%j gives %s", async (args, effect) => {
  const before = (await planned([])).json.totals;
  const { totals } = (await planned(args)).json;
  if (effect === "fewer rows") expect(totals.rows).toBeLessThan(before.rows);
  if (effect === "shorter rows") expect(totals.rowLength_m).toBeLessThan(before.rowLength_m);
  if (effect === "fewer vines") expect(totals.vines).toBeLessThan(before.vines);
  if (effect === "no rows") expect(totals.rows).toBe(0);
});

test("--row-end all uses the ground to the last millimetre, bays the least of it", async () => {
  const length = async (end: string) => (await planned(["--row-end", end])).json.totals.rowLength_m;
  const [all, vines, bays] = [await length("all"), await length("vines"), await length("bays")];
  expect(all).toBeGreaterThan(vines);
  expect(vines).toBeGreaterThan(bays);
});

test.each([
  ["--row-spacing", "-2", "project/setting-out-of-range"],
  ["--row-spacing", "a lot", "project/bad-setting"],
  ["--row-end", "sideways", "project/bad-setting"],
  ["--set", "rows.noSuchThing=1", "project/bad-setting"],
])("%s %j is refused with %s and not planned as if nothing had been said", async (option, value, refusal) => {
  const { code, json } = await planned([option, value]);
  expect(code).toBe(1);
  expect(json.rows).toEqual([]);
  expect(json.findings.map((finding) => finding.code)).toContain(refusal);
});

test("the same call gives the same JSON; a compass reading is in it when a day is given", async () => {
  expect((await planned([])).json.blocks[0]?.compass).toBeNull();
  expect((await planned(["--date", "2027-03-15"])).json.blocks[0]?.compass?.date).toBe("2027-03-15");
});

test("--out writes the files, each whole, and says so apart from the answer", async () => {
  const folder = createFolder({ "a.geojson": createParcelText() });
  const { code, out, notes } = await say(["plan", "a.geojson", "--out", "new/out", "--json"], { folder });
  expect(code).toBe(0);
  expect(readdirSync(join(folder, "new/out")).sort()).toEqual(delivered);
  expect(JSON.parse(readFileSync(join(folder, "new/out/plan.json"), "utf8"))).toEqual(JSON.parse(out));
  expect(notes).toContain("Wrote 12 files to new/out");
});

test("--out leaves the files of an earlier plan alone when the outline cannot be planned", async () => {
  const bowTie = JSON.stringify({
    type: "Polygon",
    coordinates: [
      [
        [6, 49],
        [6.001, 49.001],
        [6.001, 49],
        [6, 49.001],
        [6, 49],
      ],
    ],
  });
  const folder = createFolder({ "a.geojson": createParcelText(), "broken.geojson": bowTie });
  await say(["plan", "a.geojson", "--out", "o"], { folder });
  const before = readFileSync(join(folder, "o/rows.geojson"), "utf8");
  const { code, notes } = await say(["plan", "broken.geojson", "--out", "o"], { folder });
  expect(code).toBe(1);
  expect(notes).toContain("Nothing was written");
  expect(readFileSync(join(folder, "o/rows.geojson"), "utf8")).toBe(before);
});

test("--out that leads through a file is wrong usage", async () => {
  const folder = createFolder({ "a.geojson": createParcelText(), file: "" });
  const { code, notes } = await say(["plan", "a.geojson", "--out", "file/out"], { folder });
  expect(code).toBe(2);
  expect(notes).toContain("leads through something that is not a folder");
});

test("several files make a text sequence, a folder each, and progress apart from it", async () => {
  const folder = createFolder({ "a.geojson": createParcelText(), "b.geojson": "{", "c.geojson": createParcelText() });
  const { code, out, notes } = await say(["plan", "a.geojson", "b.geojson", "c.geojson", "--json", "--out", "o"], {
    folder,
  });
  expect(code).toBe(1);
  const records = out.split("\u001e").slice(1);
  expect(records.every((record) => record.endsWith("\n"))).toBe(true);
  expect(records.map((record) => plan.parse(JSON.parse(record)).source)).toEqual([
    "a.geojson",
    "b.geojson",
    "c.geojson",
  ]);
  expect(readdirSync(join(folder, "o")).sort()).toEqual(["a", "c"]);
  expect(readdirSync(join(folder, "o/c")).sort()).toEqual(delivered);
  expect(notes).toMatch(
    /1 of 3: a\.geojson, fine\n[\s\S]*2 of 3: b\.geojson, 1 error\n[\s\S]*3 of 3: c\.geojson, fine\n/,
  );
});

test("one file of several that cannot be read is named, and the others are planned", async () => {
  const folder = createFolder({ "a.geojson": createParcelText() });
  const { code, out, notes } = await say(["plan", "a.geojson", "gone.geojson", "--json"], { folder });
  expect(code).toBe(2);
  expect(out.split("\u001e").slice(1)).toHaveLength(1);
  expect(notes).toContain("gone.geojson does not exist.");
});

test("a GeoJSON text sequence is planned text by text", async () => {
  const input = `\u001e${createParcelText()}\n\u001e${createParcelText(14.3)}\n`;
  const { code, out } = await say(["plan", "-", "--json"], { input });
  expect(code).toBe(0);
  const sources = out
    .split("\u001e")
    .slice(1)
    .map((record) => plan.parse(JSON.parse(record)).source);
  expect(sources).toEqual(["standard input#1", "standard input#2"]);
});

test("what is piped in is read without a file", async () => {
  const { code, out } = await say(["plan", "--json"], { input: createParcelText() });
  expect(code).toBe(0);
  expect(plan.parse(JSON.parse(out)).totals.rows).toBeGreaterThan(5);
});

/** A field with a well beside it and heights that fall to a hollow in the middle of its south side. */
function createWateredText(): string {
  const { features, ...rest } = z
    .looseObject({ type: z.string(), features: z.array(z.unknown()) })
    .parse(JSON.parse(readFileSync("samples/acre-with-notch/project.geojson", "utf8")));
  const corners = [
    [-121.187, 39.15, 104],
    [-121.182, 39.15, 104],
    [-121.1845, 39.154, 104],
    [-121.1845, 39.1509, 100],
  ] as const;
  const heights = corners.map(([lon, lat, height], i) => ({
    type: "Feature",
    id: `height-${i}`,
    properties: { role: "elevation", height },
    geometry: { type: "Point", coordinates: [lon, lat] },
  }));
  return JSON.stringify({ ...rest, features: [...features, ...heights] });
}

test("the report tells where the main line runs and what its trench takes, in the units asked for", async () => {
  const us = await say(["plan", "samples/acre-with-notch/project.geojson", "--units", "us"]);
  expect(us.out).toMatch(/^Main line: [\d,.]+ ft from Well; 39 row tees, /m);
  expect(us.out).toMatch(/^main +[\d,.]+ ft /m);
  expect(us.out).toMatch(/Trench: [\d,.]+ ft to dig .*in wide/s);
  expect(us.out).toContain("yd³");
  expect(us.out).toContain("half filled before it rains");
  expect(us.out).toContain("Low points are not known");
  // 29 CFR 1926.651 (b): utilities are located before digging.
  expect(us.out).toMatch(/call\s+811/);
  const hollow = await say(["plan", "-", "--units", "metric"], { input: createWateredText() });
  expect(hollow.out).toMatch(/Low points, where water stands: .* under its shoulder/s);
  expect(hollow.out).toMatch(/m³/);
  const dry = await say(["plan", "-"], { input: createParcelText() });
  expect(dry.out).not.toContain("Main line:");
});

test("what is set of the main line and the trench is changed from the command line", async () => {
  const deep = async (...more: readonly string[]) => {
    const { out } = await say(["plan", "samples/acre-with-notch/project.geojson", "--json", ...more]);
    return z
      .object({
        mainline: z.object({ length_m: z.number() }),
        trench: z.object({ cover_m: z.number(), earth: z.object({ cut_m3: z.number(), deepest_m: z.number() }) }),
      })
      .parse(JSON.parse(out));
  };
  const [usual, frost] = [await deep(), await deep("--set", "trench.frostDepth=0.9 m")];
  expect(frost.trench.cover_m).toBeCloseTo(0.9, 9);
  expect(frost.trench.earth.cut_m3).toBeGreaterThan(usual.trench.earth.cut_m3);
  const deeper = await deep("--set", "trench.cover=1 m");
  expect(deeper.trench.earth.deepest_m - usual.trench.earth.deepest_m).toBeCloseTo(1 - usual.trench.cover_m, 9);
});

test("the stations of the trench are a table on their own", async () => {
  const { code, out } = await say([
    "export",
    "samples/acre-with-notch/project.geojson",
    "--of",
    "stations",
    "--as",
    "csv",
  ]);
  expect(code).toBe(0);
  expect(out).toMatch(/^name,longitude,latitude,role,branch,number,station_m,slopeStation_m,/);
  expect(out.split("\r\n").length).toBeGreaterThan(30);
  const lines = await say(["export", "samples/acre-with-notch/project.geojson", "--of", "route,rows"]);
  expect(lines.out).toContain('"role":"main-line"');
  expect(lines.out).toContain('"role":"row"');
});

test("the trench is drawn as one SVG; a branch that is not there, and options that do not belong, are refused", async () => {
  const file = "samples/acre-with-notch/project.geojson";
  const { code, out } = await say(["draw", file, "--trench", "--scale", "1:500", "--raise", "5"]);
  expect(code).toBe(0);
  expect(out).toMatch(/^<svg [^>]*class="trench-side"/);
  expect(out.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ")).toContain("Lengths 1:500, heights drawn 5 times");
  for (const [args, said] of [
    [["--branch", "zz"], /There is no branch "zz" of the trench; there is main/],
    [["--raise", "5"], /--raise goes with --trench/],
    [["--trench", "--row", "5"], /not both/],
    [["--trench", "--raise", "3"], /--raise takes 1, 5, 10/],
    [["--trench", "--scale", "20"], /--scale takes 500 or 200/],
  ] as const) {
    const refused = await say(["draw", file, ...args]);
    expect(refused.code).toBe(2);
    expect(refused.notes).toMatch(said);
  }
  const dry = await say(["draw", "-", "--trench"], { input: createParcelText() });
  expect(dry.code).toBe(2);
  expect(dry.notes).toContain("draw a water source");
});
