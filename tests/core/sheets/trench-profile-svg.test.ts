import { expect, test } from "vitest";
import { placedLabels } from "../../../src/core/sheets/placed-labels.ts";
import { writtenStations } from "../../../src/core/sheets/trench-columns.ts";
import { trenchProfile } from "../../../src/core/sheets/trench-profile.ts";
import { trenchProfileSheet, trenchProfileSvg } from "../../../src/core/sheets/trench-profile-svg.ts";
import { trenchScale } from "../../../src/core/sheets/trench-scale.ts";
import { createTrenchPlan, type GroundOf, withPoints } from "../../support/create-trench-plan.ts";

const wave: GroundOf = (station_m) => 100 + 1.2 * Math.sin(station_m / 8);
const plan = withPoints(createTrenchPlan(wave), {
  lows: [{ station_m: 12 * Math.PI, by_m: 1.1, isFitted: true }],
  highs: [{ station_m: 4 * Math.PI, by_m: 1.2, isFitted: true }],
});

function times(text: string, part: string): number {
  return text.split(part).length - 1;
}

function drawn(change: Partial<Parameters<typeof trenchProfileSvg>[2]> = {}, branch: string | null = null): string {
  return trenchProfileSvg(plan, branch, { units: "metric", ...change }) ?? "";
}

test("everything that is met is drawn once, and nothing is drawn at no place", () => {
  const svg = drawn();
  expect(times(svg, 'data-mark="tee"')).toBe(plan.rows?.rows.length);
  for (const kind of ["source", "branch", "crossing", "low", "high", "end"])
    expect(times(svg, `data-mark="${kind}"`)).toBe(1);
  expect(times(svg, 'class="trench-water"')).toBe(1);
  expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
});

test("the drawing needs nothing else: a style, a title, words for those who do not see it, and no address to fetch from", () => {
  const svg = drawn();
  expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
  expect(svg).toContain("<title>Test ground, trench of the main line</title>");
  expect(svg).toMatch(
    /<desc>The trench of the main line from its side: [\d.]+ m long, [\d.]+ m along the ground, 0.5 m/,
  );
  expect(times(svg, "http")).toBe(1);
  expect(drawn({}, "a")).toContain("<title>Test ground, trench of branch a</title>");
});

// 29 CFR 1926.651 (c)(2), (j)(2) and 1926.652 (a)(1): ladder from 4 ft, spoil 2 ft back, protective system from 5 ft.
test("cautions go with the drawing wherever it goes, in the reader's units", () => {
  const plain = (svg: string) => svg.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ");
  expect(plain(drawn({ units: "us" }))).toMatch(
    /2 ft back; from 4 ft deep a ladder within reach, from 5 ft a protective/,
  );
  expect(plain(drawn())).toMatch(/0\.6 m back; from 1\.2 m deep a ladder within reach, from 1\.5 m a protective/);
  expect(plain(drawn())).toContain("29 CFR 1926 subpart P");
  expect(plain(drawn())).toContain("Call before you dig");
});

test("the numbers under it are those of the stations, in the units their head says", () => {
  const svg = drawn({ units: "us" });
  for (const head of ["Station, ft", "On the slope, ft", "Ground, ft", "Bottom, ft", "To dig, in"])
    expect(svg).toContain(`>${head}<`);
  // 0.5 m is 19.685 in; 100 m is 328.084 ft.
  expect(svg).toContain(">19.7<");
  expect(svg).toContain(">328.08<");
  const metric = drawn();
  expect(metric).toContain(">Ground, m<");
  expect(metric).toContain(">100.00<");
  expect(metric).toContain(">0.50<");
});

test("the drawing says its scale, how much heights are raised, and that water is hatched", () => {
  const said = (change: Parameters<typeof drawn>[0]) =>
    drawn(change)
      .replace(/<[^>]*>/g, " ")
      .replace(/\s+/g, " ");
  expect(said({ zoom: 500, raised: 10 })).toContain("Lengths 1:500, heights drawn 10 times as large.");
  expect(said({ raised: 1 })).toContain("Lengths in one scale, heights the same.");
  expect(said({})).toContain("Hatched: water that would stand in the open trench, at most 0.50 m deep.");
});

test("ground that is not known is drawn broken, said, and has no numbers", () => {
  const partly = createTrenchPlan((station_m) => (station_m > 20 && station_m < 30 ? Number.NaN : 100));
  const svg = trenchProfileSvg(partly, null, { units: "metric" }) ?? "";
  expect(times(svg, 'class="trench-unknown"')).toBe(1);
  expect(svg).toContain("The ground is not known at 20 m to 30 m");
  expect(svg).not.toMatch(/NaN|not known"/);
  const nowhere = drawn({}, "a");
  expect(nowhere).not.toContain("Ground, m");
  expect(nowhere).toContain("No heights are known here, so the ground is drawn level");
});

test("a long branch writes every so-many-th station and says so; its last one is always written", () => {
  const profile = trenchProfile(plan, null);
  if (profile === null) throw new Error("there is no profile");
  const { written, every } = writtenStations(profile, trenchScale(profile, "whole", null, 210));
  expect(every).toBeGreaterThan(1);
  expect(written.at(-1)?.station_m).toBe(profile.length_m);
  const sheet = trenchProfileSheet(profile, { units: "metric", width_px: 354 });
  expect(sheet.reading.join(" ")).toContain(`Every ${every}`);
});

test("on the page the heights are a piece of their own, hidden from those who hear the drawing's words", () => {
  const profile = trenchProfile(plan, null);
  if (profile === null) throw new Error("there is no profile");
  const sheet = trenchProfileSheet(profile, { units: "metric", width_px: 900 });
  expect(sheet.heights).toContain('aria-hidden="true"');
  expect(sheet.branch).toContain(`aria-label="${sheet.label}"`);
  expect(sheet.scale.width).toBeCloseTo(900 - 144, 6);
});

test("labels never lie over each other; what has no room is left out", () => {
  const labels = [10, 12, 14, 300].map((x) => ({ x, text: "Farm lane" }));
  const placed = placedLabels(labels, 2, 7, 400);
  expect(placed.map(({ line }) => line)).toEqual([0, 1, 0]);
  for (const { x, text } of placed) {
    expect(x - (text.length * 7) / 2).toBeGreaterThanOrEqual(0);
    expect(x + (text.length * 7) / 2).toBeLessThanOrEqual(400);
  }
});
