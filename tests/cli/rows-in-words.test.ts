import { expect, test } from "vitest";
import { rowsInWords } from "../../src/cli/rows-in-words.ts";

test("rows that follow each other are told by the first and the last, pieces of a line with them", () => {
  expect(rowsInWords(["1", "2", "3", "4"])).toBe("1 to 4");
  expect(rowsInWords(["1", "2"])).toBe("1, 2");
  expect(rowsInWords(["13", "14a", "14b", "15"])).toBe("13 to 15");
  expect(rowsInWords(["1", "2", "3", "7"])).toBe("1 to 3, 7");
});

test("rows of two blocks never run into each other", () => {
  expect(rowsInWords(["east-1", "east-2", "east-3", "west-4"])).toBe("east-1 to east-3, west-4");
});

test("of many runs the first few are told", () => {
  expect(rowsInWords(["1", "3", "5", "7", "9", "11"])).toBe("1, 3, 5, 7 and more");
});

test("none is nothing", () => {
  expect(rowsInWords([])).toBe("");
});
