import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { z } from "zod";
import { createFolder, createParcelText, say } from "./create-terminal.ts";

const collection = z.object({
  type: z.literal("FeatureCollection"),
  features: z.array(z.object({ properties: z.object({ role: z.string() }) })),
});

test("check of a sound file prints what was assumed and ends well", async () => {
  const { code, out } = await say(["check", "-"], { input: createParcelText() });
  expect(code).toBe(0);
  expect(out).toMatch(/^note: /m);
  expect(out).not.toMatch(/^error: /m);
});

test("check of a file with a crossing outline names the error and ends with 1", async () => {
  const bowTie = {
    type: "Polygon",
    coordinates: [
      [
        [14, 48],
        [14.001, 48.001],
        [14.001, 48],
        [14, 48.001],
        [14, 48],
      ],
    ],
  };
  const { code, out } = await say(["check", "-", "--json"], { input: JSON.stringify(bowTie) });
  expect(code).toBe(1);
  const { findings } = z
    .object({
      schema: z.literal("tautrow-check"),
      findings: z.array(z.object({ severity: z.string(), at: z.unknown() })),
    })
    .parse(JSON.parse(out));
  expect(findings.find((finding) => finding.severity === "error")?.at).toEqual([
    expect.any(Number),
    expect.any(Number),
  ]);
});

test("check finds what planning finds, not only what reading finds", async () => {
  const { out } = await say(["check", "-", "--headland", "40 m"], { input: createParcelText() });
  expect(out).toMatch(/\(rows\//);
});

test("sweep prints a line a bearing and marks the best", async () => {
  const { code, out } = await say(["sweep", "-", "--step", "10"], { input: createParcelText() });
  expect(code).toBe(0);
  expect(out.match(/^ *\d+° /gm)).toHaveLength(18);
  expect(out.match(/ best$/gm)).toHaveLength(1);
});

test("sweep as JSON has every point, and locked bearings never win", async () => {
  const args = ["sweep", "-", "--json", "--step", "5", "--set", "rows.lockedBearings=[[0,90]]"];
  const { out } = await say(args, { input: createParcelText() });
  const point = z.object({ bearing_deg: z.number(), locked: z.boolean(), score_m: z.number() });
  const { blocks } = z
    .object({ blocks: z.array(z.object({ best: point, points: z.array(point) })) })
    .parse(JSON.parse(out));
  expect(blocks[0]?.points).toHaveLength(36);
  expect(blocks[0]?.best.bearing_deg).toBeGreaterThan(90);
});

test("sweep of a block that is not there is wrong usage", async () => {
  const { code, notes } = await say(["sweep", "-", "--block", "west"], { input: createParcelText() });
  expect(code).toBe(2);
  expect(notes).toContain('There is no block "west"; there is 1.');
});

test("export writes one collection of what was asked for", async () => {
  const { code, out } = await say(["export", "-", "--of", "rows,posts"], { input: createParcelText() });
  expect(code).toBe(0);
  const roles = new Set(collection.parse(JSON.parse(out)).features.map((feature) => feature.properties.role));
  expect(roles).toEqual(new Set(["row", "end-post", "line-post"]));
});

test("export of several files makes a GeoJSON text sequence", async () => {
  const folder = createFolder({ "a.geojson": createParcelText(), "b.geojson": createParcelText() });
  const { out } = await say(["export", "a.geojson", "b.geojson", "--of", "vines"], { folder });
  const records = out.split("\u001e").slice(1);
  expect(records).toHaveLength(2);
  for (const record of records) expect(collection.parse(JSON.parse(record)).features.length).toBeGreaterThan(100);
});

test("export as csv goes to standard output alone or to files together", async () => {
  const folder = createFolder({ "a.geojson": createParcelText() });
  const alone = await say(["export", "a.geojson", "--of", "materials", "--as", "csv"], { folder });
  expect(alone.out.startsWith("article,item,spec,unit,needed,")).toBe(true);
  const { code } = await say(["export", "a.geojson", "--of", "materials,vines", "--as", "csv", "--out", "o"], {
    folder,
  });
  expect(code).toBe(0);
  expect(readFileSync(join(folder, "o/materials.csv"), "utf8")).toBe(alone.out);
  expect(readFileSync(join(folder, "o/vines.csv"), "utf8")).toMatch(/\r\nvine-1-1,[\d.]+,[\d.]+,vine,1,1,1,/);
});

test("a text about the numbers goes beside the file, and to standard error where the file is piped on", async () => {
  const folder = createFolder({ "a.geojson": createParcelText() });
  const args = ["export", "a.geojson", "--of", "posts", "--as", "survey-csv", "--crs", "utm"];
  const piped = await say(args, { folder });
  expect(piped.out).toMatch(/^R1E01,\d+\.\d{4},\d+\.\d{4},,ENDPOST\r\n/);
  expect(piped.notes).toContain("EPSG 32633");
  const { notes } = await say([...args, "--out", "o"], { folder });
  expect(notes).toContain("Wrote 2 files to o: posts.csv, posts-about.txt");
  expect(readFileSync(join(folder, "o/posts.csv"), "utf8")).toBe(piped.out);
  expect(readFileSync(join(folder, "o/posts-about.txt"), "utf8")).toContain("EPSG 32633");
});

test("only the rows that are chosen are exported, by a pattern of names; a row that is not there is an error", async () => {
  const input = createParcelText();
  const { out } = await say(["export", "-", "--of", "posts", "--rows", "2-3", "--names", "{row}/{number}"], { input });
  const { features } = z
    .object({ features: z.array(z.object({ properties: z.object({ name: z.string(), row: z.string() }) })) })
    .parse(JSON.parse(out));
  expect(new Set(features.map(({ properties }) => properties.row))).toEqual(new Set(["2", "3"]));
  expect(features[0]?.properties.name).toBe("2/1");
  const wrong = await say(["export", "-", "--rows", "2, 99"], { input });
  expect([wrong.code, wrong.out]).toEqual([1, ""]);
  expect(wrong.notes).toContain('error: No row is called "99".');
});

test("what a format has no place for is told, and the rest is exported all the same", async () => {
  const input = createParcelText();
  const { code, out, notes } = await say(["export", "-", "--of", "rows,materials", "--as", "gpx"], { input });
  expect(code).toBe(0);
  expect(out).toContain("<trk>");
  expect(notes).toContain("has no place for materials");
  const none = await say(["export", "-", "--of", "vines", "--as", "iso-task-data"], { input });
  expect([none.code, none.out]).toEqual([1, ""]);
});

test("an archive goes to standard output byte by byte", async () => {
  const { out } = await say(["export", "-", "--of", "rows", "--as", "kmz"], { input: createParcelText() });
  expect(out.startsWith("PK\u0003\u0004")).toBe(true);
});

test("export of a file that cannot be read as a project says why and writes nothing", async () => {
  const { code, out, notes } = await say(["export", "-"], { input: "not json" });
  expect([code, out]).toEqual([1, ""]);
  expect(notes).toContain("error: ");
});

test("a name out of a file cannot steer the terminal", async () => {
  const name = "Red\u001b[31m\u009b2J\u202efield";
  const parcel = { type: "Feature", properties: { role: "parcel" }, geometry: JSON.parse(createParcelText()) };
  const input = JSON.stringify({ type: "FeatureCollection", tautrow: { version: 1, name }, features: [parcel] });
  const { out } = await say(["plan", "-"], { input });
  expect(out).toContain("Red\ufffd[31m\ufffd2J\ufffdfield");
  expect(out).not.toMatch(/[^\P{Cc}\n]/u);
});
