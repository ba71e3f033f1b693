import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createLeanPlanner } from "../../../src/core/lean-planner.ts";
import type { Plan } from "../../../src/core/plan.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { Project, RowSettings } from "../../../src/core/project/project.ts";
import { validatePlan } from "../../../src/core/validate-plan.ts";
import {
  at,
  createBlock,
  createKeepOut,
  createParcel,
  createProject,
  createShape,
} from "../../support/create-project.ts";

const seed = 20_260_401;

type Point = readonly [number, number];

/** A star-shaped outline of 5 to 12 corners, 40 to 130 m from its middle: irregular, never crossing itself. */
const outline = fc.array(fc.double({ min: 40, max: 130, noNaN: true }), { minLength: 5, maxLength: 12 }).map((radii) =>
  radii.map((radius, i): Point => {
    const angle = (2 * Math.PI * i) / radii.length;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  }),
);

const settings: fc.Arbitrary<Partial<RowSettings>> = fc.record({
  bearing: fc.record({
    kind: fc.constant("given" as const),
    bearing_deg: fc.double({ min: 0, max: 179.99, noNaN: true }),
  }),
  rowSpacing_m: fc.double({ min: 1.8, max: 4, noNaN: true }),
  vineSpacing_m: fc.double({ min: 0.8, max: 2.5, noNaN: true }),
  headland_m: fc.double({ min: 0, max: 12, noNaN: true }),
  rowEnd: fc.constantFrom("all" as const, "vines" as const, "bays" as const),
  trim: fc.constantFrom("both" as const, "start" as const, "end" as const),
  vines: fc.constantFrom("centred" as const, "from-start" as const, "aligned" as const),
  bays: fc.constantFrom("whole-vines" as const, "equal" as const),
  firstSide: fc.constantFrom("left" as const, "right" as const),
  distancesTo: fc.constantFrom("end-post" as const, "anchor" as const),
});

const project = fc
  .record({
    outline,
    settings,
    setback_m: fc.double({ min: 0, max: 10, noNaN: true }),
    oak: fc.tuple(fc.double({ min: -60, max: 60, noNaN: true }), fc.double({ min: -60, max: 60, noNaN: true })),
    oakDistance_m: fc.double({ min: 0.5, max: 8, noNaN: true }),
    wiresPass: fc.boolean(),
  })
  .map(({ outline: corners, settings: rows, setback_m, oak, oakDistance_m, wiresPass }) =>
    createProject({
      parcels: [createParcel([corners], { setback_m })],
      keepOuts: [createKeepOut({ points: [oak] }, { distance_m: oakDistance_m, wiresPass })],
      blocks: [createBlock(rows)],
    }),
  );

function lengths(of: Project): readonly number[] {
  return (createLeanPlanner().plan(of).rows?.rows ?? []).map((row) => row.length_m).sort((a, b) => a - b);
}

const step_m = 0.25;

/** By brute force: steps of 25 cm along a line, each kept where it is inside, far enough from every edge, and clear of the headland. */
function plantableRuns(corners: readonly Point[], angle: number, v: number, headland_m: number, setback_m: number) {
  const edges = corners.map((p, i): readonly [Point, Point] => [p, corners[(i + 1) % corners.length] ?? p]);
  const place = (u: number): Point => [
    u * Math.sin(angle) + v * Math.cos(angle),
    u * Math.cos(angle) - v * Math.sin(angle),
  ];
  const isInside = ([x, y]: Point) =>
    edges.filter(([[px, py], [qx, qy]]) => py > y !== qy > y && x < px + ((y - py) * (qx - px)) / (qy - py)).length %
      2 ===
    1;
  const distance = ([x, y]: Point) =>
    Math.min(
      ...edges.map(([[px, py], [qx, qy]]) => {
        const [dx, dy] = [qx - px, qy - py];
        const t = Math.min(1, Math.max(0, ((x - px) * dx + (y - py) * dy) / (dx * dx + dy * dy)));
        return Math.hypot(px + t * dx - x, py + t * dy - y);
      }),
    );
  const stations = Array.from({ length: 300 / step_m }, (_, i) => -150 + i * step_m);
  const inside = runsOf(stations.filter((u) => isInside(place(u))));
  return inside.flatMap(({ from, to }) =>
    runsOf(stations.filter((u) => u >= from + headland_m && u <= to - headland_m && distance(place(u)) >= setback_m)),
  );
}

function runsOf(stations: readonly number[]): readonly { readonly from: number; readonly to: number }[] {
  const runs: { from: number; to: number }[] = [];
  for (const u of stations) {
    const last = runs.at(-1);
    if (last !== undefined && u - last.to < step_m * 1.5) last.to = u;
    else runs.push({ from: u, to: u });
  }
  return runs;
}

/** A whole plan as text, typed arrays as lists; the frame's functions fall away. */
function asText(plan: Plan): string {
  return JSON.stringify(plan, (_, value: unknown) =>
    value instanceof Float64Array || value instanceof Int32Array || value instanceof Uint32Array
      ? Array.from(value)
      : value,
  );
}

describe("whatever the ground and the settings", () => {
  it("a plan keeps its promises: rows on the ground, at their distances, positions in order", () => {
    fc.assert(
      fc.property(project, (one) => {
        expect(validatePlan(createPlanner().plan(one))).toEqual([]);
      }),
      { seed, numRuns: 120 },
    );
  });

  it("no plantable piece longer than the shortest row is left out", () => {
    fc.assert(
      fc.property(outline, settings, fc.double({ min: 0.5, max: 8, noNaN: true }), (corners, rows, setback_m) => {
        const one = createProject({
          parcels: [createParcel([corners], { setback_m })],
          blocks: [createBlock({ ...rows, rowEnd: "all", distancesTo: "end-post" })],
        });
        const { rows: laid, ground } = createLeanPlanner().plan(one);
        const block = laid?.blocks[0];
        if (ground === null || laid === null || block === undefined) throw new Error("not planned");
        const angle = (block.gridBearing_deg * Math.PI) / 180;
        const along = ([x, y]: Point) => x * Math.sin(angle) + y * Math.cos(angle);
        const across = ([x, y]: Point) => x * Math.cos(angle) - y * Math.sin(angle);
        const first = laid.rows[0];
        if (first === undefined) return;
        // Every line of the spacing over the whole ground, those without a row too.
        const lines = Array.from({ length: 161 }, (_, k) => across(first.start) + (k - 80) * block.rowSpacing_m).filter(
          (v) => Math.abs(v) < 135,
        );
        for (const v of lines) {
          for (const run of plantableRuns(corners, angle, v, Number(one.blocks[0]?.rows.headland_m), setback_m)) {
            if (run.to - run.from < 15 + 2 * step_m) continue;
            const rowHere = laid.rows.find((row) => {
              const [a, b] = [along(row.start), along(row.end)].sort((p, q) => p - q);
              return (
                Math.abs(across(row.start) - v) < 1e-3 &&
                Math.abs(Number(a) - run.from) < 2 * step_m &&
                Math.abs(Number(b) - run.to) < 2 * step_m
              );
            });
            expect(rowHere).toBeDefined();
          }
        }
      }),
      { seed, numRuns: 25 },
    );
  });

  it("bearing b and b + 180 give the same lines", () => {
    fc.assert(
      fc.property(project, fc.integer({ min: 0, max: 179 }), (one, bearing_deg) => {
        const turned = (by_deg: number) => {
          const rows = one.blocks.map((block) => ({
            ...block,
            rows: { ...block.rows, bearing: { kind: "given" as const, bearing_deg: bearing_deg + by_deg } },
          }));
          return createLeanPlanner().plan({ ...one, blocks: rows }).rows?.rows;
        };
        expect(turned(180)).toEqual(turned(0));
      }),
      { seed, numRuns: 30 },
    );
  });

  it("a wider setback never adds row length when rows keep their places", () => {
    fc.assert(
      fc.property(
        outline,
        fc.double({ min: 0, max: 8, noNaN: true }),
        fc.double({ min: 0.01, max: 4, noNaN: true }),
        (corners, setback_m, more_m) => {
          const total = (distance_m: number) =>
            lengths(
              createProject({
                parcels: [createParcel([corners], { setback_m: distance_m })],
                blocks: [
                  createBlock({
                    rowOne: { kind: "through", point: at([0, 0]) },
                    rowEnd: "all",
                    minRow: { kind: "length", length_m: 0 },
                  }),
                ],
              }),
            ).reduce((sum, one) => sum + one, 0);
          expect(total(setback_m + more_m)).toBeLessThanOrEqual(total(setback_m) + 1e-6);
        },
      ),
      { seed, numRuns: 40 },
    );
  });

  it("rows through a point or through one a whole number of spacings aside are the same", () => {
    fc.assert(
      fc.property(outline, fc.integer({ min: -5, max: 5 }), (corners, spacings) => {
        const through = (x: number) =>
          lengths(
            createProject({
              parcels: [createParcel([corners])],
              blocks: [
                createBlock({
                  bearing: { kind: "edge", edge: "longest" },
                  rowOne: { kind: "through", point: at([x, 0]) },
                }),
              ],
            }),
          );
        const straight = createProject({
          parcels: [createParcel([corners])],
          blocks: [createBlock({ rowOne: { kind: "through", point: at([0, 0]) } })],
        });
        const convergence = createLeanPlanner().plan(straight).ground?.blocks[0]?.convergence_deg ?? 0;
        expect(Math.abs(convergence)).toBeLessThan(0.01);
        const north = (x: number) =>
          lengths({
            ...straight,
            blocks: [
              createBlock({
                bearing: { kind: "given", bearing_deg: convergence },
                rowOne: { kind: "through", point: at([x, 0]) },
              }),
            ],
          });
        const shifted = north(spacings * 2.5);
        const base = north(0);
        expect(shifted).toHaveLength(base.length);
        for (const [i, one] of shifted.entries()) expect(Math.abs(one - Number(base[i]))).toBeLessThan(1e-4);
        expect(through(0).length).toBeGreaterThan(0);
      }),
      { seed, numRuns: 25 },
    );
  });
});

describe("a planner that has planned before", () => {
  const alley = {
    key: "alley",
    name: null,
    shape: createShape({
      lines: [
        [
          [-80, 10],
          [80, 10],
        ],
      ],
    }),
    width_m: 6,
  };
  const edit = fc.oneof(
    settings.map(
      (rows) =>
        (one: Project): Project => ({
          ...one,
          blocks: one.blocks.map((block) => ({ ...block, rows: { ...block.rows, ...rows } })),
        }),
    ),
    fc.double({ min: 0, max: 8, noNaN: true }).map(
      (setback_m) =>
        (one: Project): Project => ({ ...one, ground: { ...one.ground, setback_m } }),
    ),
    fc.boolean().map(
      (isThere) =>
        (one: Project): Project => ({ ...one, crossAlleys: isThere ? [alley] : [] }),
    ),
    fc.tuple(fc.double({ min: -40, max: 40, noNaN: true }), fc.double({ min: -40, max: 40, noNaN: true })).map(
      (place) =>
        (one: Project): Project => ({ ...one, keepOuts: [createKeepOut({ points: [place] })] }),
    ),
    fc.constant(
      (one: Project): Project => ({
        ...one,
        blocks: one.blocks.map((block) => ({
          ...block,
          drip: { ...block.drip, emittersPerVine: 3 - block.drip.emittersPerVine },
        })),
      }),
    ),
    fc.constant((one: Project): Project => ({ ...one, sources: [{ key: "well", name: "well", at: at([0, 0]) }] })),
  );

  it("gives the plan that a new one gives, after any edits", () => {
    fc.assert(
      fc.property(project, fc.array(edit, { minLength: 1, maxLength: 8 }), (start, edits) => {
        const warm = createPlanner();
        let one = start;
        warm.plan(one);
        for (const change of edits) {
          one = change(one);
          expect(asText(warm.plan(one))).toBe(asText(createPlanner().plan(one)));
        }
      }),
      { seed, numRuns: 25 },
    );
  });
});
