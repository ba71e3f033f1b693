import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { waterRows } from "../../src/core/drip/water-rows.ts";
import { createWateringStage } from "../../src/core/drip/watering-stage.ts";
import { createLeanPlanner } from "../../src/core/lean-planner.ts";
import { createMainWorks } from "../../src/core/main-works.ts";
import { layRoute } from "../../src/core/mainline/lay-route.ts";
import { cutCoils } from "../../src/core/materials/cutting/cut-coils.ts";
import { materials } from "../../src/core/materials/materials.ts";
import { coveredArea_m2 } from "../../src/core/plane/covered-area.ts";
import { plantingArea } from "../../src/core/plane/overlay.ts";
import { createPlanner } from "../../src/core/planner.ts";
import type { Project } from "../../src/core/project/project.ts";
import { at, createBlock, createKeepOut, createParcel, createProject, rectangle } from "../support/create-project.ts";

const seed = 20_261_125;
const shoelaceTolerance = 1e-12;
const grid_m2 = 0.05;

const corner = fc.double({ min: -60, max: 60, noNaN: true });
const side = fc.double({ min: 25, max: 120, noNaN: true });
const box = fc
  .tuple(side, side, fc.tuple(corner, corner))
  .map(([width, height, place]) => rectangle(width, height, place));

/** One to three parcels and none to three block areas that may overlap, and a block that takes what is left. */
const project = fc
  .record({
    parcels: fc.array(box, { minLength: 1, maxLength: 3 }),
    areas: fc.array(box, { maxLength: 3 }),
    oak: fc.tuple(corner, corner),
    bearing_deg: fc.double({ min: 0, max: 179.9, noNaN: true }),
  })
  .map(({ parcels, areas, oak, bearing_deg }): Project => {
    const rows = { bearing: { kind: "given", bearing_deg } } as const;
    return createProject({
      parcels: parcels.map((ring, i) => createParcel([ring], { key: `parcel ${i}` })),
      keepOuts: [createKeepOut({ points: [oak] })],
      blockAreas: areas.map((ring, i) => ({
        key: `area ${i}`,
        block: `block ${i}`,
        polygons: [[ring.map((point) => at(point))]],
      })),
      blocks: [...areas.map((_, i) => createBlock(rows, { id: `block ${i}` })), createBlock(rows, { id: "rest" })],
    });
  });

describe("a planner without a way to work out the planting area", () => {
  it("plans the same rows, and all that follows from them", () => {
    fc.assert(
      fc.property(project, (one) => {
        const { ground, findings, ...whole } = createPlanner().plan(one);
        const {
          ground: leanGround,
          findings: leanFindings,
          ...lean
        } = createLeanPlanner({
          cutOf: cutCoils,
          mainWorks: createMainWorks(layRoute),
          wateringStage: createWateringStage(waterRows),
          materialsOf: materials,
        }).plan(one);
        expect(lean).toEqual(whole);
        expect(leanFindings).toEqual(findings.filter(({ code }) => code !== "ground/nothing-to-plant"));
        expect(leanGround?.parcelArea_m2).toBe(ground?.parcelArea_m2);
        expect([leanGround?.plantingArea, leanGround?.plantingArea_m2]).toEqual([null, null]);
        expect(ground?.plantingArea_m2).toBeGreaterThanOrEqual(0);
      }),
      { seed, numRuns: 40 },
    );
  });

  it("takes one that comes later, and plans only that anew", () => {
    const one = createProject();
    const planner = createLeanPlanner();
    const before = planner.plan(one);
    const after = planner.plan(one, { plantingAreaOf: plantingArea });
    expect(after.rows).toBe(before.rows);
    expect(after.ground?.plantingArea).toEqual(createPlanner().plan(one).ground?.plantingArea);
    expect(planner.plan(one).ground).toBe(after.ground);
  });

  it("keeps a planting area once it is known for the ground, without asking again", () => {
    const one = createProject();
    const planner = createLeanPlanner();
    let asked = 0;
    const counted = (parts: Parameters<typeof plantingArea>[0]) => {
      asked++;
      return plantingArea(parts);
    };
    planner.plan(one, { plantingAreaOf: counted });
    const turned = { ...one, blocks: [createBlock({ bearing: { kind: "given", bearing_deg: 40 } })] };
    expect(planner.plan(turned, { plantingAreaOf: () => null }).ground?.plantingArea_m2).toBeGreaterThan(0);
    planner.plan(turned, { plantingAreaOf: counted });
    expect(asked).toBe(1);
  });
});

describe("the area of the parcels", () => {
  it("of one parcel is that of its corners", () => {
    fc.assert(
      fc.property(box, (ring) => {
        const { ground } = createLeanPlanner().plan(createProject({ parcels: [createParcel([ring])] }));
        const rings = ground?.blocks[0]?.outlines.map((outline) => outline.rings) ?? [];
        const [xy = new Float64Array(0)] = rings.map((one) => one.xy);
        let twice = 0;
        for (let i = 0; i < 8; i += 2) {
          const [px, py, qx, qy] = [xy[i], xy[i + 1], xy[(i + 2) % 8], xy[(i + 3) % 8]].map(Number);
          twice += Number(px) * Number(qy) - Number(qx) * Number(py);
        }
        const area_m2 = Number(ground?.parcelArea_m2);
        expect(Math.abs(area_m2 - twice / 2)).toBeLessThan(area_m2 * shoelaceTolerance * 1000);
        expect(ground?.blocks[0]?.area_m2).toBe(area_m2);
      }),
      { seed, numRuns: 50 },
    );
  });

  it("is divided among the blocks: what is drawn and what is left make up the whole", () => {
    fc.assert(
      fc.property(project, (one) => {
        const { ground } = createLeanPlanner().plan(one);
        const rest = ground?.blocks.at(-1);
        const drawn = ground?.blocks.slice(0, -1).flatMap(({ areas }) => areas.map(({ rings }) => rings)) ?? [];
        const parcels = rest?.outlines.map(({ rings }) => rings) ?? [];
        const taken_m2 = drawn.length === 0 ? 0 : coveredArea_m2([parcels, drawn]);
        expect(Math.abs(taken_m2 + Number(rest?.area_m2) - Number(ground?.parcelArea_m2))).toBeLessThan(grid_m2);
      }),
      { seed, numRuns: 40 },
    );
  });
});
