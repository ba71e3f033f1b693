import { expect, test } from "vitest";
import { createPlanner } from "../../../src/core/planner.ts";
import { withSetting } from "../../../src/core/project/edits.ts";
import { endAssemblyKinds, type Json, type Project, wireHolds } from "../../../src/core/project/project.ts";
import { text } from "../../../src/core/units.ts";
import { readSample, sampleNames } from "../../support/sample-plans.ts";

function changed(project: Project, settings: readonly (readonly [string, Json])[]): Project {
  return settings.reduce((before, [path, value]) => {
    const after = withSetting(before, path, value);
    if (!after.ok) throw new Error(`${path} was refused`);
    return after.value;
  }, project);
}

const wires = [
  { purpose: "drip", height: 0.4, diameter: 2 },
  { purpose: "fruiting", height: 0.9, diameter: 2.5, tensioners: 1, tieOffEnd: { kind: "crimp" } },
  { purpose: "foliage", height: 1.4, diameter: 2, count: 2, movable: true, tieOffStart: { kind: "loop" } },
];

const cases = sampleNames().flatMap((sample) =>
  endAssemblyKinds.flatMap((kind) => wireHolds.map((holds) => ({ sample, kind, holds }))),
);

test.each(cases)("one can buy for $sample without a question, ends $kind, posts that hold by $holds", (choice) => {
  const project = changed(readSample(choice.sample), [
    ["trellis.wires", wires],
    ["trellis.endAssembly.kind", choice.kind],
    ["trellis.endAssembly.concreteHole", 0.3],
    ["trellis.endPost.holds", choice.holds],
    ["trellis.linePost.holds", choice.holds],
  ]);
  const { materials } = createPlanner().plan(project);
  if (materials === null) throw new Error("the sample is not planned whole");
  expect(materials.lines.length).toBeGreaterThan(12);
  expect(new Set(materials.lines.map(({ article }) => article)).size).toBe(materials.lines.length);
  for (const line of materials.lines) {
    for (const units of ["metric", "us"] as const) {
      const spec = text(line.spec, units);
      expect(`${line.item}: ${spec}`).toMatch(/: [\w“].*\w/);
      expect(spec).not.toMatch(/NaN|undefined|null|^,|, ,/);
    }
    expect(line.purpose).toMatch(/\w.*\b(?:1 row|\d+ rows)\b/);
    expect(line.quantity).toBeGreaterThan(0);
    expect(line.packs.every(({ size, count }) => size > 0 && Number.isInteger(count) && count > 0)).toBe(true);
    const held = line.packs.reduce((sum, { size, count }) => sum + size * count, 0);
    expect(line.onHand + held).toBeGreaterThanOrEqual(line.quantity);
  }
});
