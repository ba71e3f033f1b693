import { describe, expect, it } from "vitest";
import { compareNatural, featureKeys } from "../../src/core/identity.ts";

describe("the key of a feature", () => {
  it("is its id as text, or its place in the file counted from 0", () => {
    expect(featureKeys([{ id: "oak" }, { id: 7 }, {}, null, { id: { odd: true } }])).toEqual([
      "oak",
      "7",
      "#2",
      "#3",
      "#4",
    ]);
  });

  it("stays unique when ids repeat, or look like a place", () => {
    const keys = featureKeys([{ id: "1" }, { id: 1 }, { id: "#1" }, { id: "#4" }, {}, { id: "" }]);
    expect(keys).toEqual(["1", "#1", "#2", "#4", "#4'", "#5"]);
    expect(new Set(keys).size).toBe(keys.length);
  });
});

it("rows are counted as people count them", () => {
  const rows = ["15", "14b", "2", "10", "14", "14a", "east-2", "east-10", "1"];
  expect(rows.sort(compareNatural)).toEqual(["1", "2", "10", "14", "14a", "14b", "15", "east-2", "east-10"]);
});
