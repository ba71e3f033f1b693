import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { delimitedLines } from "../../../src/core/exchange/delimited.ts";
import { priceListCsv, priceListJson, pricesSetting, readPriceList } from "../../../src/core/exchange/price-list.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { withSetting } from "../../../src/core/project/edits.ts";
import type { PriceEntry, Project } from "../../../src/core/project/project.ts";
import { text } from "../../../src/core/units.ts";
import { createProject } from "../../support/create-project.ts";
import { readSample } from "../../support/sample-plans.ts";

const coil_m = 304.8;

function taken(written: string): readonly PriceEntry[] {
  const read = readPriceList(written);
  if (!read.ok) throw new Error(read.findings.map(({ message }) => text(message, "metric")).join(" "));
  return read.value;
}

function refusals(written: string): readonly string[] {
  const read = readPriceList(written);
  expect(read.ok).toBe(false);
  return read.findings.map(({ code, message }) => `${code}: ${text(message, "metric")}`);
}

function priced(project: Project, prices: readonly PriceEntry[]): Project {
  const after = withSetting(project, "materials.prices", pricesSetting(prices));
  if (!after.ok) throw new Error("the prices were refused");
  return after.value;
}

const entry = (changes: Partial<PriceEntry> = {}): PriceEntry => ({
  article: "wire-13ga",
  size: coil_m,
  price: null,
  mass_kg: null,
  note: null,
  ...changes,
});

describe("the price list that is written", () => {
  const plan = createPlanner().plan(readSample("acre-with-notch"));
  const lines = priceListCsv(plan).trimEnd().split("\r\n");

  it("has a line for every article on the shopping list, with empty prices", () => {
    expect(lines[0]).toBe("article,item,spec,size,unit,price,mass_kg,note");
    const articles = lines.slice(1).map((line) => line.split(",")[0]);
    expect(articles).toEqual(plan.materials?.lines.map(({ article }) => article));
    expect(taken(priceListCsv(plan)).every(({ price }) => price === null)).toBe(true);
  });

  it("says coils in feet where the project does, and reads them back as the same length", () => {
    expect(lines.find((line) => line.startsWith("wire-13ga,"))).toContain(",1000,ft,,");
    expect(taken(priceListCsv(plan)).find(({ article }) => article === "wire-13ga")?.size).toBe(coil_m);
    const metric = createPlanner().plan(createProject({ units: "metric" }));
    expect(priceListCsv(metric)).toContain(",304.8,m,,");
  });

  it.each([
    ["a table", priceListCsv],
    ["JSON", priceListJson],
  ])("as %s, read into the project and written again, is the same, with prices for what is not needed", (_, write) => {
    const own = [
      entry({ price: 89.5, mass_kg: 10.2, note: 'Shed, "north" shelf; 2nd' }),
      entry({ size: 5 * coil_m, price: 380 }),
      entry({ article: "=odd, name", size: 3, price: 0 }),
    ];
    const project = priced(readSample("acre-with-notch"), own);
    const first = createPlanner().plan(project);
    const again = createPlanner().plan(priced(project, taken(write(first))));
    expect(write(again)).toBe(write(first));
    expect(again.project.materials.prices).toEqual(expect.arrayContaining(own));
    expect(again.materials?.cost.price).toBe(first.materials?.cost.price);
  });
});

describe("a price list that is read", () => {
  it("takes columns in any order, others beside them, quotes, line ends of every kind and a byte order mark", () => {
    const expected = [entry({ price: 89.5, note: "a,b\nc" }), entry({ article: "anchor", size: 1, price: 0 })];
    const table = '\uFEFFPrice,shop,NOTE,Article,Size\r\n89.5,x,"a,b\nc",wire-13ga,1000 ft\r0,y,,anchor,1\n\n';
    expect(taken(table)).toEqual(expected);
  });

  it("takes semicolons with decimal commas, and tabs", () => {
    expect(taken("article;size;price\nwire-13ga;304,8;1.089,50\nanchor;1;7,25")).toEqual([
      entry({ price: 1089.5 }),
      entry({ article: "anchor", size: 1, price: 7.25 }),
    ]);
    expect(taken("article\tsize\tprice\nanchor\t1\t7.25")).toEqual([
      entry({ article: "anchor", size: 1, price: 7.25 }),
    ]);
  });

  it("takes grouped thousands in quotes, sizes in pieces and feet, and masses with a unit", () => {
    const list = 'article,size,unit,price,mass_kg\nstaple,500 pieces,,"1,234.5",\nhose,500,ft,60,11 lb';
    expect(taken(list)).toEqual([
      entry({ article: "staple", size: 500, price: 1234.5 }),
      entry({ article: "hose", size: 152.4, price: 60, mass_kg: 4.98951607 }),
    ]);
  });

  it("keeps an empty price apart from one of 0", () => {
    expect(taken("article,size,price\na,1,\nb,1,0").map(({ price }) => price)).toEqual([null, 0]);
  });

  it("takes JSON as a bare list, or under prices, with mass in either spelling", () => {
    const own = entry({ price: 5, mass_kg: 2 });
    expect(taken('[{"article": "wire-13ga", "size": "1000 ft", "price": 5, "mass": 2}]')).toEqual([own]);
    expect(taken('{"prices": [{"article": "wire-13ga", "size": 304.8, "price": 5, "mass_kg": 2}]}')).toEqual([own]);
  });

  it("says that a package stands there twice, and takes the last", () => {
    const read = readPriceList("article,size,price\na,1,5\na,1,6");
    expect(read.findings.map(({ code }) => code)).toEqual(["exchange/price-list-twice"]);
    expect(read.ok && read.value.map(({ price }) => price)).toEqual([6]);
  });

  it("names the lines whose prices carry a currency, in one finding", () => {
    const list = `article,size,price\n${["$5", "5 EUR", "€ 5", "7"].map((price, i) => `a${i},1,${price}`).join("\n")}`;
    expect(refusals(list)).toEqual([
      "exchange/price-list-line-wrong: Price list, line 2, line 3, line 4: its price must be a bare number, without a currency.",
    ]);
  });

  it.each([
    ["a,1,-5", "its price is no number, or under 0"],
    ["a,1,5 or 6", "its price is no number, or under 0"],
    ['a,1,"7,25"', "its price is no number, or under 0"],
    [",1,5", "it names no article"],
    ["a,,5", "its size is empty"],
    ["a,0,5", "its size must be more than 0"],
    ["a,3 bushels,5", "its size was not understood"],
  ])("refuses the line %s", (line, why) => {
    const [refusal = "", ...more] = refusals(`article,size,price\nfine,1,5\n${line}`);
    expect(more).toEqual([]);
    expect(refusal).toContain(`exchange/price-list-line-wrong: Price list, line 3: ${why}`);
  });

  it("refuses a unit it does not know, and a point that may be thousands", () => {
    expect(refusals("article,size,unit,price\na,1,yd,5")[0]).toContain("its unit must be m, ft or pieces");
    expect(refusals("article;size;price\na;1;1.234")[0]).toContain("may be thousands or a decimal");
  });

  it.each([
    ["", "it is empty"],
    ["article,price\na,5", "its first line has no column named size"],
    ["[1, 2", "it is no whole JSON"],
    ['{"price": 5}', 'it has no list named "prices"'],
  ])("refuses %j whole", (list, why) => {
    expect(refusals(list)).toEqual([`exchange/price-list-unreadable: The price list cannot be read: ${why}.`]);
  });

  it("names the JSON entries that are none", () => {
    expect(refusals('[{"article": "a", "size": 1}, 5, {"article": "a", "size": 1, "price": "5"}]')).toEqual([
      expect.stringContaining("Price list, entry 2: the entry was not understood"),
      expect.stringContaining("Price list, entry 3: its price was not understood"),
    ]);
  });
});

test("a table told apart by any mark gives back its cells", () => {
  fc.assert(
    fc.property(
      fc.constantFrom<"," | ";" | "\t">(",", ";", "\t"),
      fc.array(
        fc.array(
          fc.string().map((cell) => `x${cell}`.trim()),
          { minLength: 1 },
        ),
        { minLength: 1 },
      ),
      (delimiter, table) => {
        const written = table
          .map((cells) => cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(delimiter))
          .join("\r\n");
        expect(delimitedLines(written, delimiter).map(({ cells }) => cells)).toEqual(table);
      },
    ),
    { seed: 16_07, numRuns: 500 },
  );
});
