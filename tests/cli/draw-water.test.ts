import { expect, test } from "vitest";
import { createParcelText, say } from "./create-terminal.ts";

const file = "samples/acre-with-notch/project.geojson";

test("what the water gives against what the sets take is drawn as one SVG, in the units asked for", async () => {
  const { code, out } = await say(["draw", file, "--supply", "--units", "metric-bar"]);
  expect(code).toBe(0);
  expect(out).toMatch(/^<svg [^>]*class="chart"[\s\S]*<\/svg>\s*$/);
  expect(out).toContain("pressure, bar");
});

test("the year of a block is drawn, and a block that is not there is refused with those there are", async () => {
  const { code, out } = await say(["draw", file, "--season", "--block", "1"]);
  expect(code).toBe(0);
  expect(out).toContain("Water of Home block through the year");
  const refused = await say(["draw", file, "--season", "--block", "7"]);
  expect([refused.code, refused.notes]).toEqual([2, expect.stringContaining('There is no block "7"; there is 1.')]);
});

test("pressure and flow along a row's hose and along the line to a set are drawn; what is not there is refused", async () => {
  const hose = await say(["draw", file, "--lateral", "12"]);
  expect([hose.code, hose.out]).toEqual([0, expect.stringMatching(/^<svg[\s\S]*Row 12[\s\S]*<\/svg>\s*$/)]);
  const line = await say(["draw", file, "--line", "2"]);
  expect([line.code, line.out]).toEqual([0, expect.stringMatching(/^<svg[\s\S]*Set 2, along the main line/)]);
  for (const [args, said] of [
    [["--lateral", "999"], /There is no row "999"; there is 1, 2/],
    [["--line", "9"], /There is no set "9"; there is 1, 2/],
  ] as const) {
    const refused = await say(["draw", file, ...args]);
    expect([refused.code, refused.notes]).toEqual([2, expect.stringMatching(said)]);
  }
  const dry = await say(["draw", "-", "--line", "1"], { input: createParcelText() });
  expect([dry.code, dry.notes]).toEqual([2, expect.stringContaining("There are no sets")]);
  // What a row needs is known without any water.
  expect((await say(["draw", "-", "--lateral", "1"], { input: createParcelText() })).code).toBe(0);
});

test("water and season that are not stated are asked for", async () => {
  const dry = await say(["draw", "-", "--supply"], { input: createParcelText() });
  expect([dry.code, dry.notes]).toEqual([2, expect.stringContaining("The water is not known")]);
  const bare = await say(["draw", "-", "--season"], { input: createParcelText() });
  expect([bare.code, bare.notes]).toEqual([2, expect.stringContaining("The season is not known")]);
});

test("two things at once, and what does not belong to a chart, are refused", async () => {
  for (const [args, said] of [
    [["--supply", "--season"], /--supply or --season, not both/],
    [["--supply", "--scale", "50"], /--scale goes with --row or --trench/],
    [["--row", "3", "--block", "1"], /--block goes with --season/],
  ] as const) {
    const refused = await say(["draw", file, ...args]);
    expect(refused.code).toBe(2);
    expect(refused.notes).toMatch(said);
  }
});
