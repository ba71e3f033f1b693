import { expect, test } from "vitest";
import { csv, listCsv } from "../../../src/core/exchange/csv.ts";
import { coilsList } from "../../../src/core/exchange/lists/coils-list.ts";
import { materialsList } from "../../../src/core/exchange/lists/materials-list.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { createBlock, createProject } from "../../support/create-project.ts";
import { cellsOf } from "../../support/handed-over.ts";

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
  const text = listCsv(materialsList(createPlanner().plan(createProject({ name: "=1", blocks: [block] }))));
  expect(text).toContain("\r\nhose,Drip hose,");
  expect(text).not.toMatch(/^[=+@]/m);
});

test("the row table has a line a row, with both ends and the wire by purpose", () => {
  const [head = [], ...lines] = cellsOf(plan, "rows");
  expect(head.join(",")).toBe(
    "name,startLongitude,startLatitude,endLongitude,endLatitude,role,block,row,length_m,groundLength_m,waterEnd,vines,linePosts,lateral_m,emitters,dripWire_m,fruitingWire_m",
  );
  expect(lines).toHaveLength(rows.length);
  const cells = lines[0] ?? [];
  expect(cells).toHaveLength(head.length);
  expect(Number(cells[head.indexOf("length_m")])).toBeCloseTo(rows[0]?.length_m ?? 0, 3);
  expect(Number(cells[head.indexOf("vines")])).toBe(rows[0]?.vines);
});

test("materials say what to buy in the project's units", () => {
  const us = createPlanner().plan(createProject({ units: "us" }));
  const [head = "", ...lines] = listCsv(materialsList(us)).trimEnd().split("\r\n");
  expect(head.split(",").slice(0, 9).join(",")).toBe("article,item,spec,unit,needed,spare,onHand,toBuy,packages");
  expect(lines).toHaveLength(us.materials?.lines.length ?? 0);
  expect(lines.find((line) => line.startsWith("wire-13ga,"))).toMatch(
    /^wire-13ga,Wire,"13 ga, [^"]+",m,[\d.]+,0,0,[\d.]+,"?(\d+) of 1,000 ft"?,\1,,,/,
  );
});

test("cuts add up to what is taken off every coil, in the order of work", () => {
  const [head = "", ...lines] = listCsv(coilsList(plan)).trimEnd().split("\r\n");
  const place = (name: string) => head.split(",").indexOf(name);
  const cells = lines.map((line) => line.split(","));
  const wires = cells.filter(([article]) => article !== "hose");
  expect(wires.filter((cut) => Number(cut[place("from_m")]) === 0)).toHaveLength(
    (plan.trellis?.wires ?? []).reduce((sum, { runs }) => sum + runs, 0),
  );
  cells.forEach((cut, i) => {
    const isFirst = cut[place("cut")] === "1";
    const before_m = isFirst ? cut[place("coilLength_m")] : cells[i - 1]?.[place("left_m")];
    expect(Number(before_m) - Number(cut[place("taken_m")])).toBeCloseTo(Number(cut[place("left_m")]), 2);
  });
});

test("vines, posts and stakes have a line each under the same heads", () => {
  const vines = rows.reduce((sum, row) => sum + row.vines, 0);
  const posts = rows.reduce((sum, row) => sum + row.linePosts + 2, 0);
  const tables = (["vines", "stakes", "posts"] as const).map((of) => cellsOf(plan, of));
  expect(tables.map(({ length }) => length - 1)).toEqual([vines, vines, posts]);
  const heads = tables.map(([head = []]) => head.join(","));
  expect(new Set(heads)).toEqual(new Set(["name,longitude,latitude,role,block,row,number,station_m"]));
});
