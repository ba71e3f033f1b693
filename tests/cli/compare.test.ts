import { resolve } from "node:path";
import { expect, test } from "vitest";
import { z } from "zod";
import { createFolder, createParcelText, say } from "./create-terminal.ts";

const acre = resolve("samples/acre-with-notch/project.geojson");

test("a change of mind stands beside what is, in lines no wider than a page", async () => {
  const { code, out } = await say(["compare", acre, "--what-if", "one-fruiting-wire"]);
  expect(code).toBe(0);
  expect(out).toMatch(/^Wire +14,081 ft +9,387 ft +-4,694 ft$/m);
  expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(100);
});

test("a setting given with --with is compared as JSON", async () => {
  const args = ["compare", "-", "--with", "rows.vineSpacing=2.4", "--json"];
  const { out } = await say(args, { input: createParcelText() });
  const { totals } = z
    .object({
      schema: z.literal("tautrow-comparison"),
      totals: z.array(z.object({ name: z.string(), left: z.number(), right: z.number() })),
    })
    .parse(JSON.parse(out));
  const vines = totals.find(({ name }) => name === "Vines");
  expect(Number(vines?.right)).toBeLessThan(Number(vines?.left));
});

test("a what-if that is not there is wrong usage and lists those that are; so is one file alone", async () => {
  const { code, notes } = await say(["compare", acre, "--what-if", "gold-wire"]);
  expect(code).toBe(2);
  expect(notes).toMatch(/one-fruiting-wire/);
  expect((await say(["compare", acre])).code).toBe(2);
});

test("a row is drawn as SVG; a row that is not there is wrong usage", async () => {
  const { code, out } = await say(["draw", acre, "--row", "14a"]);
  expect(code).toBe(0);
  expect(out).toMatch(/^<svg [^>]*>.*row 14a/);
  expect(out.trimEnd().endsWith("</svg>")).toBe(true);
  expect((await say(["draw", acre, "--row", "99"])).code).toBe(2);
});

test("a price list makes the list cost something; one that cannot be read says its line", async () => {
  const csv = (price: string) => `article,size,unit,price\nanchor,1,pieces,${price}\n`;
  const list = await say(["export", acre, "--of", "prices", "--as", "csv"]);
  const article = /^(anchor[^,]*),/m.exec(list.out)?.[1] ?? "";
  expect(article).not.toBe("");
  const folder = createFolder({
    "good.csv": csv("7.5").replace("anchor", article),
    "bad.csv": csv("$7.5").replace("anchor", article),
  });
  const priced = await say(["plan", acre, "--json", "--prices", "good.csv"], { folder });
  const { cost } = z.object({ cost: z.object({ price: z.number() }) }).parse(JSON.parse(priced.out));
  expect(cost.price).toBeCloseTo(78 * 7.5, 6);
  const bad = await say(["plan", acre, "--prices", "bad.csv"], { folder });
  expect(bad.code).not.toBe(0);
  expect(`${bad.out}${bad.notes}`).toMatch(/line 2/i);
});
