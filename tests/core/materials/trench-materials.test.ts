import { describe, expect, test } from "vitest";
import { drip } from "../../../src/core/drip/drip.ts";
import { flatGround } from "../../../src/core/ground/elevation.ts";
import { createLeanPlanner } from "../../../src/core/lean-planner.ts";
import { createMainWorks } from "../../../src/core/main-works.ts";
import { materialAccounts } from "../../../src/core/materials/accounts.ts";
import { materials } from "../../../src/core/materials/materials.ts";
import { trenchNeeds } from "../../../src/core/materials/part-needs.ts";
import { nothingLost } from "../../../src/core/nothing-lost.ts";
import { trellis } from "../../../src/core/trellis/lay-trellis.ts";
import { text } from "../../../src/core/units.ts";
import { at, createProject } from "../../support/create-project.ts";
import { routePastStarts } from "../../support/create-route.ts";
import { createTrench } from "../../support/create-trench.ts";

const { dug, rows, project, main } = createTrench();
const structure = trellis(rows, flatGround, project.blocks);
if (!structure.ok) throw new Error("the trellis is not laid");
const prices = [
  { article: "main-pipe-pvc-pn10-50mm", size: 1, price: 10, mass_kg: 4.5, note: null },
  { article: "row-tee-pvc-pn10-50mm", size: 1, price: 3, mass_kg: null, note: null },
  { article: "riser", size: 30, price: 21, mass_kg: null, note: null },
];
const outcome = materials(
  rows,
  structure.value,
  drip(rows, main, project.blocks),
  project.blocks,
  { ...project.materials, prices },
  () => null,
  dug,
  [],
);
if (!outcome.ok) throw new Error("there is no list");
const list = outcome.value;
const line = (article: string) => {
  const found = list.lines.findIndex((each) => each.article === article);
  const own = list.lines[found];
  if (own === undefined) throw new Error(`no ${article} on the list`);
  return { own, needs: list.rowNeeds[found] ?? [] };
};

describe("what the trench takes is on the list", () => {
  test("every part once, as much as lies in the trench, before everything else", () => {
    expect(dug.parts.length).toBeGreaterThan(9);
    for (const { article, quantity, unit } of dug.parts) {
      expect(line(article).own.needed).toBeCloseTo(quantity, 9);
      if (unit === "pieces") expect(Number.isInteger(line(article).own.needed)).toBe(true);
    }
    const first = list.lines.slice(0, dug.parts.length).map(({ article }) => article);
    expect(new Set(first)).toEqual(new Set(dug.parts.map(({ article }) => article)));
  });

  test("what serves all rows is shared evenly by those that are fed, tees and risers are each row's own", () => {
    const { own, needs } = line("main-pipe-pvc-pn10-50mm");
    expect(own.isShared).toBe(true);
    expect(needs).toEqual([0.8, 0.8, 0.8, 0.8, 0.8]);
    expect(own.purpose).toMatch(/5 rows, who share it evenly$/);
    const tees = line("row-tee-pvc-pn10-50mm");
    expect(tees.own.isShared).toBe(false);
    expect(tees.needs).toEqual([1, 1, 1, 1, 1]);
  });

  test("rows that the line does not reach share nothing of it", () => {
    const route = routePastStarts({ ...rows, rows: rows.rows.slice(0, 3) }, 2.5);
    const short = createTrench({ rows, route: { ...route, waterEnd: main.waterEnd } });
    const pipe = trenchNeeds(short.dug).find(({ kind }) => kind === "main-pipe");
    expect(pipe?.perRow.slice(3)).toEqual([0, 0]);
    expect(pipe?.perRow[0]).toBeCloseTo(1, 12);
  });

  test("a stick, a row tee and an adapter more are bought; prices and masses go to the rows", () => {
    const pipe = line("main-pipe-pvc-pn10-50mm").own;
    expect(pipe).toMatchObject({ needed: 4, spare: 1, quantity: 5, price: 50, mass_kg: 22.5 });
    expect(line("row-tee-pvc-pn10-50mm").own).toMatchObject({ quantity: 6, price: 18 });
    const sum = list.rowCosts.reduce((total, { price }) => total + price, 0);
    expect(sum).toBeCloseTo(list.cost.price, 9);
  });

  test("riser pipe is bought in coils that hold every riser whole", () => {
    const { own } = line("riser");
    // Five of about 3.43 m: 30 m less 1 % and 2 m take them all.
    expect(own.packs).toEqual([{ size: 30, count: 1, price: 21, mass_kg: null }]);
  });

  test("how each number came about is told, and who shares", () => {
    const accounts = materialAccounts(list, project.materials);
    list.lines.forEach(({ isShared, needed, article }, i) => {
      const told = accounts[i]?.needed;
      expect(Math.abs(Number(told?.value) - needed)).toBeLessThan(1e-9 * Math.max(1, needed));
      expect(text(told?.formula ?? [], "metric"), article).toMatch(isShared ? /even share/ : /every row takes/);
    });
  });

  test("without a trench nothing of it is on the list", () => {
    const bare = materials(
      rows,
      structure.value,
      drip(rows, main, project.blocks),
      project.blocks,
      project.materials,
      () => null,
      null,
      [],
    );
    expect(bare.ok && bare.value.lines.length).toBe(list.lines.length - dug.parts.length);
  });
});

test("nothing is lost between the trench, the rows and the list of a whole plan", () => {
  const whole = createProject({ sources: [{ key: "well", name: "Well", at: at([2, 2]) }] });
  const planner = createLeanPlanner({ materialsOf: materials });
  const bare = planner.plan(whole);
  if (bare.rows === null) throw new Error("there are no rows");
  const route = routePastStarts(bare.rows, 2.5);
  const plan = planner.plan(whole, {
    mainWorks: createMainWorks(() => route),
  });
  expect(plan.trench?.parts.length).toBeGreaterThan(9);
  expect(plan.materials?.lines.some(({ kind }) => kind === "main-pipe")).toBe(true);
  expect(nothingLost(plan)).toEqual([]);
  const { trench } = plan;
  if (trench === null) throw new Error("the trench is not dug");
  const parts = trench.parts.map((part) => (part.kind === "row-tee" ? { ...part, quantity: part.quantity + 1 } : part));
  expect(nothingLost({ ...plan, trench: { ...trench, parts } }).join()).toMatch(
    /row-tee.* in the trench, \d+ on the list/,
  );
});
