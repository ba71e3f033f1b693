import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { createPlanner } from "../../../src/core/planner.ts";
import { parseProject } from "../../../src/core/project/parse.ts";
import { thumbnail } from "../../../src/core/sheets/thumbnail.ts";

function planOf(text: string) {
  const read = parseProject(text);
  if (!read.ok) throw new Error("the project can not be read");
  return createPlanner().plan(read.value);
}

function sampleText(name: string): string {
  return readFileSync(new URL(`../../../samples/${name}/project.geojson`, import.meta.url), "utf8");
}

function numbersIn(svg: string): number[] {
  return [...svg.matchAll(/ d="([^"]*)"/g)].flatMap(([, path = ""]) =>
    (path.match(/-?\d+(\.\d+)?/g) ?? []).map(Number),
  );
}

describe("the small drawing of a project", () => {
  test.each(["acre-with-notch", "brook-and-two-blocks", "crooked-strip"])(
    "%s fills its sheet and stays on it",
    (name) => {
      const numbers = numbersIn(thumbnail(planOf(sampleText(name))));
      const xs = numbers.filter((_, i) => i % 2 === 0);
      const ys = numbers.filter((_, i) => i % 2 === 1);
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(5.9);
      expect(Math.max(...xs)).toBeLessThanOrEqual(114.1);
      expect(Math.min(...ys)).toBeGreaterThanOrEqual(5.9);
      expect(Math.max(...ys)).toBeLessThanOrEqual(74.1);
      const isAsWideAsTheSheet = Math.max(...xs) - Math.min(...xs) > 107;
      const isAsHighAsTheSheet = Math.max(...ys) - Math.min(...ys) > 67;
      expect(isAsWideAsTheSheet || isAsHighAsTheSheet).toBe(true);
    },
  );

  test("north is up: a parcel's northern corner is drawn above its southern one", () => {
    const ring = [
      [7, 50],
      [7.001, 50],
      [7.0005, 50.002],
      [7, 50],
    ];
    const [, path = ""] =
      / d="M([^"Z]*)Z/.exec(thumbnail(planOf(JSON.stringify({ type: "Polygon", coordinates: [ring] })))) ?? [];
    const ys = path.split("L").map((pair) => Number(pair.split(" ")[1]));
    expect(ys).toHaveLength(3);
    expect(Math.min(...ys)).toBe(ys[2]);
  });

  test("no more than some forty of many rows are drawn, all of a few", () => {
    const dense = thumbnail(planOf(sampleText("acre-with-notch").replace('"8 ft"', '"4 ft"')));
    const lines = (/stroke="#3e6b3a"/.exec(dense) ? dense.split("<path").at(-1) : "")?.match(/L/g)?.length ?? 0;
    expect(lines).toBeGreaterThan(10);
    expect(lines).toBeLessThanOrEqual(40);
  });

  test("an empty project is an empty sheet, and no text of the project gets into the drawing", () => {
    expect(thumbnail(planOf('{"type":"FeatureCollection","features":[]}'))).toContain("stroke-dasharray");
    const hostile = sampleText("crooked-strip").replace(/"name": "Crooked strip"/, '"name": "<script>"');
    expect(thumbnail(planOf(hostile))).not.toContain("script");
  });
});
