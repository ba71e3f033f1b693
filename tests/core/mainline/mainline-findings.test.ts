import { describe, expect, it } from "vitest";
import { createPlanner } from "../../../src/core/planner.ts";
import { defaults } from "../../../src/core/project/defaults.ts";
import type { MainLine, Project } from "../../../src/core/project/project.ts";
import { text } from "../../../src/core/units.ts";
import {
  at,
  createBlock,
  createKeepOut,
  createParcel,
  createProject,
  rectangle,
} from "../../support/create-project.ts";
import type { Point } from "../../support/parcels.ts";

/** 60 m wide and 120 m deep, rows due north, the well in the south-west corner. */
function planned(change: Partial<Project>) {
  return createPlanner().plan(
    createProject({
      blocks: [createBlock({ headland_m: 9 })],
      sources: [{ key: "well", name: "well", at: at([4, 4]) }],
      ...change,
    }),
  );
}

function said(change: Partial<Project>) {
  return planned(change).findings.filter(({ code }) => code.startsWith("mainline/"));
}

const codes = (change: Partial<Project>) => said(change).map(({ code }) => code);

function drawn(...line: readonly Point[]): readonly MainLine[] {
  return [{ key: "line", name: null, line: line.map((point) => at(point)) }];
}

/** Along the near headland, past all rows. */
const alongHeadland = drawn([4, 4], [56, 4]);

describe("a main line", () => {
  it("that gets to all rows and keeps from everything says nothing", () => {
    expect(said({})).toEqual([]);
    expect(said({ mainLines: alongHeadland })).toEqual([]);
  });

  it("names the rows that it can not get to", () => {
    const brook = createKeepOut(
      {
        lines: [
          [
            [-10, 60],
            [70, 60],
          ],
        ],
      },
      { role: "no-plant", key: "brook", distance_m: 3 },
    );
    const source = [{ key: "well", name: null, at: at([30, 115]) }];
    const pins = [{ block: null, fromRow: 1, toRow: 3, end: "start" as const }];
    const [unreached, ...others] = said({
      keepOuts: [brook],
      sources: source,
      mainLine: { ...defaults.metric.mainLine, pins },
    });
    expect(others).toEqual([]);
    expect(unreached?.code).toBe("mainline/rows-unreached");
    expect(text(unreached?.message ?? [], "metric")).toMatch(/^No trench gets to rows .+ without crossing/);
  });

  it("says that the source it is to begin at is not there, and rows take their nearer end", () => {
    const plan = planned({ mainLine: { ...defaults.metric.mainLine, source: "pond" } });
    expect(plan.findings.map(({ code }) => code)).toContain("mainline/source-unknown");
    expect(plan.mainline?.route).toBeNull();
    expect(plan.trench).toBeNull();
  });

  it("says where it leaves the parcel", () => {
    const [leaves, ...others] = said({ sources: [{ key: "well", name: null, at: at([-8, 4]) }] });
    expect(others).toEqual([]);
    expect(leaves).toMatchObject({ code: "mainline/leaves-parcel", severity: "note" });
    expect(leaves?.at).not.toBeNull();
  });

  it("goes from one parcel to another over the ground between where there is no other way, and says so", () => {
    const apart = [createParcel([rectangle(60, 120)]), createParcel([beside(70)], { key: "east" })];
    const plan = planned({ parcels: apart });
    expect(plan.mainline?.route?.unreached).toEqual([]);
    expect(plan.findings.map(({ code }) => code)).toContain("mainline/leaves-parcel");
  });
});

describe("a drawn main line", () => {
  it("is told where it crosses what may not be crossed", () => {
    const fence = createKeepOut(
      {
        lines: [
          [
            [30, 0],
            [30, 8],
          ],
        ],
      },
      { role: "no-plant", key: "fence", distance_m: 0.5 },
    );
    expect(codes({ mainLines: alongHeadland, keepOuts: [fence] })).toEqual(["mainline/drawn-crosses"]);
  });

  it("is told where it crosses at a slant what is to be crossed square", () => {
    const track = createKeepOut(
      {
        lines: [
          [
            [26, 0],
            [34, 8],
          ],
        ],
      },
      { role: "no-plant", key: "track", distance_m: 0.5, crossing: "square" },
    );
    expect(codes({ mainLines: alongHeadland, keepOuts: [track] })).toEqual(["mainline/drawn-slanted"]);
    const square = createKeepOut(
      {
        lines: [
          [
            [30, 0],
            [30, 8],
          ],
        ],
      },
      { role: "no-plant", key: "track", distance_m: 0.5, crossing: "square" },
    );
    expect(codes({ mainLines: alongHeadland, keepOuts: [square] })).toEqual([]);
  });

  it("is told where it comes too near to a tree or to the outline, with both distances", () => {
    const tree = createKeepOut({ points: [[30, 5]] }, { key: "tree", distance_m: 1, trenchDistance_m: 2 });
    const [near] = said({ mainLines: alongHeadland, keepOuts: [tree] });
    expect(near?.code).toBe("mainline/drawn-near");
    expect(text(near?.message ?? [], "metric")).toMatch(/comes within 1(\.0+)? m of "oak"; 2(\.0+)? m is asked for/);
    expect(codes({ mainLines: drawn([4, 4], [4, 0.4], [56, 0.4]) })).toEqual(["mainline/drawn-near"]);
  });

  it("is told which rows it runs through", () => {
    const [through] = said({ mainLines: drawn([4, 4], [4, 60], [56, 60]) });
    expect(through?.code).toBe("mainline/drawn-through-rows");
    expect(text(through?.message ?? [], "metric")).toMatch(/^The drawn main line runs through rows /);
  });
});

/** The same rectangle as the usual parcel, so far to the east. */
function beside(x_m: number): readonly Point[] {
  return rectangle(60, 120).map(([x, y]): Point => [x + x_m, y]);
}
