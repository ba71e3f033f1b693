import { expect, test } from "vitest";
import { wrapped } from "../../src/cli/wrapped.ts";

const width = 100;
const text = Array.from({ length: 40 }, (_, i) => `post ${i} at ${i}.5 m`).join(", ");

test("long text is broken into lines of at most 100 letters, none of it lost", () => {
  const lines = wrapped(text, "  ").trimEnd().split("\n");
  expect(lines.length).toBeGreaterThan(5);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
  expect(lines.map((line) => line.trim()).join(" ")).toBe(text);
});

test("a number stays with its unit", () => {
  for (const line of wrapped(text, "").trimEnd().split("\n")) expect(line).not.toMatch(/\d$/);
});

test("a word longer than a line stands alone and whole", () => {
  const word = "x".repeat(150);
  expect(wrapped(`a ${word} b`, "")).toBe(`a\n${word}\nb\n`);
});
