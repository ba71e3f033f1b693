import { expect, test } from "vitest";
import type { Plan } from "../../../src/core/plan.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { withSettings } from "../../../src/core/project/edits.ts";
import { endAssemblyKinds, type Json, type Project } from "../../../src/core/project/project.ts";
import { type RowSide, rowSide } from "../../../src/core/sheets/row-side.ts";
import { rowSideSheet, rowSideSvg } from "../../../src/core/sheets/row-side-svg.ts";
import { groundAt, sideGround } from "../../../src/core/sheets/side-ground.ts";
import { hoseHeight_m } from "../../../src/core/sheets/side-hung.ts";
import { sideScale } from "../../../src/core/sheets/side-scale.ts";
import { sagAt } from "../../../src/core/sheets/side-wires.ts";
import { readSample } from "../../support/sample-plans.ts";

function changed(project: Project, ...settings: readonly (readonly [string, Json])[]): Project {
  const after = withSettings(project, settings);
  if (!after.ok) throw new Error("the settings were refused");
  return after.value;
}

function createPlan(...settings: readonly (readonly [string, Json])[]): Plan {
  return createPlanner().plan(changed(readSample("acre-with-notch"), ...settings));
}

function createSide(plan: Plan = createPlan(), row = "5"): RowSide {
  const side = rowSide(plan, row);
  if (!side) throw new Error(`there is no row ${row}`);
  return side;
}

function times(text: string, part: string): number {
  return text.split(part).length - 1;
}

test("at 1:50 a metre is 1/50 of a metre on a screen of 96 pixels an inch, along and up alike", () => {
  const { x, y, raised } = sideScale(createSide(), 50, 800);
  const metre_px = 96 / 0.0254 / 50;
  expect(x(1) - x(0)).toBeCloseTo(metre_px, 9);
  expect(y(0) - y(1)).toBeCloseTo(metre_px, 9);
  expect(raised).toBeCloseTo(1, 9);
});

test("the whole row fits its room with the anchors outside it, and how much heights are raised is told", () => {
  const side = createSide();
  const { x, y, width, raised } = sideScale(side, "whole", 800);
  expect(width).toBeCloseTo(800, 6);
  expect(x(side.from_m)).toBeGreaterThan(0);
  expect(x(side.to_m)).toBeLessThan(800);
  expect(raised).toBeCloseTo((y(0) - y(1)) / (x(1) - x(0)), 9);
  expect(rowSideSheet(side, { units: "us" }).reading.join(" ")).toContain("times as large");
});

test.each(endAssemblyKinds)("a row with %s ends is drawn with everything it has, once each", (kind) => {
  const plan = createPlan(["trellis.endAssembly.kind", kind]);
  const side = createSide(plan);
  const svg = rowSideSvg(plan, "5", { units: "us", zoom: 50 }) ?? "";
  expect(times(svg, 'class="side-vine"')).toBe(side.vines.length);
  expect(times(svg, 'class="side-stake"')).toBe(side.stakes.length);
  expect(times(svg, "post-line")).toBe(side.posts.filter((post) => post.kind === "line").length);
  expect(times(svg, "post-end")).toBe(2);
  expect(times(svg, "post-brace")).toBe(kind === "h-brace" ? 2 : 0);
  expect(times(svg, 'data-part="anchor"')).toBe(side.ends.filter(({ tie }) => tie !== null).length);
  expect(times(svg, 'class="side-brace"')).toBe(side.ends.filter(({ brace }) => brace !== null).length);
  expect(times(svg, "data-wire=")).toBe(side.wires.length);
  expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
});

test("the drawing needs nothing else: a style, a title, words for those who do not see it, and no address to fetch from", () => {
  const svg = rowSideSvg(createPlan(), "5", { units: "metric" }) ?? "";
  expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
  expect(svg).toContain("<style>");
  expect(svg).toContain("<title>Acre with a notch, row 5</title>");
  expect(svg).toMatch(/<desc>Row 5 from its side: [\d.]+ m long, \d+ vines/);
  expect(times(svg, "http")).toBe(1);
});

test("the caution goes with the drawing wherever it goes on its own", () => {
  expect(rowSideSvg(createPlan(), "5", { units: "us" })).toContain("not engineering design");
});

test("hose hangs on its wire over a hollow of the ground, from post to post", () => {
  const level = createSide();
  const middle_m = level.length_m / 2;
  const side: RowSide = {
    ...level,
    ground: {
      kind: "heights",
      points: [0, middle_m, level.length_m].map((station_m) => ({
        station_m,
        height_m: station_m === middle_m ? 0 : 3,
      })),
    },
  };
  const [wire] = side.wires;
  if (!wire || !side.hose) throw new Error("there is no hose on a wire");
  for (const [i, from_m] of wire.supports_m.slice(0, -1).entries()) {
    const to_m = Number(wire.supports_m[i + 1]);
    const held = [from_m, to_m].map((each) => groundAt(side.ground, each) + wire.height_m);
    const expected = (Number(held[0]) + Number(held[1])) / 2 - side.sagFactor * Number(wire.sags_m[i]);
    expect(hoseHeight_m(side, (from_m + to_m) / 2)).toBeCloseTo(expected, 9);
  }
});

test("a name with marks of its own stays text", () => {
  const plan = createPlan(["name", 'A <b>"row"</b> & more']);
  const svg = rowSideSvg(plan, "5", { units: "metric" }) ?? "";
  expect(svg).toContain("A &lt;b&gt;&quot;row&quot;&lt;/b&gt; &amp; more, row 5");
  expect(svg).not.toContain("<b>");
});

test("distances are written in the reader's units", () => {
  const plan = createPlan();
  expect(rowSideSvg(plan, "5", { units: "us" })).toContain("drip 1.5 ft");
  expect(rowSideSvg(plan, "5", { units: "metric" })).toContain("drip 0.457 m");
});

test("a wire is down by its sag in the middle of a bay and not at all where posts hold it", () => {
  const [wire] = createSide().wires;
  if (!wire) throw new Error("there is no wire");
  const [from_m = 0, to_m = 0] = wire.supports_m;
  expect(sagAt(wire, (from_m + to_m) / 2)).toBeCloseTo(Number(wire.sags_m[0]), 9);
  expect(sagAt(wire, to_m)).toBeCloseTo(0, 9);
  expect(sagAt(wire, from_m - 1)).toBe(0);
});

test("the ground line follows the spot heights, and is level where they do not reach over the whole row", () => {
  const [row] = createPlan().rows?.rows ?? [];
  if (!row) throw new Error("there is no row");
  // A plane that rises a tenth of a metre a metre to the east, known in a triangle round the row.
  const corners = (reach_m: number) => [
    [row.start[0] - reach_m, row.start[1] - reach_m],
    [row.start[0] + reach_m, row.start[1] - reach_m],
    [row.start[0], row.start[1] + reach_m],
  ];
  const elevation = (reach_m: number) => ({
    kind: "spot-heights" as const,
    xy: Float64Array.from(corners(reach_m).flat()),
    height_m: Float64Array.from(corners(reach_m), ([x_m]) => 0.1 * Number(x_m)),
    triangles: Uint32Array.from([0, 2, 1]),
    halfedges: Int32Array.from([-1, -1, -1]),
  });
  const ground = sideGround(elevation(1000), row, -2, row.length_m + 2);
  expect(ground.kind).toBe("heights");
  const rise_m = groundAt(ground, row.length_m) - groundAt(ground, 0);
  expect(rise_m).toBeCloseTo(0.1 * (row.end[0] - row.start[0]), 6);
  expect(Math.min(...ground.points.map(({ height_m }) => height_m))).toBe(0);
  expect(sideGround(elevation(5), row, -2, row.length_m + 2).kind).toBe("unknown");
});

test("a row that does not exist has no drawing", () => {
  expect(rowSideSvg(createPlan(), "nowhere", { units: "us" })).toBeNull();
});
