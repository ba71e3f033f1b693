import { expect, test } from "vitest";
import { csv, materialsCsv, postsCsv, rowsCsv, stakesCsv, vinesCsv } from "../../../src/core/exchange/csv.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { createBlock, createProject } from "../../support/create-project.ts";

const plan = createPlanner().plan(createProject());
const rows = plan.rows?.rows ?? [];

test("lines end in CRLF, and commas, quotes and line breaks are quoted", () => {
  expect(csv([["a,b", 'say "x"', "two\nlines", null, 0]])).toBe('"a,b","say ""x""","two\nlines",,0\r\n');
});

test.each(["=1+1", "+1", "-1", "@x", "\tx"])(
  "a text cell %j cannot start a formula, a negative number stays a number",
  (text) => {
    expect(csv([[text, -1.5]])).toBe(`'${text},-1.5\r\n`);
  },
);

test("a variety that looks like a formula is harmless in the list of materials", () => {
  const block = createBlock(
    {},
    { plantings: [{ fromRow: 1, toRow: 99, variety: "x", rootstock: null, spare_ratio: 0 }] },
  );
  const text = materialsCsv(createPlanner().plan(createProject({ name: "=1", blocks: [block] })));
  expect(text).toContain("\r\nDrip hose,");
  expect(text).not.toMatch(/^[=+@]/m);
});

test("the row table has a line a row, with both ends and the wire by purpose", () => {
  const [head = "", ...lines] = rowsCsv(plan).trimEnd().split("\r\n");
  expect(head).toBe(
    "row,block,length_m,groundLength_m,startLongitude,startLatitude,endLongitude,endLatitude,waterEnd,vines,linePosts,dripWire_m,fruitingWire_m,lateral_m,emitters",
  );
  expect(lines).toHaveLength(rows.length);
  const cells = lines[0]?.split(",") ?? [];
  expect(cells).toHaveLength(head.split(",").length);
  expect(Number(cells[2])).toBeCloseTo(rows[0]?.length_m ?? 0, 3);
  expect(Number(cells[9])).toBe(rows[0]?.vines);
});

test("materials say what to buy in the project's units", () => {
  const us = createPlanner().plan(createProject({ units: "us" }));
  expect(materialsCsv(us)).toMatch(/\r\n"Wire, fruiting",[\d.]+,m,304\.8,(\d+),2\.3241,"?\1 of 1,000 ft"?,/);
});

test("vines, posts and stakes have a line each under the same heads", () => {
  const count = (text: string) => text.trimEnd().split("\r\n").length - 1;
  const vines = rows.reduce((sum, row) => sum + row.vines, 0);
  const posts = rows.reduce((sum, row) => sum + row.linePosts + 2, 0);
  expect([vinesCsv(plan), stakesCsv(plan), postsCsv(plan)].map(count)).toEqual([vines, vines, posts]);
  const heads = [vinesCsv(plan), stakesCsv(plan), postsCsv(plan)].map((text) => text.split("\r\n")[0]);
  expect(new Set(heads)).toEqual(new Set(["name,kind,block,row,number,station_m,longitude,latitude"]));
});
