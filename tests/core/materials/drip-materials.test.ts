import { describe, expect, test } from "vitest";
import { drip } from "../../../src/core/drip/drip.ts";
import type { WaterPart } from "../../../src/core/drip/watering.ts";
import { flatGround } from "../../../src/core/ground/elevation.ts";
import { cutCoils } from "../../../src/core/materials/cutting/cut-coils.ts";
import { dripArticles, isHose } from "../../../src/core/materials/drip-articles.ts";
import { materials } from "../../../src/core/materials/materials.ts";
import { waterNeeds } from "../../../src/core/materials/part-needs.ts";
import { nothingLost } from "../../../src/core/nothing-lost.ts";
import type { Plan } from "../../../src/core/plan.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { Block } from "../../../src/core/project/project.ts";
import type { DripSettings } from "../../../src/core/project/water-settings.ts";
import { trellis } from "../../../src/core/trellis/lay-trellis.ts";
import { text } from "../../../src/core/units.ts";
import { at, createDripSettings, createProject } from "../../support/create-project.ts";
import { createBlock, createMaterialSettings, createRows } from "../../support/create-rows.ts";
import { createTrench } from "../../support/create-trench.ts";

const thin = { hoseInside_mm: 13.6, hoseOutside_mm: 15.8 };

function blockOf(id: string, change: Partial<DripSettings>): Block {
  return createBlock({ id, drip: createDripSettings({ emitterFlow_lph: 2, ...change }) });
}

/** A row of 600 m in each block; joins are allowed. */
function listOf(blocks: readonly Block[], water: readonly WaterPart[] = []) {
  const sketches = blocks.map(({ id }) => ({ length_m: 600, vines: 300, linePosts: 60, block: id }));
  const bare = createRows(...sketches);
  const rows = {
    ...bare,
    blocks: blocks.flatMap(({ id }) => bare.blocks.slice(0, 1).map((each) => ({ ...each, block: id }))),
  };
  const structure = trellis(rows, flatGround, blocks);
  if (!structure.ok) throw new Error("the trellis is not laid");
  const hung = drip(rows, { waterEnd: rows.rows.map(() => "start") }, blocks);
  const usual = createMaterialSettings();
  const settings = { ...usual, cutting: { ...usual.cutting, hoseJoins: "allowed" as const } };
  const list = materials(rows, structure.value, hung, blocks, settings, cutCoils, null, water);
  if (!list.ok) throw new Error("there is no list");
  const line = (article: string) => list.value.lines.find((each) => each.article === article);
  return { list: list.value, hung, line, words: (article: string) => text(line(article)?.spec ?? [], "metric") };
}

describe("hose and emitters are asked for as the settings have them", () => {
  test("the usual ones keep their plain names, and say flow, pressure and kind", () => {
    const { line, words } = listOf([blockOf("1", {})]);
    expect(line("emitter-2lph")?.needed).toBe(300);
    expect(words("emitter-2lph")).toBe(
      "2 L/h each at 100 kPa, pressure-compensating from 70 kPa to 350 kPa, barbed, to punch into the hose",
    );
    expect(words("hose")).toBe(
      "polyethylene tube, nominal 1/2 in, about 15.24 mm inside and 17.78 mm outside, for punched-in emitters",
    );
    expect(words("hose-join")).toMatch(/15.24 mm inside/);
  });

  test("plain emitters and another pressure go by other names, and so does other hose", () => {
    const articles = dripArticles([
      blockOf("1", {}),
      blockOf("2", { emitterKind: "plain", ...thin }),
      blockOf("3", { emitterPressure_kpa: 150 }),
      blockOf("4", { emitterPlacing: "in-line", emitterSpacing_m: 0.6 }),
    ]);
    expect([...articles.values()]).toEqual([
      { hose: "hose", emitter: "emitter-2lph" },
      { hose: "hose-13.6x15.8mm", emitter: "emitter-2lph-plain" },
      { hose: "hose", emitter: "emitter-2lph-at-150kpa" },
      { hose: "inline-hose-2lph-0.6m", emitter: null },
    ]);
    for (const { hose } of articles.values()) expect(isHose(hose)).toBe(true);
    expect(isHose("wire-13ga")).toBe(false);
  });

  test("each hose has its own cutting plan, joins, clips and line", () => {
    const { list, hung, line, words } = listOf([blockOf("1", {}), blockOf("2", thin)]);
    expect(list.coils.map(({ job }) => job.article).filter(isHose)).toEqual(["hose", "hose-13.6x15.8mm"]);
    expect(line("hose")?.needed).toBeCloseTo(hung.rows[0]?.lateral_m ?? 0, 9);
    expect(line("hose-13.6x15.8mm")?.needed).toBeCloseTo(hung.rows[1]?.lateral_m ?? 0, 9);
    // Rows of 600 m from coils of 152.4 m are joined.
    expect(line("hose-join")?.needed).toBeGreaterThan(2);
    expect(line("hose-join-13.6x15.8mm")?.needed).toBeGreaterThan(2);
    expect(words("hose-join-13.6x15.8mm")).toMatch(/13.6 mm inside and 15.8 mm outside/);
    const clips = list.lines.filter(({ kind }) => kind === "hose-clip");
    expect(clips.map(({ article, needed }) => [article, needed])).toEqual([
      ["hose-clip", hung.rows[0]?.hoseClips],
      ["hose-clip-15.8mm", hung.rows[1]?.hoseClips],
    ]);
  });

  test("hose with emitters inside is one article, and no emitters are bought beside it", () => {
    const { list, line, words } = listOf([blockOf("1", { emitterPlacing: "in-line", emitterSpacing_m: 0.6 })]);
    expect(list.lines.some(({ kind }) => kind === "emitter")).toBe(false);
    expect(line("inline-hose-2lph-0.6m")?.unit).toBe("m");
    expect(words("inline-hose-2lph-0.6m")).toMatch(/with emitters inside every 0.6 m: 2 L\/h each at 100 kPa/);
  });

  test("risers and their adapters fit the hose of their row", () => {
    const { parts } = createTrench({ project: { blocks: [blockOf("1", { ...thin, riserInside_mm: 26.24 })] } }).dug;
    const articles = parts.map(({ article }) => article);
    expect(articles).toContain("riser-26.24mm");
    expect(articles).toContain("riser-adapter-26.24mm-13.6x15.8mm");
    expect(articles).not.toContain("riser");
  });
});

const valve: WaterPart = {
  kind: "set-valve",
  article: "set-valve",
  item: "Set valves",
  spec: ["ball valve"],
  unit: "pieces",
  quantity: 3,
  perRow: null,
  pieces_m: [],
  purpose: "one a set",
  spare: 0,
};
const wire: WaterPart = {
  ...valve,
  kind: "valve-wire",
  article: "valve-wire",
  unit: "m",
  quantity: 330,
  pieces_m: [250, 80],
};
const cock: WaterPart = {
  ...valve,
  kind: "row-cock",
  article: "row-cock",
  perRow: [1, 1],
  quantity: 2,
  purpose: "one a row",
};

describe("what the water takes is on the list", () => {
  test("shared evenly where it serves all rows, by row where it says so", () => {
    const { list, line } = listOf([blockOf("1", {}), blockOf("2", {})], [valve, wire, cock]);
    expect(line("set-valve")).toMatchObject({ needed: 3, isShared: true });
    expect(line("row-cock")).toMatchObject({ needed: 2, isShared: false });
    const shares = list.rowNeeds[list.lines.findIndex(({ article }) => article === "set-valve")];
    expect(shares).toEqual([1.5, 1.5]);
    expect(list.lines[0]?.article).toBe("set-valve");
  });

  test("wire to bury is bought in coils that hold every piece whole", () => {
    const { line } = listOf([blockOf("1", {})], [wire]);
    const coils = line("valve-wire")?.packs ?? [];
    expect(Math.max(...coils.map(({ size }) => size))).toBeGreaterThan(250);
  });

  test("rows that the line does not reach share nothing of it", () => {
    const { dug } = createTrench();
    const unreached = {
      ...dug,
      profiles: dug.profiles.map((profile) => ({ ...profile, row: profile.row.map((row) => (row > 2 ? -1 : row)) })),
    };
    expect(waterNeeds([valve], 5, unreached)[0]?.perRow).toEqual([1, 1, 1, 0, 0]);
    expect(waterNeeds([valve], 5, null)[0]?.perRow).toEqual([0.6, 0.6, 0.6, 0.6, 0.6]);
  });
});

describe.each(["cock-a-row", "valve-a-set", "valves-at-source"] as const)("a whole plan with water, %s", (pattern) => {
  const usual = createProject({ sources: [{ key: "well", name: "Well", at: at([2, 2]) }] });
  const plan = createPlanner().plan({
    ...usual,
    water: { ...usual.water, kind: "town", staticPressure_kpa: 400, limitFlow_lph: 1500 },
    sets: { ...usual.sets, pattern, count: 3, control: "controller" },
  });
  const { watering, trench } = plan;
  const water = watering?.watering;
  if (!water || !trench || watering === null) throw new Error("the plan has no watering");

  test("loses nothing between watering, trench, rows and list", () => {
    expect(water.pipes.length).toBeGreaterThan(0);
    expect(trench.isSized).toBe(true);
    expect(nothingLost(plan)).toEqual([]);
  });

  test("a part, a pipe, hose or emitters that get lost are noticed", () => {
    const [first, ...rest] = water.parts;
    if (first === undefined) throw new Error("the water takes nothing");
    const more = { ...water, parts: [{ ...first, quantity: first.quantity + 1 }, ...rest] };
    expect(nothingLost({ ...plan, watering: { ...watering, watering: more } }).join()).toMatch(/for the water/);
    const short = { ...trench, pipes: trench.pipes.slice(1) };
    expect(nothingLost({ ...plan, trench: short }).join()).toMatch(/m chosen, .* in the trench/);
    const without = (kind: string): Plan => ({
      ...plan,
      materials:
        plan.materials === null
          ? null
          : { ...plan.materials, lines: plan.materials.lines.filter((line) => line.kind !== kind), coils: [] },
    });
    expect(nothingLost(without("hose")).join()).toMatch(/hose: .* on the list/);
    expect(nothingLost(without("emitter")).join()).toMatch(/emitters: .* on the list/);
  });
});
