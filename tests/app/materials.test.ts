import { describe, expect, test } from "vitest";
import { addPackage, changePackage, removePackage } from "../../src/app/commands/change-prices.ts";
import { changeCoils, changePieces, coilsAsWritten } from "../../src/app/commands/change-stock.ts";
import { openProject } from "../../src/app/commands/open-project.ts";
import { boughtText, boundText } from "../../src/app/materials/answer-text.ts";
import { amountText, packsText } from "../../src/app/materials/line-text.ts";
import { money, typedMoney } from "../../src/app/materials/money.ts";
import { typedCoils } from "../../src/app/materials/typed-coils.ts";
import { createStore, type Store } from "../../src/app/store.ts";
import type { CutAnswer } from "../../src/core/materials/cutting/cut-plan.ts";
import { materials as materialsStage } from "../../src/core/materials/materials.ts";
import type { Json } from "../../src/core/project/project.ts";
import { text } from "../../src/core/units.ts";

/** A store with a small parcel open; `materials` as its file states them. */
function createOpenStore(materials: Readonly<Record<string, Json>> = {}): Store {
  const store = createStore();
  store.materialsOf.value = materialsStage;
  const ring = [
    [-121.184, 39.151],
    [-121.183, 39.151],
    [-121.183, 39.152],
    [-121.184, 39.152],
    [-121.184, 39.151],
  ];
  const file = {
    type: "FeatureCollection",
    tautrow: { version: 1, name: "Invented", units: "us", materials },
    features: [
      { type: "Feature", id: "p", properties: { role: "parcel" }, geometry: { type: "Polygon", coordinates: [ring] } },
    ],
  };
  if (!openProject(store, JSON.stringify(file), "invented.geojson")) throw new Error("it was not opened");
  return store;
}

const stated = (store: Store, list: string): Json | undefined => {
  const materials = store.project.value?.document.tautrow?.materials;
  return typeof materials === "object" && materials !== null && !Array.isArray(materials)
    ? Object.entries(materials).find(([name]) => name === list)?.[1]
    : undefined;
};

describe("what is there already", () => {
  test("one more coil leaves the others as the file writes them, units and all", () => {
    const store = createOpenStore({
      onHand: [
        { article: "wire-13ga", coils: ["640 ft"] },
        { article: "stake", pieces: 400 },
      ],
    });
    expect(changeCoils(store, "wire-13ga", [...coilsAsWritten(store, "wire-13ga"), "1000 ft"], { name: "x" })).toEqual(
      [],
    );
    expect(stated(store, "onHand")).toEqual([
      { article: "wire-13ga", coils: ["640 ft", "1000 ft"] },
      { article: "stake", pieces: 400 },
    ]);
  });

  test("the last coil taken out takes the entry out, and the list when it was the only one", () => {
    const store = createOpenStore({ onHand: [{ article: "wire-13ga", coils: ["640 ft"] }] });
    expect(changeCoils(store, "wire-13ga", [], { name: "x" })).toEqual([]);
    expect(stated(store, "onHand")).toBeUndefined();
  });

  test("none of something that was never there is no entry", () => {
    const store = createOpenStore();
    expect(changePieces(store, "stake", 0, { name: "x" })).toEqual([]);
    expect(stated(store, "onHand")).toBeUndefined();
    expect(changePieces(store, "stake", 12, { name: "x" })).toEqual([]);
    expect(stated(store, "onHand")).toEqual([{ article: "stake", pieces: 12 }]);
  });
});

describe("the person's own prices", () => {
  test("a first price writes every size that is sold now, so that none is lost", () => {
    const store = createOpenStore();
    expect(changePackage(store, "wire-13ga", [304.8, 1524], 1, "price", 300, { name: "x" })).toEqual([]);
    expect(stated(store, "prices")).toEqual([
      { article: "wire-13ga", size: 304.8 },
      { article: "wire-13ga", size: 1524, price: 300 },
    ]);
  });

  test("an empty price is none, which is not a price of 0", () => {
    const store = createOpenStore({ prices: [{ article: "stake", size: 10, price: 25 }] });
    expect(changePackage(store, "stake", [10], 0, "price", null, { name: "x" })).toEqual([]);
    expect(stated(store, "prices")).toEqual([{ article: "stake", size: 10 }]);
    expect(store.project.value?.materials.prices[0]?.price).toBeNull();
  });

  test("sizes are added and taken out where their article stands in the list", () => {
    const store = createOpenStore({
      prices: [
        { article: "stake", size: 10 },
        { article: "staple", size: 500, price: 9 },
      ],
    });
    expect(addPackage(store, "stake", [10], 50, { name: "x" })).toEqual([]);
    expect(removePackage(store, "stake", 0, { name: "x" })).toEqual([]);
    expect(stated(store, "prices")).toEqual([
      { article: "stake", size: 50 },
      { article: "staple", size: 500, price: 9 },
    ]);
    expect(removePackage(store, "stake", 0, { name: "x" })).toEqual([]);
    expect(stated(store, "prices")).toEqual([{ article: "staple", size: 500, price: 9 }]);
  });
});

describe("as it is read and typed", () => {
  test("money is written as the person writes their currency", () => {
    expect(money(1234.5, "$")).toBe("$1,234.50");
    expect(money(1234.5, "EUR")).toBe("1,234.50 EUR");
    expect(money(0.004, null)).toBe("0.00");
  });

  test("a price is a number alone, with a point or a comma", () => {
    expect(["89.5", "89,50", "1,234.50", "1,234", " 7 "].map(typedMoney)).toEqual([89.5, 89.5, 1234.5, 1234, 7]);
    expect(["", "$5", "-1", "5 EUR", "1.2.3", ".", "1,2,3"].map(typedMoney)).toEqual(Array(7).fill(null));
  });

  test("several coils at once are a number, a cross and a length", () => {
    expect(typedCoils("3 × 1000 ft")).toEqual({ number: 3, length: "1000 ft" });
    expect(typedCoils("3x300")).toEqual({ number: 3, length: "300" });
    expect(typedCoils(" 640 ft ")).toEqual({ number: 1, length: "640 ft" });
  });

  test("nothing is no negative nothing, and what is all there is nothing to buy", () => {
    expect(amountText(0, "pieces", "us")).toBe("0");
    expect(packsText({ unit: "pieces", packs: [] }, "us")).toBe("nothing");
    const pack = { price: null, mass_kg: null };
    expect(packsText({ unit: "pieces", packs: [{ ...pack, size: 1, count: 78 }] }, "us")).toBe("78");
    expect(packsText({ unit: "pieces", packs: [{ ...pack, size: 500, count: 2 }] }, "us")).toBe("2 × 500");
    expect(packsText({ unit: "m", packs: [{ ...pack, size: 304.8, count: 15 }] }, "us")).toBe("15 × 1,000 ft");
  });
});

describe("how good a way of cutting is known to be", () => {
  const answer = (told: Partial<CutAnswer>): CutAnswer => ({
    coils: [],
    bought: [{ length_m: 304.8, count: 12 }],
    boughtCount: 12,
    bought_m: 12 * 304.8,
    joins: 0,
    price: null,
    bound: { by: "length", coils: 11, least: 11 * 304.8 },
    isOptimal: false,
    ...told,
  });

  test("a bound that is not met says so", () => {
    expect(boundText(answer({}), null)).toBe(
      "At least 11 coils by the total length; whether fewer than 12 can do is not known.",
    );
  });

  test("a bound that is met says that nothing better can be had", () => {
    const met = { isOptimal: true, bound: { by: "search", coils: 12, least: 12 * 304.8 } } as const;
    expect(boundText(answer(met), null)).toBe("Fewer can not do: at least 12 coils after every way was tried.");
    const cheapest = { ...met, bound: { by: "linear-program", coils: 3, least: 900 }, price: 900 } as const;
    expect(boundText(answer(cheapest), "$")).toMatch(/^Cheaper can not be had: at least \$900\.00/);
  });

  test("what is bought and joined is told in one sentence", () => {
    expect(text(boughtText(answer({ joins: 1 })), "us")).toBe("12 coils of 1,000 ft to buy, 1 join");
    expect(text(boughtText(answer({ bought: [] })), "us")).toBe("Nothing to buy, no joins");
  });
});
