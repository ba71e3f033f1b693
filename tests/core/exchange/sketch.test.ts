import { describe, expect, it } from "vitest";
import { layerKinds } from "../../../src/core/exchange/layers/layer.ts";
import { planJson } from "../../../src/core/exchange/plan-json.ts";
import type { Plan } from "../../../src/core/plan.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import { createParcel, rectangle } from "../../support/create-project.ts";
import { createTrenchPlan } from "../../support/create-trench-plan.ts";
import { area, drawnProject, fieldCorners } from "../../support/drawn-files.ts";
import { collectionOf, handedOver, textsOf } from "../../support/handed-over.ts";

const planned = (outline: string): Plan =>
  createPlanner().plan(drawnProject([area("home", { role: "parcel", outline }, fieldCorners)]));

describe("what is handed over of an outline that was walked", () => {
  const [walked, surveyed] = (["walked", "surveyed"] as const).map((outline) =>
    createTrenchPlan(() => 100, { parcels: [createParcel([rectangle(60, 120)], { outline })] }),
  );
  if (walked === undefined || surveyed === undefined) throw new Error("there is no plan");

  it("says in every feature that it is a sketch", () => {
    for (const kind of layerKinds) {
      const { features } = collectionOf(walked, [kind]);
      expect(features.every(({ properties }) => properties?.sketch === true)).toBe(true);
      expect(collectionOf(surveyed, [kind]).features.some(({ properties }) => "sketch" in (properties ?? {}))).toBe(
        false,
      );
    }
    expect(collectionOf(walked, ["vines"]).features.length).toBeGreaterThan(10);
  });

  it.each(["rows", "vines", "posts", "stakes", "stations", "coils"] as const)(
    "says so in every line of a table of %s",
    (of) => {
      const table = (plan: Plan) => textsOf(handedOver(plan, { as: "csv", of: [of] }))[`${of}.csv`] ?? "";
      const [head = "", ...lines] = table(walked).trimEnd().split("\r\n");
      expect(head.endsWith(",sketch")).toBe(true);
      expect(lines.length).toBeGreaterThan(10);
      expect(lines.every((line) => line.endsWith(",yes"))).toBe(true);
      expect(table(surveyed)).not.toContain("sketch");
    },
  );

  it("says so in the plan", () => {
    expect(planJson(walked).ground.sketch).toBe(true);
    expect(planJson(surveyed).ground.sketch).toBe(false);
    expect(planJson(planned("walked")).findings.map(({ code }) => code)).toContain("project/walked-outline");
  });
});
