import { resolve } from "node:path";
import { expect, test } from "vitest";
import { z } from "zod";
import { createFolder, createParcelText, say } from "./create-terminal.ts";

const acre = resolve("samples/acre-with-notch/project.geojson");
const columns = 100;

test("a change of mind stands beside what is, with the difference, in lines no wider than a page", async () => {
  const { code, out } = await say(["compare", acre, "--what-if", "one-fruiting-wire"]);
  expect(code).toBe(0);
  expect(out).toMatch(/^Wire +[\d,]+ ft +[\d,]+ ft +-[\d,]+ ft$/m);
  expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(columns);
});

test("a price makes every piece that is bought cost it; a price with a currency sign is refused with its line", async () => {
  const csv = (price: string) => `article,size,price\nanchor,1,${price}\n`;
  const folder = createFolder({
    "parcel.geojson": createParcelText(),
    "good.csv": csv("7.5"),
    "bad.csv": csv("$7.5"),
  });
  const priced = await say(["plan", "parcel.geojson", "--json", "--prices", "good.csv"], { folder });
  const { cost, materials } = z
    .object({
      cost: z.object({ price: z.number() }),
      materials: z.array(z.object({ article: z.string(), toBuy: z.number() })),
    })
    .parse(JSON.parse(priced.out));
  const anchors = materials.find(({ article }) => article === "anchor")?.toBuy ?? 0;
  expect(anchors).toBeGreaterThan(0);
  expect(cost.price).toBeCloseTo(anchors * 7.5, 6);
  const bad = await say(["plan", "parcel.geojson", "--prices", "bad.csv"], { folder });
  expect([bad.code, bad.notes]).toEqual([2, expect.stringMatching(/line 2/i)]);
});
