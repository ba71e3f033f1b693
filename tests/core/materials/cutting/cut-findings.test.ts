import { expect, it } from "vitest";
import { cutCoils } from "../../../../src/core/materials/cutting/cut-coils.ts";
import { cutFindings } from "../../../../src/core/materials/cutting/cut-findings.ts";
import type { CutJob } from "../../../../src/core/materials/cutting/cut-job.ts";
import { createCutJob } from "../../../support/create-cut-job.ts";

const heavy = { length_m: 1524, price: null, mass_kg: 59.4 };

function found(job: CutJob) {
  return cutFindings(job, cutCoils(job), ["Wire of 13 ga"]);
}

function codes(job: CutJob): readonly string[] {
  return found(job).map(({ code }) => code);
}

it("two full coils give no finding", () => {
  expect(codes(createCutJob({ lengths_m: [149, 149, 149, 149] }))).toEqual([]);
});

it("nothing is said while coils are only counted by length", () => {
  const job = createCutJob({ lengths_m: [580], isJoinable: true });
  expect(cutFindings(job, null, ["Wire"])).toEqual([]);
});

it("a run longer than a coil is told, and that it is joined", () => {
  expect(codes(createCutJob({ lengths_m: [580], isJoinable: true }))).toEqual(["materials/run-longer-than-coil"]);
});

it("a run that no coil and no join can give is told once, with how many there are", () => {
  const findings = found(createCutJob({ lengths_m: [400, 149, 410] }));
  expect(findings.map(({ code }) => code)).toEqual(["materials/run-cannot-be-cut"]);
  expect(findings[0]?.message).toContain("2");
});

it("more than a fifth left over is told", () => {
  expect(codes(createCutJob({ lengths_m: [200] }))).toEqual(["materials/much-left-over"]);
});

it("a coil heavier than the person can handle is left out, and a warning when it was the only one", () => {
  const job = createCutJob({ lengths_m: [149, 149], tooHeavy: [heavy] });
  expect(found(job)).toMatchObject([{ code: "materials/coils-too-heavy", severity: "note" }]);
  const none = createCutJob({ lengths_m: [149, 149], tooHeavy: [heavy], sizes: [] });
  expect(found(none)).toContainEqual(
    expect.objectContaining({ code: "materials/coils-too-heavy", severity: "warning" }),
  );
});

it("part coils on hand that give no whole run are told", () => {
  expect(codes(createCutJob({ lengths_m: [149, 149], onHand_m: [100, 40] }))).toEqual([
    "materials/part-coil-too-short",
  ]);
});
