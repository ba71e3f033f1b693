import fc from "fast-check";
import { expect, test } from "vitest";
import type { Layer, LayerFeature, NameParts } from "../../../src/core/exchange/layers/layer.ts";
import { named } from "../../../src/core/exchange/layers/named.ts";
import { namesOf } from "../../../src/core/exchange/naming.ts";
import { lonLat } from "../../../src/core/plane/coordinate.ts";

const any = { longest: null, letters: "any" } as const;

test.each([
  ["{id}", "vine-east-14a-3"],
  ["{kind} {row} {number}", "vine 14a 3"],
  ["R{row}{code}{number:2}", "R14aV03"],
  ["{block:2}{row}{code}{number:4}", "ea14aV0003"],
  ["{row:3}-{number}", "014a-3"],
  ["{BLOCK} { row }", "east 14a"],
])("the pattern %s calls a vine %s", (pattern, name) => {
  const vine = createThing({ block: "east", row: "14a", number: 3 }, "vine-east-14a-3");
  expect(namesOf([layerOf(vine)], { pattern, ...any }).of(vine)).toBe(name);
});

test.each([
  ["{block}-{row}-{number}", { block: null, row: "14a", number: 3 }, "14a-3"],
  ["{block}-{row}-{number}", { block: "east", row: null, number: 3 }, "east-3"],
  ["{block}-{row}-{number}", { block: "east", row: "14a", number: null }, "east-14a"],
  ["{kind} {block} {row} {number}", { block: null, row: null, number: null }, "vine"],
])("in %s nothing is left of what has no value, nor the separator beside it", (pattern, parts, name) => {
  const thing = createThing(parts);
  expect(namesOf([layerOf(thing)], { pattern, ...any }).of(thing)).toBe(name);
});

test("what the person named keeps its name whatever the pattern", () => {
  const mark = createThing({ kind: "mark", own: "Gate pin" }, "mark-7");
  expect(namesOf([layerOf(mark)], { pattern: "R{row}{code}{number}", ...any }).of(mark)).toBe("Gate pin");
});

test("of a name that is too long the word of the block is shortened, the numbers stay", () => {
  const vine = createThing({ block: "eastfield", row: "14a", number: 23 });
  const names = namesOf([layerOf(vine)], { pattern: "{block}-{row}-{number}", longest: 10, letters: "any" });
  expect(names.of(vine)).toBe("eas-14a-23");
  expect(names.changed).toEqual([{ id: vine.id, wished: "eastfield-14a-23", name: "eas-14a-23" }]);
});

test("a name of its own that is too long keeps its beginning", () => {
  const mark = createThing({ kind: "mark", own: "Gate pin at the oak" });
  const names = namesOf([layerOf(mark)], { pattern: "{id}", longest: 9, letters: "any" });
  expect(names.of(mark)).toBe("Gate pin");
});

test("names that come out the same get a number, over all layers of a file, and are told", () => {
  const vine = createThing({ row: "1", number: 1 }, "vine-1-1");
  const post = createThing({ row: "1", number: 1 }, "post-1-1");
  const mark = createThing({ kind: "mark", own: "1.1" }, "mark-1");
  const names = namesOf([layerOf(vine), layerOf(post), layerOf(mark)], { pattern: "{row}.{number}", ...any });
  expect([vine, post, mark].map(names.of)).toEqual(["1.1-2", "1.1-3", "1.1"]);
  expect(names.changed.map(({ id, wished, name }) => [id, wished, name])).toEqual([
    ["vine-1-1", "1.1", "1.1-2"],
    ["post-1-1", "1.1", "1.1-3"],
  ]);
});

test("where receivers write capitals only, capitals tell no names apart", () => {
  const [gate, other] = [createThing({ own: "Gate" }, "mark-1"), createThing({ own: "GATE" }, "mark-2")];
  const names = namesOf([layerOf(gate, other)], { pattern: "{id}", longest: 10, letters: "ascii" });
  expect([gate, other].map(names.of)).toEqual(["Gate", "GATE-2"]);
});

test.each([
  ["Niña Häusl", "Nina Hausl"],
  ["Straße – Øst “Łód” 5 №", 'Strasse - Ost "Lod" 5 No'],
  ["ﬁeld\u00a0½", "field 1_2"],
  ["葡萄 3", "__ 3"],
])("in ASCII %j is %j", (own, plain) => {
  const mark = createThing({ own });
  expect(namesOf([layerOf(mark)], { pattern: "{id}", longest: null, letters: "ascii" }).of(mark)).toBe(plain);
});

test("line breaks and other control characters are spaces in every name", () => {
  const mark = createThing({ own: "a\r\nb\u0000c\ud800" });
  expect(namesOf([layerOf(mark)], { pattern: "{id}", ...any }).of(mark)).toBe("a b c\ufffd");
});

test("a name that comes out empty is the id", () => {
  const mark = createThing({}, "route-main");
  const names = namesOf([layerOf(mark)], { pattern: "{block}", ...any });
  expect(names.of(mark)).toBe("route-main");
  expect(names.changed).toEqual([{ id: "route-main", wished: "", name: "route-main" }]);
});

test("in a large layer of names by id too, a mark that is called like a vine keeps its name and the vine gets another", () => {
  const vines = Array.from({ length: 20_001 }, (_, i) => createThing({ row: "1", number: i + 1 }, `vine-1-${i + 1}`));
  const mark = createThing({ kind: "mark", own: "vine-1-7" }, "mark-1");
  const names = namesOf([layerOf(...vines), layerOf(mark)], { pattern: "{id}", ...any });
  expect(names.of(mark)).toBe("vine-1-7");
  expect(names.changed).toEqual([{ id: "vine-1-7", wished: "vine-1-7", name: "vine-1-7-2" }]);
});

test("whatever things are called, names are never twice the same, never too long, and every change is told", () => {
  const word = fc.oneof(fc.string({ unit: "grapheme", maxLength: 12 }), fc.constantFrom("a", "A", "ä", "-", ""));
  const thing = fc.record({
    block: fc.option(word),
    row: fc.option(word),
    number: fc.option(fc.integer({ min: 1, max: 30 })),
    own: fc.option(word),
  });
  fc.assert(
    fc.property(
      fc.array(thing, { maxLength: 40 }),
      fc.constantFrom("{id}", "{row}{number:2}", "{kind} {block:2}-{row}", "x"),
      fc.option(fc.integer({ min: 5, max: 20 })),
      fc.constantFrom("any" as const, "ascii" as const),
      (parts, pattern, longest, letters) => {
        const things = parts.map((each, i) => createThing(each, `thing-${i}`));
        const names = namesOf([layerOf(...things)], { pattern, longest, letters });
        const given = things.map(names.of);
        expect(new Set(given).size).toBe(things.length);
        const changed = new Map(names.changed.map(({ id, name }) => [id, name]));
        const wished = namesOf([], { pattern, ...any });
        for (const [i, name] of given.entries()) {
          const each = things[i];
          if (each === undefined) throw new Error("a name without a thing");
          expect(Array.from(name).length).toBeLessThanOrEqual(longest ?? Infinity);
          if (letters === "ascii") expect(name).toMatch(/^[ -~]*$/);
          expect(changed.get(each.id) ?? name).toBe(name);
          if (!changed.has(each.id)) expect(name).toBe(each.parts.own ?? wished.of(each));
        }
      },
    ),
    { seed: 7, numRuns: 400 },
  );
});

function createThing(parts: Partial<NameParts>, id = "thing-1"): LayerFeature {
  return {
    id,
    parts: { kind: "vine", code: "V", block: null, row: null, number: null, own: null, ...parts },
    geometry: { shape: "point", place: { at: lonLat(0, 0), height_m: null } },
    values: [],
  };
}

function layerOf(...things: readonly LayerFeature[]): Layer {
  return named({ kind: "marks", shape: "point", columns: [], count: things.length, features: () => things });
}
