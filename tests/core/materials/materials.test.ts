import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { drip } from "../../../src/core/drip/drip.ts";
import { flatGround } from "../../../src/core/ground/elevation.ts";
import { perVineAndArea } from "../../../src/core/materials/cost.ts";
import { cutCoils } from "../../../src/core/materials/cutting/cut-coils.ts";
import type { MaterialLine } from "../../../src/core/materials/material-line.ts";
import { type Materials, materials } from "../../../src/core/materials/materials.ts";
import type { Block, MaterialSettings, PriceEntry } from "../../../src/core/project/project.ts";
import type { Rows } from "../../../src/core/rows/rows.ts";
import { trellis } from "../../../src/core/trellis/lay-trellis.ts";
import { text } from "../../../src/core/units.ts";
import { createDripSettings } from "../../support/create-project.ts";
import { createBlock, createMaterialSettings, createRows } from "../../support/create-rows.ts";

const foot_m = 0.3048;
const coil_m = 1000 * foot_m;
/** Sums in another order. */
const near = 1e-6;

interface Listed extends Materials {
  readonly codes: readonly string[];
  readonly sentences: readonly string[];
}

function listOf(
  rows: Rows,
  blocks: readonly Block[] = [createBlock()],
  settings: Partial<MaterialSettings> = {},
  cut: Parameters<typeof materials>[5] = cutCoils,
): Listed {
  const structure = trellis(rows, flatGround, blocks);
  if (!structure.ok) throw new Error("rows always have a trellis");
  const waterEnd = rows.rows.map(() => "start" as const);
  const water = drip(rows, { waterEnd }, blocks);
  const list = materials(rows, structure.value, water, blocks, createMaterialSettings(settings), cut, null, []);
  if (!list.ok) throw new Error("materials always gives a list");
  // Short rows leave much on a coil; that is told by the cutting plan and tested with it.
  const findings = list.findings.filter(({ code }) => code !== "materials/much-left-over");
  return {
    ...list.value,
    codes: findings.map(({ code }) => code),
    sentences: findings.map(({ message }) => text(message, "us")),
  };
}

function lineOf({ lines }: Materials, article: string): MaterialLine {
  const found = lines.find((line) => line.article === article || line.article.startsWith(`${article}-`));
  if (found === undefined) throw new Error(`no line for ${article} in ${lines.map((line) => line.article).join(", ")}`);
  return found;
}

const packsIn = ({ packs }: MaterialLine) => packs.map(({ size, count }) => [size, count]);

const price = (article: string, size: number, cost: number | null, mass_kg: number | null = null): PriceEntry => ({
  article,
  size,
  price: cost,
  mass_kg,
  note: null,
});

const stock = (article: string, pieces: number, coils_m: readonly number[] = []) => ({ article, pieces, coils_m });

describe("what is needed", () => {
  const rows = createRows({ length_m: 100, vines: 50, linePosts: 12 }, { length_m: 60, vines: 30, linePosts: 7 });
  const list = listOf(rows);

  it("is two end posts and anchors a row, line posts and stakes as they stand", () => {
    const needed = (article: string) => lineOf(list, article).needed;
    expect(["end-post", "anchor", "line-post", "stake"].map(needed)).toEqual([4, 4, 19, 80]);
  });

  it("is a clip for every stake and fruiting wire, a hose clip a gap and two more, an emitter a vine", () => {
    const needed = (article: string) => lineOf(list, article).needed;
    expect(["stake-clip", "hose-clip", "emitter"].map(needed)).toEqual([160, 82, 80]);
  });

  it("is told in a sentence that says where it goes, with thickness, strength and zinc for wire", () => {
    const wire = lineOf(list, "wire");
    expect(wire.purpose).toBe("Drip and fruiting wire, 6 runs in 2 rows, with both tie-offs");
    expect(text(wire.spec, "us")).toBe("13 ga, low carbon or stronger, galvanized, any class");
    expect(lineOf(list, "line-post").purpose).toBe("between the end posts, they carry the wires; 2 rows");
    expect(list.lines.every(({ item, purpose }) => item !== "" && purpose !== "")).toBe(true);
  });

  it("stands in the order of the work, posts before wire, wire before hose, vines last", () => {
    const kinds = list.lines.map(({ kind }) => kind);
    const order = (["end-post", "line-post", "wire", "stake", "hose", "vine"] as const).map((kind) =>
      kinds.indexOf(kind),
    );
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order[0]).toBe(0);
  });

  it("is nothing where there is no row", () => {
    const empty = listOf(createRows());
    expect([empty.lines, empty.codes, empty.coils]).toEqual([[], [], []]);
  });

  it("tells emitters of two flows apart", () => {
    const other = createBlock({ id: "2", drip: createDripSettings({ emitterFlow_lph: 4, emittersPerVine: 2 }) });
    const two = createRows({ length_m: 100, vines: 50 }, { length_m: 60, vines: 30, block: "2" });
    const blocks = two.blocks.flatMap((each) => [each, { ...each, block: "2" }]);
    const emitters = listOf({ ...two, blocks }, [createBlock(), other]).lines.filter(({ kind }) => kind === "emitter");
    expect(emitters.map(({ article, needed }) => [article, needed])).toEqual([
      ["emitter-2lph", 50],
      ["emitter-4lph", 60],
    ]);
  });
});

describe("spare", () => {
  const list = listOf(createRows({ length_m: 200, vines: 101, linePosts: 24 }));

  it("is a share of clips, grippers, emitters, line posts and vines, rounded up to whole pieces", () => {
    const order = (article: string) => [lineOf(list, article).spare, lineOf(list, article).quantity];
    expect(order("stake-clip")).toEqual([11, 213]);
    expect(order("gripper")).toEqual([1, 7]);
    expect(order("emitter")).toEqual([6, 107]);
    expect(order("line-post")).toEqual([1, 25]);
    expect(order("vine")).toEqual([3, 104]);
  });

  it("is one end post more, and none of wire, whose coils keep a reserve", () => {
    expect(lineOf(list, "end-post")).toMatchObject({ needed: 2, spare: 1, quantity: 3 });
    expect(lineOf(list, "wire").spare).toBe(0);
  });
});

describe("packages", () => {
  const rows = createRows({ length_m: 200, vines: 100 });

  it("are bags that cover the spare", () => {
    const list = listOf(rows);
    expect(packsIn(lineOf(list, "stake-clip"))).toEqual([[200, 2]]);
    expect(packsIn(lineOf(list, "hose-clip"))).toEqual([[500, 1]]);
    expect(packsIn(lineOf(list, "emitter"))).toEqual([[100, 2]]);
    expect(packsIn(lineOf(list, "end-post"))).toEqual([[1, 3]]);
  });

  it("are the cheapest that cover, over all sizes of the price list", () => {
    const prices = [price("stake-clip", 50, 4), price("stake-clip", 200, 12), price("stake-clip", 500, 26)];
    const clips = lineOf(listOf(rows, undefined, { prices }), "stake-clip");
    expect(packsIn(clips)).toEqual([
      [200, 1],
      [50, 1],
    ]);
    expect(clips.price).toBe(16);
  });

  it("are coils as the cutting plan cuts them, or by length while there is none", () => {
    const bare = { kind: "gripper", allowance_m: 0 } as const;
    const ends = { tieOffStart: bare, tieOffEnd: bare };
    const { trellis: usual } = createBlock();
    const wires = usual.wires.map((wire) => ({ ...wire, ...ends }));
    const upright = { ...usual.endAssembly, kind: "vertical" } as const;
    const block = createBlock({ trellis: { ...usual, ...ends, wires, endAssembly: upright } });
    const cutting = { ...createMaterialSettings().cutting, wireJoins: "forbidden", hoseJoins: "forbidden" } as const;
    const settings = { wireCoils_m: [500], cutting };
    const four = createRows(...Array.from({ length: 4 }, () => ({ length_m: 260 })));
    const planned = listOf(four, [block], settings);
    expect(packsIn(lineOf(planned, "wire"))).toEqual([[500, 12]]);
    const byLength = listOf(four, [block], settings, () => null);
    expect(packsIn(lineOf(byLength, "wire"))).toEqual([[500, 7]]);
    expect(byLength.coils.every(({ plan }) => plan === null)).toBe(true);
  });

  it("check 2-38: 11 rows of 448 ft with two wires are three coils of 4000 ft", () => {
    // Layout of Iowa State University's vineyard establishment budget, as quoted in the calculation handbook; by length alone.
    const bare = { kind: "gripper", allowance_m: 0 } as const;
    const ends = { tieOffStart: bare, tieOffEnd: bare };
    const { trellis: usual } = createBlock();
    const wires = usual.wires.filter(({ purpose }) => purpose === "fruiting").map((wire) => ({ ...wire, ...ends }));
    const upright = { ...usual.endAssembly, kind: "vertical" } as const;
    const block = createBlock({ trellis: { ...usual, ...ends, wires, endAssembly: upright } });
    const eleven = createRows(...Array.from({ length: 11 }, () => ({ length_m: 448 * foot_m })));
    const wire = lineOf(
      listOf(eleven, [block], { wireCoils_m: [4000 * foot_m] }, () => null),
      "wire",
    );
    expect(Math.abs(wire.needed - 9856 * foot_m)).toBeLessThan(near);
    expect(packsIn(wire)).toEqual([[4000 * foot_m, 3]]);
  });

  it("of joins follow the cutting plan, wire and hose apart, and are priced as set", () => {
    const long = createRows({ length_m: 400, vines: 200, linePosts: 49 });
    const cutting = { ...createMaterialSettings().cutting, wireJoinPrice: 2 };
    const list = listOf(long, undefined, { cutting });
    const joins = list.coils.map(({ plan }) => plan?.fewestCoils?.joins ?? 0);
    expect(joins[0]).toBeGreaterThan(2);
    expect(lineOf(list, "wire-join").needed).toBe(joins[0]);
    expect(lineOf(list, "wire-join").price).toBe(2 * lineOf(list, "wire-join").quantity);
    expect(lineOf(list, "hose-join")).toMatchObject({ needed: joins[1], price: null });
  });

  it("of tie-back wire give whole tie-backs from every coil", () => {
    const ten = createRows(...Array.from({ length: 10 }, () => ({ length_m: 60 })));
    const one = lineOf(listOf(ten), "tie-wire").needed / 20;
    const fits = (one + 0.3) * 7.5;
    const settings = { wireCoils_m: [(fits + 2) / 0.99] };
    expect(packsIn(lineOf(listOf(ten, undefined, settings), "tie-wire")).map(([, count]) => count)).toEqual([3]);
  });
});

describe("what is on hand", () => {
  const rows = createRows({ length_m: 100, vines: 50, linePosts: 12 }, { length_m: 60, vines: 30, linePosts: 7 });

  it("comes off what is bought", () => {
    const onHand = [stock("stake-clip", 50), stock("stake-clip", 10), stock("emitter-2lph", 1000)];
    const list = listOf(rows, undefined, { onHand });
    expect(lineOf(list, "stake-clip")).toMatchObject({ quantity: 168, onHand: 60, toBuy: 108 });
    expect(lineOf(list, "emitter")).toMatchObject({ onHand: 1000, toBuy: 0, packs: [], price: 0 });
    expect(list.codes).toEqual([]);
  });

  it("of wire and hose is cut up before coils are bought", () => {
    const list = listOf(rows, undefined, { onHand: [stock("wire-13ga", 0, [coil_m, 250]), stock("hose", 0, [500])] });
    expect(lineOf(list, "wire-13ga")).toMatchObject({ onHand: coil_m + 250, toBuy: 0, packs: [] });
    expect(lineOf(list, "hose")).toMatchObject({ onHand: 500, packs: [] });
  });

  it("but not needed is told in one note, and what is told in the wrong unit in one warning", () => {
    const onHand = [stock("string", 3), stock("wire-9ga", 0, [100]), stock("anchor", 0, [5]), stock("hose", 2)];
    const { codes, sentences } = listOf(rows, undefined, { onHand });
    expect(codes).toEqual(["materials/stock-not-needed", "materials/stock-mistold"]);
    expect(sentences[0]).toContain("string, wire-9ga");
    expect(sentences[1]).toContain("anchor, hose");
  });
});

describe("prices and masses", () => {
  const rows = createRows({ length_m: 100, vines: 50, linePosts: 12 }, { length_m: 60, vines: 30, linePosts: 7 });

  it("are not known, never 0, where nobody gave them", () => {
    const { lines, cost } = listOf(rows);
    expect(lines.every(({ price: sum }) => sum === null)).toBe(true);
    expect(cost).toMatchObject({ price: 0, unpriced: lines.length });
    expect(lineOf({ ...listOf(rows) }, "line-post").mass_kg).toBeNull();
  });

  it("add up to the cost, and rows and blocks have their shares of it", () => {
    const bought = listOf(rows);
    const prices = bought.lines.map(({ article, unit }, i) => price(article, unit === "m" ? coil_m : 7, i + 0.5));
    const list = listOf(rows, undefined, { prices });
    const sum = (of: readonly { readonly price: number }[]) => of.reduce((total, each) => total + each.price, 0);
    expect(list.cost.unpriced).toBe(0);
    expect(list.cost.price).toBeCloseTo(
      list.lines.reduce((total, line) => total + (line.price ?? 0), 0),
      6,
    );
    expect(sum(list.rowCosts)).toBeCloseTo(list.cost.price, 6);
    expect(sum(list.blockCosts)).toBeCloseTo(list.cost.price, 6);
    expect(list.rowCosts[0]?.price).toBeGreaterThan(list.rowCosts[1]?.price ?? Infinity);
    expect(perVineAndArea(list.cost, rows)).toEqual({
      perVine: list.cost.price / 80,
      perArea_m2: list.cost.price / (160 * 3),
    });
    expect(perVineAndArea(list.cost, createRows())).toEqual({ perVine: null, perArea_m2: null });
  });

  it("of wire follow from the steel: 1000 ft of 12 1/2 gauge are 11.8826 kg", () => {
    // Calculation handbook, section 9.
    const { trellis: usual } = createBlock();
    const wires = usual.wires.map((wire) => ({ ...wire, diameter_mm: 2.5146 }));
    const wire = lineOf(listOf(rows, [createBlock({ trellis: { ...usual, wires } })]), "wire");
    expect(wire.packs[0]?.mass_kg).toBeCloseTo(11.8826, 4);
    expect(wire.mass_kg).toBeCloseTo(11.8826 * (wire.packs[0]?.count ?? 0), 3);
  });

  it("of more than 23 kg a package say that it takes two people, in one note", () => {
    const light = listOf(rows, undefined, {
      prices: [price("anchor", 1, null, 23), price("stake-clip", 200, null, 23)],
    });
    expect(light.codes).toEqual([]);
    const prices = [price("anchor", 1, null, 23.1), price("stake-clip", 200, null, 40)];
    const heavy = listOf(rows, undefined, { prices });
    expect(lineOf(heavy, "anchor").isTwoPersonLift).toBe(true);
    expect(heavy.codes).toEqual(["materials/two-person-packages"]);
    expect(heavy.sentences[0]).toContain("Ground anchors, Stake clips");
  });
});

describe("vines", () => {
  const planting = (
    fromRow: number,
    toRow: number,
    variety: string,
    rootstock: string | null,
    spare_ratio: number,
  ) => ({
    fromRow,
    toRow,
    variety,
    rootstock,
    spare_ratio,
  });
  const vinesIn = ({ lines }: Materials) =>
    lines.filter(({ kind }) => kind === "vine").map(({ spec, quantity }) => [text(spec, "us"), quantity]);

  it("take their own spare where a planting names them, the other rows the default", () => {
    const rows = createRows(...Array.from({ length: 4 }, () => ({ length_m: 100, vines: 50 })));
    const block = createBlock({
      plantings: [planting(1, 2, "Early white", "lowland stock", 0.1), planting(3, 3, "Late red", null, 0)],
    });
    const list = listOf(rows, [block]);
    expect(vinesIn(list)).toEqual([
      ["Early white on lowland stock", 110],
      ["Late red", 50],
      ["variety not chosen yet", 51],
    ]);
    expect(lineOf(list, "vine-Late red").needed).toBe(50);
  });

  it("of a split row belong to the planting of their line's number", () => {
    const rows = createRows({ length_m: 50, vines: 25, number: 14 }, { length_m: 40, vines: 20, number: 14 });
    const list = listOf(rows, [createBlock({ plantings: [planting(14, 14, "Late red", null, 0)] })]);
    expect(vinesIn(list)).toEqual([["Late red", 45]]);
  });

  it.each([
    { from: 7, to: 9, code: "materials/planting-without-rows" },
    { from: 2, to: 9, code: "materials/planting-past-last-row" },
    { from: 1, to: 2, code: "materials/plantings-overlap" },
  ])("planned for rows $from to $to beside others in row 1 of two give $code", ({ from, to, code }) => {
    const rows = createRows({ length_m: 100, vines: 50 }, { length_m: 100, vines: 50 });
    const plantings = [planting(1, 1, "Early white", null, 0), planting(from, to, "Late red", null, 0)];
    const { codes } = listOf(rows, [createBlock({ plantings })]);
    expect(codes.filter((each) => each.startsWith("materials/planting"))).toEqual([code]);
  });
});

test("what no package covers is told, once for all of it", () => {
  const cutting = { ...createMaterialSettings().cutting, heaviestCoil_kg: 1 };
  const { codes, sentences } = listOf(createRows({ length_m: 100 }), undefined, { cutting });
  expect(codes.filter((code) => code === "materials/not-covered")).toHaveLength(1);
  expect(sentences[codes.indexOf("materials/not-covered")]).toBe("No package covers what is needed of: Tie-back wire.");
});

test("rows that stand already are counted and said to be", () => {
  expect(listOf(createRows({ length_m: 100, given: "row-1" })).codes).toContain("materials/standing-rows-counted");
});

test("every line is the sum of its rows, and what is bought and on hand covers it", () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          length_m: fc.integer({ min: 20, max: 290 }),
          vines: fc.integer({ min: 0, max: 90 }),
          linePosts: fc.integer({ min: 0, max: 30 }),
        }),
        { minLength: 1, maxLength: 12 },
      ),
      fc.integer({ min: 0, max: 400 }),
      (sketches, pieces) => {
        const onHand = [stock("stake-clip", pieces), stock("hose", 0, [pieces]), stock("wire-13ga", 0, [pieces])];
        const list = listOf(createRows(...sketches), undefined, { onHand });
        list.lines.forEach(({ needed, quantity, onHand: there, packs }, i) => {
          const rows = list.rowNeeds[i] ?? [];
          expect(rows).toHaveLength(sketches.length);
          expect(Math.abs(rows.reduce((sum, each) => sum + each, 0) - needed)).toBeLessThan(near);
          const held = packs.reduce((sum, { size, count }) => sum + size * count, 0);
          expect(there + held).toBeGreaterThanOrEqual(quantity - near);
        });
      },
    ),
    { seed: 16_20, numRuns: 60 },
  );
});
