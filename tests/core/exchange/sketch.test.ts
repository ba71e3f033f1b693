import { describe, expect, it } from "vitest";
import { formats } from "../../../src/core/exchange/old-formats.ts";
import { planJson } from "../../../src/core/exchange/plan-json.ts";
import type { Plan } from "../../../src/core/plan.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { createParcel, rectangle } from "../../support/create-project.ts";
import { createTrenchPlan } from "../../support/create-trench-plan.ts";
import { area, drawnProject, fieldCorners } from "../../support/drawn-files.ts";

const planned = (outline: string): Plan =>
  createPlanner().plan(drawnProject([area("home", { role: "parcel", outline }, fieldCorners)]));

describe("what is handed over of an outline that was walked", () => {
  const [walked, surveyed] = (["walked", "surveyed"] as const).map((outline) =>
    createTrenchPlan(() => 100, { parcels: [createParcel([rectangle(60, 120)], { outline })] }),
  );
  if (walked === undefined || surveyed === undefined) throw new Error("there is no plan");

  it("says in every feature that it is a sketch", () => {
    for (const { collection } of formats) {
      if (collection === null) continue;
      const { features } = collection(walked);
      expect(features.length).toBeGreaterThan(10);
      expect(features.every(({ properties }) => properties?.sketch === true)).toBe(true);
      expect(
        collection(surveyed).features.some(({ properties }) => properties !== null && "sketch" in properties),
      ).toBe(false);
    }
  });

  it("says so in every line of a table of rows, vines, posts, stakes, stations and cuts", () => {
    for (const format of formats) {
      if (format.as !== "csv" || format.of === "materials" || format.of === "prices") continue;
      const [head = "", ...lines] = format.text(walked).trimEnd().split("\r\n");
      expect(head.endsWith(",sketch")).toBe(true);
      expect(lines.length).toBeGreaterThan(10);
      expect(lines.every((line) => line.endsWith(",yes"))).toBe(true);
      expect(format.text(surveyed)).not.toContain("sketch");
    }
  });

  it("says so in the plan", () => {
    expect(planJson(walked).ground.sketch).toBe(true);
    expect(planJson(surveyed).ground.sketch).toBe(false);
    expect(planJson(planned("walked")).findings.map(({ code }) => code)).toContain("project/walked-outline");
  });
});
