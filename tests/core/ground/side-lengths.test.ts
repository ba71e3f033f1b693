import { describe, expect, it, test } from "vitest";
import { createPlanner } from "../../../src/core/planner.ts";
import type { Json } from "../../../src/core/project/project.ts";
import { text } from "../../../src/core/units.ts";
import { area, drawnProject, fieldCorners, fieldProject, line } from "../../support/drawn-files.ts";

const east = (says: Json) =>
  line("east", { role: "edge", ...(typeof says === "object" ? says : {}) }, [
    [60, 0],
    [60, 120],
  ]);

function said(project: Parameters<ReturnType<typeof createPlanner>["plan"]>[0]) {
  return createPlanner()
    .plan(project)
    .findings.filter(({ code }) => code === "ground/side-length-differs")
    .map((finding) => ({ ...finding, message: text(finding.message, "metric") }));
}

describe("a side measured by tape", () => {
  it("that is drawn otherwise is told at its middle", () => {
    const [finding, ...others] = said(fieldProject([east({ tapedLength: "123.5 m" })]));
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ severity: "warning", feature: "east" });
    expect(finding?.message).toBe("Side 2 of the parcel is 123.5 m by tape and 120 m as drawn.");
    expect(finding?.at?.[1]).toBeCloseTo(42.60054, 5);
    expect(finding?.at?.[0]).toBeCloseTo(-76.899269, 5);
  });

  test.each([
    ["by less than half a metre", 10, 10.4, 0],
    ["by less than 1 %", 120, 121.1, 0],
    ["by more than both", 120, 121.3, 1],
    ["by more than both, being longer", 120, 118.7, 1],
  ])("off %s", (_, drawn, taped, count) => {
    const corners = [
      [0, 0],
      [60, 0],
      [60, drawn],
      [0, 120],
    ] as const;
    const side = line("side", { role: "edge", tapedLength: taped }, [
      [60, 0],
      [60, drawn],
    ]);
    expect(said(drawnProject([area("home", { role: "parcel" }, corners), side]))).toHaveLength(count);
  });

  it("may be several in a row, taped together", () => {
    const bank = line("bank", { role: "edge", tapedLength: 190 }, [
      [0, 0],
      [60, 0],
      [60, 120],
    ]);
    expect(said(fieldProject([bank])).map(({ message }) => message)).toEqual([
      "Sides 1, 2 of the parcel are 190 m by tape and 180 m as drawn.",
    ]);
  });

  it("is told with its parcel where there are several", () => {
    const far = area("far", { role: "parcel" }, [
      [100, 0],
      [160, 0],
      [160, 120],
    ]);
    expect(said(fieldProject([far, east({ tapedLength: 100 })]))[0]?.message).toContain('Side 2 of parcel "home" is');
  });

  it("lies on no outline: that is told, and nothing of its length", () => {
    expect(
      said(
        fieldProject([
          line("lost", { role: "edge", tapedLength: 9 }, [
            [10, 10],
            [10, 50],
          ]),
        ]),
      ),
    ).toEqual([]);
  });

  it("is the side that is drawn, whichever way round the outline is", () => {
    const clockwise = area("home", { role: "parcel" }, [...fieldCorners].reverse());
    expect(said(drawnProject([clockwise, east({ tapedLength: 100 })]))).toHaveLength(1);
  });
});
