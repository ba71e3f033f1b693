import { expect, test } from "vitest";
import { nothingLost } from "../../src/core/nothing-lost.ts";
import { createPlanner } from "../../src/core/planner.ts";
import { validatePlan } from "../../src/core/validate-plan.ts";
import { createProject } from "../support/create-project.ts";

const plan = createPlanner().plan(createProject());
const { materials, trellis } = plan;
if (materials === null || trellis === null) throw new Error("the test ground has a list");

test("nothing is lost between rows, list and coils", () => {
  expect(nothingLost(plan)).toEqual([]);
  expect(materials.coils.some(({ plan: cut }) => cut?.chosen)).toBe(true);
});

test("a metre of wire that no row has is noticed", () => {
  const wires = trellis.wires.map((wire) => ({ ...wire, length_m: wire.length_m + 1 }));
  expect(validatePlan({ ...plan, trellis: { ...trellis, wires } })).toEqual(
    wires.map(({ article }) => expect.stringMatching(new RegExp(`^${article}: .* in the rows$`))),
  );
});

test("a post too many on the list is noticed", () => {
  const lines = materials.lines.map((line) => (line.kind === "end-post" ? { ...line, needed: line.needed + 1 } : line));
  expect(nothingLost({ ...plan, materials: { ...materials, lines } })).toHaveLength(1);
});

test("a coil with a metre more left than was on it, a run cut twice, a coil nobody bought are noticed", () => {
  const changed = (change: "left" | "twice" | "coil") =>
    nothingLost({
      ...plan,
      materials: {
        ...materials,
        coils: materials.coils.slice(0, 1).map(({ job, plan: cut }) => {
          const answer = cut?.noJoins ?? null;
          const [first, ...others] = answer?.coils ?? [];
          if (cut === null || answer === null || first === undefined) throw new Error("wire is cut without joins");
          const coils =
            change === "left"
              ? [{ ...first, left_m: first.left_m + 1 }, ...others]
              : change === "twice"
                ? [first, ...others, { ...first, cuts: first.cuts, isOnHand: false }]
                : [first, ...others, { ...first, cuts: [], left_m: first.length_m }];
          return { job, plan: { ...cut, noJoins: { ...answer, coils } } };
        }),
      },
    }).join("\n");
  expect(changed("left")).toMatch(/left of a coil/);
  expect(changed("twice")).toMatch(/not cut whole and once/);
  expect(changed("coil")).toMatch(/are told$/);
});

test("packages of the list that do not hold what is cut are noticed", () => {
  const lines = materials.lines.map((line) =>
    line.article === materials.coils[0]?.job.article ? { ...line, packs: [] } : line,
  );
  expect(nothingLost({ ...plan, materials: { ...materials, lines } }).join()).toMatch(/0 m on the list/);
});
