import { expect, test } from "vitest";
import { z } from "zod";
import { createFolder, createParcelText, say } from "./create-terminal.ts";

const comparison = z.object({
  schema: z.literal("tautrow-comparison"),
  totals: z.array(z.object({ name: z.string(), left: z.number(), right: z.number() })),
  lines: z.array(z.object({ article: z.string(), left: z.number().nullable(), right: z.number().nullable() })),
  leftPrice: z.number(),
  rightPrice: z.number(),
});

async function compared(args: readonly string[]) {
  const folder = createFolder({ "parcel.geojson": createParcelText() });
  const { code, out, notes } = await say(["compare", "parcel.geojson", "--json", ...args], { folder });
  return { code, notes, json: comparison.parse(JSON.parse(out)) };
}

test("with grippers at the far end the wire is shorter and there are more grippers", async () => {
  const { code, json } = await compared(["--what-if", "gripper-at-the-end"]);
  expect(code).toBe(0);
  const wire = json.totals.find(({ name }) => name === "Wire");
  const grippers = json.lines.find(({ article }) => article === "gripper");
  expect(wire?.right).toBeLessThan(wire?.left ?? 0);
  expect(grippers?.right).toBeGreaterThan(grippers?.left ?? Infinity);
});

test("any setting may be what differs, and a price list tells what it costs", async () => {
  const folder = createFolder({
    "parcel.geojson": createParcelText(),
    "prices.csv": "article,size,price\nwire-13ga,1000 ft,80\nwire-13ga,5000 ft,350\n",
  });
  const args = ["compare", "parcel.geojson", "--prices", "prices.csv", "--with", "rows.headland=20", "--json"];
  const { code, out } = await say(args, { folder });
  const json = comparison.parse(JSON.parse(out));
  expect(code).toBe(0);
  expect(json.leftPrice).toBeGreaterThan(0);
  expect(json.rightPrice).toBeLessThanOrEqual(json.leftPrice);
});

test("two files are held against each other, in words", async () => {
  const folder = createFolder({
    "a.geojson": createParcelText(),
    "b.geojson": createParcelText(),
  });
  const { code, out } = await say(["compare", "a.geojson", "b.geojson"], { folder });
  expect(code).toBe(0);
  expect(out).toContain("The shopping lists are the same.");
});

test("what cannot be compared is refused: one file alone, an unknown name, a price list that is none", async () => {
  const folder = createFolder({ "parcel.geojson": createParcelText(), "none.csv": "nothing\n" });
  const alone = await say(["compare", "parcel.geojson"], { folder });
  expect([alone.code, alone.notes]).toEqual([2, expect.stringContaining("--what-if NAME")]);
  const unknown = await say(["compare", "parcel.geojson", "--what-if", "nothing"], { folder });
  expect([unknown.code, unknown.notes]).toEqual([2, expect.stringContaining("one-fruiting-wire")]);
  const list = await say(["plan", "parcel.geojson", "--prices", "none.csv"], { folder });
  expect([list.code, list.notes]).toEqual([2, expect.stringContaining("none.csv is no price list")]);
});

test("the side of a row is drawn as one SVG, and an unknown row is refused with those there are", async () => {
  const { code, out } = await say(["draw", "-"], { input: createParcelText() });
  expect(code).toBe(0);
  expect(out).toMatch(/^<svg[\s\S]*<\/svg>\s*$/);
  const refused = await say(["draw", "-", "--row", "999"], { input: createParcelText() });
  expect([refused.code, refused.notes]).toEqual([2, expect.stringContaining('There is no row "999"; there is 1, 2')]);
});
