import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

/** WCAG 2.2, success criteria 1.4.3 (text) and 1.4.11 (what shows a control or its state); figures from memory. */
const text = 4.5;
const shape = 3;

const sheet = readFileSync(new URL("../../src/app/styles/tokens.css", import.meta.url), "utf8");

/** A colour of the page by its token's name. */
function token(name: string): string {
  const colour = new RegExp(`--${name}: (#[0-9a-f]{6});`).exec(sheet)?.[1];
  if (colour === undefined) throw new Error(`no colour is called ${name}`);
  return colour;
}

/** Relative luminance as WCAG 2.2 defines it. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

test("contrast of known pairs comes out as published: black on white 21, #767676 on white just over 4.5", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 9);
  expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
});

test.each([
  ["ink", ["paper", "sheet", "tint", "chosen", "refused", "halo"]],
  ["quiet-ink", ["paper", "sheet", "tint", "chosen"]],
  ["error", ["paper", "sheet", "tint", "refused"]],
  ["amber", ["paper", "sheet", "tint"]],
  ["clay", ["sheet", "tint"]],
  ["steel", ["sheet"]],
  ["sheet", ["ink", "vine", "error"]],
] as const)("what is written in %s can be read on %s", (ink, grounds) => {
  for (const ground of grounds) {
    expect(contrast(token(ink), token(ground)), `${ink} on ${ground}`).toBeGreaterThanOrEqual(text);
  }
});

test.each([
  // The ring around what has the focus, the line under a field, the strokes of chart, side view and grip.
  ["water", ["paper", "sheet", "tint", "chosen", "refused"]],
  ["quiet-ink", ["paper", "sheet"]],
  ["rule", ["paper", "sheet"]],
  ["vine", ["paper", "sheet", "held-ground"]],
  ["steel", ["paper", "sheet"]],
  ["clay", ["paper"]],
] as const)("shapes in %s can be seen on %s", (ink, grounds) => {
  for (const ground of grounds) {
    expect(contrast(token(ink), token(ground)), `${ink} on ${ground}`).toBeGreaterThanOrEqual(shape);
  }
});
