import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { withCornerInserted, withCornerMoved, withoutCorner } from "../../../src/core/drawing/corners.ts";
import { drawnThing, drawnThings } from "../../../src/core/drawing/drawn.ts";
import { withBearingAlong, withEdgeSetback, withTapedSide } from "../../../src/core/drawing/edges.ts";
import { withHole, withoutPath, withoutThing, withThing, withThingProperty } from "../../../src/core/drawing/things.ts";
import { hasError } from "../../../src/core/finding.ts";
import type { Outcome } from "../../../src/core/outcome.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { Project } from "../../../src/core/project/project.ts";
import { roles } from "../../../src/core/project/project.ts";
import { serializeProject } from "../../../src/core/project/serialize.ts";
import { validatePlan } from "../../../src/core/validate-plan.ts";
import { area, drawnAt, drawnProject, line, spot, statedSetbacks, taken } from "../../support/drawn-files.ts";
import { fixtureNames, fixtureText, projectIn } from "../../support/project-files.ts";

type Point = readonly [number, number];

/** Corners of a round field, a hole in its middle, and a neighbour that shares no corner. */
const around = (count: number, radius: number, turn: 1 | -1): readonly Point[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = (turn * 2 * Math.PI * i) / count;
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  });

const isClockwise = fc.constantFrom<readonly [1 | -1, 1 | -1]>([1, 1], [1, -1], [-1, 1], [-1, -1]);
const place = fc
  .tuple(fc.integer({ min: -90_000, max: 90_000 }), fc.integer({ min: -90_000, max: 90_000 }))
  .map(([x, y]): Point => [x / 1000, y / 1000]);
const pick = fc.nat({ max: 997 });

function round([outer, inner]: readonly [1 | -1, 1 | -1]): Project {
  return drawnProject([
    area("home", { role: "parcel" }, around(9, 60, outer), around(6, 15, inner)),
    area(
      "next",
      { role: "parcel" },
      around(5, 20, outer).map(([x, y]): Point => [x + 200, y]),
    ),
    spot(null, { role: "obstacle" }, [30, 10]),
  ]);
}

/** Everything of a project but the frame that the first edit settles. */
function withoutFrame(project: Project): unknown {
  const { tautrow, ...rest } = project.document;
  const { frame: _, ...settings } = tautrow ?? {};
  return { ...rest, tautrow: settings };
}

describe("whatever is drawn", () => {
  it("a corner moved and moved back leaves the file as it was, but for the frame", () => {
    fc.assert(
      fc.property(
        isClockwise,
        fc.array(fc.tuple(pick, fc.option(fc.integer({ min: 1, max: 9 }), { nil: null })), { maxLength: 6 }),
        fc.nat({ max: 1 }),
        pick,
        place,
        (turns, setbacks, path, number, to) => {
          let before = round(turns);
          for (const [side, setback] of setbacks)
            before = taken(withEdgeSetback(before, { key: "home", path: side % 2, edge: side % 6 }, setback));
          const corners = drawnThing(before, "home")?.paths[path]?.corners ?? [];
          const corner = number % corners.length;
          const ref = { key: "home", path, corner };
          const from = corners[corner] ?? drawnAt([0, 0]);
          const moved = taken(withCornerMoved(before, ref, drawnAt(to)));
          const back = taken(withCornerMoved(moved, ref, from));
          expect(withoutFrame(back)).toEqual(withoutFrame(before));
        },
      ),
      { seed: 21, numRuns: 100 },
    );
  });

  it("a corner put in and taken out again leaves the outline as it was, with its setbacks", () => {
    fc.assert(
      fc.property(isClockwise, pick, fc.nat({ max: 1 }), pick, place, (turns, side, path, number, at) => {
        const edge = number % (path === 0 ? 9 : 6);
        const before = taken(withEdgeSetback(round(turns), { key: "home", path, edge: side % 6 }, 5));
        const inserted = taken(withCornerInserted(before, { key: "home", path, edge }, drawnAt(at)));
        const after = taken(withoutCorner(inserted, { key: "home", path, corner: edge + 1 }));
        expect(after.document.features).toEqual(before.document.features);
      }),
      { seed: 22, numRuns: 100 },
    );
  });

  it("setbacks follow their sides through any run of edits", () => {
    const step = fc.record({
      what: fc.constantFrom("move", "insert", "remove", "set", "set", "clear"),
      path: fc.nat({ max: 1 }),
      number: pick,
      at: place,
      value: fc.integer({ min: 1, max: 4 }),
    });
    fc.assert(
      fc.property(isClockwise, fc.array(step, { minLength: 25, maxLength: 60 }), (turns, steps) => {
        let project = round(turns);
        // What must hold: the setback of each side, by nothing but its place in the list.
        const sides: (number | null)[][] = [
          Array.from({ length: 9 }, () => null),
          Array.from({ length: 6 }, () => null),
        ];
        for (const [k, { what, path, number, at: aim, value }] of steps.entries()) {
          // No two corners on one spot: sides that lie on each other share what is said of them.
          const at: Point = [40 * Math.round(aim[0] / 40) + k / 2, aim[1]];
          const own = sides[path] ?? [];
          const i = number % own.length;
          const before = (i + own.length - 1) % own.length;
          const edge = { key: "home", path, edge: i };
          const corner = { key: "home", path, corner: i };
          if (what === "move") project = taken(withCornerMoved(project, corner, drawnAt(at)));
          else if (what === "insert") {
            project = taken(withCornerInserted(project, edge, drawnAt(at)));
            own.splice(i, 0, own[i] ?? null);
          } else if (what === "set") {
            project = taken(withEdgeSetback(project, edge, value));
            own[i] = value;
          } else if (what === "clear") {
            project = taken(withEdgeSetback(project, edge, null));
            own[i] = null;
          } else if (own.length > 3) {
            project = taken(withoutCorner(project, corner));
            const [one, other] = [own[before] ?? null, own[i] ?? null];
            own[before] = one === null || other === null ? (one ?? other) : Math.max(one, other);
            own.splice(i, 1);
          }
          expect(sides.map((each, p) => statedSetbacks(project, "home", p, each.length))).toEqual(sides);
        }
      }),
      { seed: 23, numRuns: 60 },
    );
  });

  it("any run of edits on any file gives a project that its file gives again, or a reason, and never throws", () => {
    const names = fixtureNames("good").map((name) => ["good", name] as const);
    const broken = [
      "outline-a-bow-tie.geojson",
      "feature-null.geojson",
      "two-features-of-one-id.geojson",
      "coordinates-flat.geojson",
      "hole-outside.geojson",
      "settings-a-list.geojson",
      "version-of-the-future.geojson",
      "no-features.geojson",
    ];
    const files = [...names, ...broken.map((name) => ["bad", name] as const)];
    const step = fc.record({
      what: fc.nat({ max: 10 }),
      thing: pick,
      path: pick,
      number: pick,
      at: place,
      value: fc.constantFrom(null, 3, "8 ft", "2,5", -1, true),
    });
    fc.assert(
      fc.property(fc.constantFrom(...files), fc.array(step, { minLength: 1, maxLength: 20 }), ([kind, name], steps) => {
        // A bare geometry is a collection from here on, as it is for whoever saved it.
        let project = projectIn(serializeProject(projectIn(fixtureText(kind, name))));
        for (const each of steps) {
          const outcome = edited(project, each);
          if (!outcome.ok) {
            expect(outcome.findings.length).toBeGreaterThan(0);
            continue;
          }
          project = outcome.value;
          const text = serializeProject(project);
          const anew = projectIn(text);
          expect(serializeProject(anew)).toBe(text);
          expect({ ...project, document: null }).toEqual({ ...anew, document: null });
        }
        const plan = createPlanner().plan(project);
        if (!hasError(plan.findings)) expect(validatePlan(plan)).toEqual([]);
      }),
      { seed: 24, numRuns: 100 },
    );
  });

  it("keys of things stay through any run of edits that does not take them out", () => {
    const features = [null, "#2", "oak", null, "#4", "oak", null].map((id, i) =>
      spot(id, { role: "obstacle", number: i }, [i, i]),
    );
    const numbers = (project: Project) =>
      drawnThings(project).map(({ key, properties }) => [properties.number, key] as const);
    fc.assert(
      fc.property(fc.array(pick, { minLength: 1, maxLength: 6 }), (goes) => {
        let project = drawnProject(features);
        for (const each of goes) {
          const before = numbers(project);
          const [number, key = ""] = before[each % before.length] ?? [];
          project = taken(withoutThing(project, key));
          expect(numbers(project)).toEqual(before.filter(([other]) => other !== number));
        }
      }),
      { seed: 25, numRuns: 100 },
    );
  });
});

interface Step {
  readonly what: number;
  readonly thing: number;
  readonly path: number;
  readonly number: number;
  readonly at: Point;
  readonly value: null | number | string | boolean;
}

function edited(project: Project, { what, thing, path, number, at, value }: Step): Outcome<Project> {
  const things = drawnThings(project);
  const chosen = things[thing % Math.max(1, things.length)];
  const key = chosen?.key ?? "nothing";
  const drawn = chosen?.paths[path % Math.max(1, chosen.paths.length)];
  const ref = { key, path: drawn?.path ?? 0 };
  const i = number % (1 + (drawn?.corners.length ?? 0));
  const to = drawnAt(at);
  switch (what) {
    case 0:
      return withCornerMoved(project, { ...ref, corner: i }, to);
    case 1:
      return withCornerInserted(project, { ...ref, edge: i }, to);
    case 2:
      return withoutCorner(project, { ...ref, corner: i });
    case 3:
      return withEdgeSetback(project, { ...ref, edge: i }, value);
    case 4:
      return withTapedSide(project, { ...ref, edge: i }, value);
    case 5:
      return withBearingAlong(project, project.blocks[0]?.id ?? "", { ...ref, edge: i });
    case 6:
      return withThingProperty(project, key, number % 2 === 0 ? "setback" : "name", value);
    case 7:
      return withHole(project, key, [at, [at[0] + 2, at[1]] as const, [at[0], at[1] + 2] as const].map(drawnAt));
    case 8:
      return withoutPath(project, key, ref.path);
    case 9:
      return withoutThing(project, key);
    default: {
      const role = roles[number % roles.length] ?? "mark";
      const shape = (["point", "line", "area"] as const)[thing % 3] ?? "point";
      const added = withThing(project, {
        role,
        shape,
        corners: [at, [at[0] + 9, at[1]] as const, [at[0], at[1] + 9] as const].map(drawnAt),
      });
      return added.ok ? { ...added, value: added.value.project } : added;
    }
  }
}

it("a line of an edge keeps its direction when what it covers changes", () => {
  const fence = line("fence", { role: "edge", setback: 5 }, [
    [60, 120],
    [60, 0],
  ]);
  const before = drawnProject([
    area("home", { role: "parcel" }, [
      [0, 0],
      [60, 0],
      [60, 120],
      [0, 120],
    ]),
    fence,
  ]);
  const after = taken(withCornerInserted(before, { key: "home", path: 0, edge: 1 }, drawnAt([65, 60])));
  expect(drawnThing(after, "fence")?.paths[0]?.corners).toEqual(
    [
      [60, 120],
      [65, 60],
      [60, 0],
    ].map(([x = 0, y = 0]) => drawnAt([x, y])),
  );
});
