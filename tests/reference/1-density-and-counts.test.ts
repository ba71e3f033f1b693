import { describe, expect, it } from "vitest";
import { orderOf } from "../../src/core/materials/packs.ts";
import { createPlanner } from "../../src/core/planner.ts";
import type { Project } from "../../src/core/project/project.ts";
import { vineCount } from "../../src/core/rows/vines.ts";
import { inUnit, parseQuantity } from "../../src/core/units.ts";
import {
  createBlock,
  createGroundSettings,
  createParcel,
  createProject,
  createShape,
  rectangle,
} from "../support/create-project.ts";
import { type Source, titled } from "./source.ts";

const rule: Source = { read: "university lecture notes, Vineyard design and establishment" };
const computed: Source = { computed: "geometry" };

function metres(text: string): number {
  const parsed = parseQuantity("length", text);
  if (!parsed.ok) throw new Error(parsed.reason);
  return parsed.value;
}

/** Vines for an acre from spacings as typed. */
function vinesPerAcre(row: string, vine: string): number {
  return 1 / inUnit("area", metres(row) * metres(vine), "acre");
}

function planned(project: Project) {
  const { rows } = createPlanner().plan(project);
  const block = rows?.blocks[0];
  if (rows === null || block === undefined) throw new Error("no rows");
  return { rows: rows.rows, block };
}

describe("1 vine density", () => {
  const densities = [
    { row: "8 ft", vine: "6 ft", perAcre: 907.5, perHa: 2242.481, perVine_m2: 4.459346, rowPerHa_m: 4101.05 },
    { row: "8 ft", vine: "5 ft", perAcre: 1089, perHa: 2690.978, perVine_m2: 3.716122, rowPerHa_m: 4101.05 },
    { row: "9 ft", vine: "7 ft", perAcre: 691.4286, perHa: 1708.557, perVine_m2: 5.852892, rowPerHa_m: 3645.378 },
    { row: "10 ft", vine: "7 ft", perAcre: 622.2857, perHa: 1537.701, perVine_m2: 6.503213, rowPerHa_m: 3280.84 },
    { row: "12 ft", vine: "8 ft", perAcre: 453.75, perHa: 1121.241, perVine_m2: 8.918692, rowPerHa_m: 2734.033 },
    { row: "6 ft", vine: "4 ft", perAcre: 1815, perHa: 4484.963, perVine_m2: 2.229673, rowPerHa_m: 5468.066 },
    { row: "2.5 m", vine: "1.25 m", perAcre: 1294.994, perHa: 3200, perVine_m2: 3.125, rowPerHa_m: 4000 },
    { row: "2.0 m", vine: "1.0 m", perAcre: 2023.428, perHa: 5000, perVine_m2: 2, rowPerHa_m: 5000 },
  ] as const;

  it.each(densities.map((density) => [titled(`${density.row} x ${density.vine}`, rule), density] as const))(
    "%s",
    (_, density) => {
      const perVine_m2 = metres(density.row) * metres(density.vine);
      expect(Math.abs(vinesPerAcre(density.row, density.vine) - density.perAcre)).toBeLessThan(5e-4);
      expect(Math.abs(10_000 / perVine_m2 - density.perHa)).toBeLessThan(5e-4);
      expect(Math.abs(perVine_m2 - density.perVine_m2)).toBeLessThan(5e-7);
      expect(Math.abs(10_000 / metres(density.row) - density.rowPerHa_m)).toBeLessThan(5e-4);
    },
  );

  const published = [
    {
      id: "1-1",
      row: "9 ft",
      vine: "7 ft",
      perAcre: 691,
      source: { computedAsPublished: "Iowa State University vineyard establishment budget" },
    },
    {
      id: "1-2",
      row: "10 ft",
      vine: "7 ft",
      perAcre: 622,
      source: { computedAsPublished: "NC State budget, Carpio & Safley" },
    },
    { id: "1-3", row: "8 ft", vine: "12 ft", perAcre: 454, source: { computedAsPublished: "a winery's public page" } },
  ] as const;
  it.each(published.map((row) => [titled(row.id, row.source), row] as const))("%s", (_, { row, vine, perAcre }) => {
    expect(Math.round(vinesPerAcre(row, vine))).toBe(perAcre);
  });
});

describe("1 counts of a row and a block", () => {
  it(titled("1-4", computed), () => {
    expect(vineCount(100, 1.5, 1.8)).toBe(54);
    // On a piece of 100 m the row of 54 vines leaves 1.6 m, half at each end.
    const { rows } = planned(
      createProject({
        parcels: [createParcel([rectangle(10, 100)])],
        ground: createGroundSettings({ setback_m: 0 }),
        blocks: [createBlock({ headland_m: 0, endGap_m: 1.5, vineSpacing_m: 1.8, rowEnd: "vines" })],
      }),
    );
    const inner = rows[2];
    expect(inner?.vines).toBe(54);
    expect((inner?.startLeftover_m ?? 0) + (inner?.endLeftover_m ?? 0)).toBeCloseTo(1.6, 5);
    expect(inner?.startLeftover_m).toBeCloseTo(0.8, 5);
  });

  it(titled("1-5", computed), () => {
    expect(vineCount(4.8, 0.6, 0.9)).toBe(5);
  });

  it(titled("1-6", computed), () => {
    const { block } = planned(
      createProject({
        parcels: [createParcel([rectangle(100, 120)])],
        ground: createGroundSettings({ setback_m: 3 }),
        blocks: [createBlock({ rowSpacing_m: 2.4384 })],
      }),
    );
    expect(block.count).toBe(39);
  });

  it(titled("1-7", { computedAsPublished: "Iowa State University vineyard establishment budget" }), () => {
    const { rows, block } = planned(
      createProject({
        parcels: [createParcel([rectangle(metres("99 ft"), metres("448 ft"))])],
        ground: createGroundSettings({ setback_m: 0 }),
        blocks: [
          createBlock({
            headland_m: 0,
            rowSpacing_m: metres("9 ft"),
            vineSpacing_m: metres("7 ft"),
            endGap_m: metres("3.5 ft"),
            rowOne: { kind: "from-side", distance_m: metres("4.5 ft") },
            rowEnd: "all",
          }),
        ],
      }),
    );
    expect(block.count).toBe(11);
    expect(rows.map((row) => row.vines)).toEqual(Array.from({ length: 11 }, () => 64));
    expect(rows.reduce((sum, row) => sum + row.vines, 0)).toBe(704);
    const planted_acres = inUnit("area", block.plantedArea_m2, "acre");
    expect(Math.abs(planted_acres - 1.0181818)).toBeLessThanOrEqual(1e-6);
    expect(Math.abs(704 / planted_acres - 691.4286)).toBeLessThanOrEqual(1e-3);
  });

  // Two areas of 330 x 660 ft side by side, 30 ft alley between them, 40 ft to turn at both ends: 770 x 660 ft, rows 10 ft apart.
  function twoAreas() {
    const width_m = metres("770 ft");
    const depth_m = metres("660 ft");
    const middle_m = width_m / 2;
    return createProject({
      parcels: [createParcel([rectangle(width_m, depth_m)])],
      ground: createGroundSettings({ setback_m: 0, alleyWidth_m: metres("30 ft") }),
      crossAlleys: [
        {
          key: "alley",
          name: null,
          shape: createShape({
            lines: [
              [
                [middle_m, -50],
                [middle_m, depth_m + 50],
              ],
            ],
          }),
          width_m: metres("30 ft"),
        },
      ],
      blocks: [
        createBlock({
          bearing: { kind: "given", bearing_deg: 90 },
          headland_m: metres("40 ft"),
          rowSpacing_m: metres("10 ft"),
          vineSpacing_m: metres("7 ft"),
          endGap_m: metres("3.5 ft"),
          rowOne: { kind: "from-side", distance_m: metres("5 ft") },
          rowEnd: "all",
        }),
      ],
    });
  }
  const budget: Source = { computedAsPublished: "NC State budget, Carpio & Safley" };

  it(titled("1-8", budget), () => {
    const plan = createPlanner().plan(twoAreas());
    const gross_acres = inUnit("area", plan.ground?.parcelArea_m2 ?? 0, "acre");
    const planted_acres = inUnit("area", plan.rows?.blocks[0]?.plantedArea_m2 ?? 0, "acre");
    expect(Math.abs(gross_acres - 11.666667)).toBeLessThanOrEqual(1e-6);
    expect(Math.abs(planted_acres - 10)).toBeLessThanOrEqual(1e-6);
    expect(Math.abs((100 * planted_acres) / gross_acres - 85.714)).toBeLessThanOrEqual(1e-3);
  });

  it(titled("1-9", budget), () => {
    const { rows, block } = planned(twoAreas());
    expect(rows).toHaveLength(132);
    expect(rows.map((row) => row.vines)).toEqual(Array.from({ length: 132 }, () => 47));
    expect(rows.reduce((sum, row) => sum + row.vines, 0)).toBe(6204);
    const byArea = (inUnit("area", block.plantedArea_m2, "acre") * 43_560) / 70;
    expect(byArea).toBeCloseTo(6222.86, 2);
  });

  it(titled("order = ceil(N (1 + spare))", rule), () => {
    expect(orderOf(704, 0.02)).toBe(719);
    expect(orderOf(100, 0.01)).toBe(101);
  });
});
