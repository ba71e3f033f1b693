import { describe, expect, test } from "vitest";
import { pipeSizes } from "../../../src/core/hydraulics/pipe-sizes.ts";
import { text } from "../../../src/core/units.ts";
import { at, createKeepOut, createProject } from "../../support/create-project.ts";
import { createRoute } from "../../support/create-route.ts";
import { createBlock } from "../../support/create-rows.ts";
import { createTrench } from "../../support/create-trench.ts";

type Sketch = Parameters<typeof createTrench>[0];

function said(sketch: Sketch = {}): Readonly<Record<string, string>> {
  const { findings } = createTrench(sketch);
  expect(new Set(findings.map(({ code }) => code)).size).toBe(findings.length);
  return Object.fromEntries(
    findings.map(({ code, message, reason, remedy }) => [
      code,
      [message, reason, remedy].map((phrase) => text(phrase, "metric")).join(" "),
    ]),
  );
}

const foot_m = 0.3048;
/** A cover that makes the trench so deep. */
const deep = (depth_m: number): Sketch => ({ trench: { cover_m: depth_m - 0.05 } });
const hollow: NonNullable<Sketch>["heights"] = [
  [-40, -60, 10],
  [5, -60, 5],
  [60, -60, 10],
  [60, 60, 10],
  [5, 60, 5],
  [-40, 60, 10],
];

test("a usual trench on level ground says what every trench must be told, and nothing is wrong with it", () => {
  expect(Object.keys(said()).sort()).toEqual([
    "trench/call-before-you-dig",
    "trench/days-length",
    "trench/frost-unknown",
    "trench/ground-level",
    "trench/open-trench",
    "trench/solvent-cement",
    "trench/test-with-water",
  ]);
  expect(createTrench().findings.every(({ severity }) => severity === "note")).toBe(true);
});

test("no sentence has a hole, in either unit system", () => {
  const { findings } = createTrench({ ...deep(7), heights: hollow });
  expect(findings.length).toBeGreaterThan(8);
  for (const { message, reason, remedy, at: where } of findings) {
    for (const phrase of [message, reason, remedy]) {
      for (const units of ["metric", "us"] as const) {
        expect(text(phrase, units)).toMatch(/^[A-Z0-9].*[.]$/s);
        expect(text(phrase, units)).not.toMatch(/NaN|undefined|Infinity|not known/);
      }
    }
    expect(where).not.toBeNull();
  }
});

describe("digging (29 CFR 1926 Subpart P)", () => {
  test("call before you dig, private lines are not marked (US: 811)", () => {
    const told = said()["trench/call-before-you-dig"];
    expect(told).toMatch(/811/);
    expect(told).toMatch(/Private lines.*not marked/);
  });

  test("any open trench: it can kill, nobody alone, spoil 2 ft back (651(j)(2)), no work in water (651(h)), look at it after rain (651(k))", () => {
    const told = said()["trench/open-trench"];
    for (const words of [/can kill/, /Nobody works alone/, /0\.61 m back/, /water stands/, /after rain/, /local code/])
      expect(told).toMatch(words);
  });

  test.each([
    [4, "trench/ladder"],
    [5, "trench/protective-system"],
  ] as const)("from %d ft on: %s, and no earlier", (feet, code) => {
    expect(said(deep(feet * foot_m))).toHaveProperty([code]);
    expect(said(deep(feet * foot_m - 0.01))).not.toHaveProperty([code]);
  });

  test("ladders within 25 ft (651(c)(2)); slopes of classes A, B, C; both defer to local code", () => {
    const told = said(deep(2));
    expect(told["trench/ladder"]).toMatch(/7\.62 m.*1926\.651\(c\)\(2\).*local code/s);
    expect(told["trench/protective-system"]).toMatch(
      /1926\.652\(a\)\(1\).*3\/4 to 1.*1 to 1.*1 1\/2 to 1.*local code/s,
    );
  });

  test("past 20 ft an engineer", () => {
    expect(said(deep(20.1 * foot_m))["trench/registered-engineer"]).toMatch(/registered engineer/);
    expect(said(deep(20 * foot_m))).not.toHaveProperty(["trench/registered-engineer"]);
  });

  test("no more is opened than a day sees filled", () => {
    expect(said()["trench/days-length"]).toMatch(/dug, piped, tested and half filled.*Rain/s);
  });

  test("a width that does not take the pipe is told", () => {
    expect(said({ trench: { width_m: 0.08 } })["trench/too-narrow"]).toMatch(/0\.08 m wide.*0\.1 m/s);
  });

  test("rock asks for bedding of 4 in. (NRCS 430)", () => {
    expect(said({ trench: { soil: "rock" } })["trench/rock-bedding"]).toMatch(/0\.102 m is the least/);
    expect(said({ trench: { soil: "rock", bedding_m: 0.11 } })).not.toHaveProperty(["trench/rock-bedding"]);
  });
});

describe("cover and frost", () => {
  test("less than is usual where there is traffic, frost or farming (NRCS 430) is told", () => {
    expect(said({ trench: { cover_m: 0.3 } })["trench/shallow-cover"]).toMatch(/0\.3 m of ground.*0\.457 m is usual/);
  });

  test("frost that governs is noted and lays the pipe below it", () => {
    const sketch = { trench: { frostDepth_m: 0.9 } };
    expect(said(sketch)["trench/frost-governs"]).toMatch(/0\.9 m/);
    expect(said(sketch)).not.toHaveProperty(["trench/frost-unknown"]);
    expect(createTrench(sketch).dug.cover_m).toBe(0.9);
    expect(said({ trench: { frostDepth_m: 0.2 } })).not.toHaveProperty(["trench/frost-governs"]);
  });

  test("not known: drain or blow out", () => {
    expect(said()["trench/frost-unknown"]).toMatch(/drain or blow/);
  });
});

describe("ground", () => {
  test("heights that end before the line does are told with their place and how much is missing", () => {
    const told = said({
      heights: [
        [-60, -60, 1],
        [5, -60, 2],
        [5, 60, 3],
        [-60, 60, 4],
      ],
    });
    expect(told["trench/ground-unknown"]).toMatch(/not known along \d/);
    expect(told).not.toHaveProperty(["trench/ground-level"]);
  });

  test("a low point is told with where to drain it, how deep it is and what stays in the pipe", () => {
    const { findings, dug } = createTrench({ heights: hollow });
    const told = findings.find(({ code }) => code === "trench/low-point");
    expect(text(told?.message ?? [], "metric")).toMatch(/1 low point of the line, at 15 m of main/);
    expect(dug.lows.filter(({ isFitted }) => isFitted)).toHaveLength(1);
    expect(dug.groundLength_m).toBeGreaterThan(dug.length_m);
  });
});

describe("lanes", () => {
  const between = createRoute(
    [{ x: -10, y: -0.75 }, ...Array.from({ length: 5 }, (_, row) => ({ x: 3 * row, y: -0.75, row }))],
    5,
  );

  test("one finding for posts and one for anchors, naming the rows; an anchor in dug soil holds less", () => {
    const told = said({ route: between });
    expect(told["trench/near-posts"]).toMatch(/0\.75 m of a post of rows 1, 2, 3, 4 and 5; 1 m is asked for/);
    expect(told["trench/near-anchors"]).toMatch(/rows 1, 2, 3, 4 and 5.*in dug soil holds less/s);
  });

  test("dug after the posts stand, it says what is under tension, and asks for room to turn", () => {
    const told = said({ route: between, trench: { dug: "after-posts" } });
    expect(told["trench/near-anchors"]).toMatch(/under tension while you dig/);
    expect(told["trench/no-turning-room"]).toMatch(/takes 3 m to turn/);
    expect(said({ route: between, trench: { dug: "after-posts", tool: "hand" } })).not.toHaveProperty([
      "trench/no-turning-room",
    ]);
    expect(said({ route: between })).not.toHaveProperty(["trench/no-turning-room"]);
  });
});

describe("pipe", () => {
  test("solvent cement: air and no flame; every line: tested with water, never with air", () => {
    expect(said()["trench/solvent-cement"]).toMatch(/fumes.*moving air, no flame/s);
    expect(said()["trench/test-with-water"]).toMatch(/never with air/);
  });

  test("gasketed joints: how hard water pushes and the face of the block, and no cement", () => {
    const known = pipeSizes.find(({ size }) => size === "pvc-pn10-110mm");
    if (known === undefined) throw new Error("no such pipe");
    const { size, outside_mm, inside_mm, stick_m, joint } = known;
    const told = said({ trench: { pipe: { size, outside_mm, inside_mm, stick_m, joint }, cover_m: 0.7 } });
    // 600 kPa on 110 mm: an end is pushed by 5702 N.
    expect(told["trench/thrust-blocks"]).toMatch(/5,702 N.*0\.2 m²/s);
    expect(told).not.toHaveProperty(["trench/solvent-cement"]);
  });

  test("what is crossed is named, and whose it is must be asked", () => {
    const lane = createKeepOut(
      {
        areas: [
          [
            [
              [-8, -40],
              [-5, -40],
              [-5, 160],
              [-8, 160],
            ],
          ],
        ],
      },
      { key: "lane", name: "Farm lane", crossing: "square", trenchDistance_m: 1 },
    );
    const project = createProject({
      sources: [{ key: "well", name: "Well", at: at([-10, -2.5]) }],
      keepOuts: [lane],
      blocks: [createBlock()],
    });
    const route = createRoute(
      [
        { x: -10, y: -2.5 },
        { x: -4, y: -2.5, crossing: 0 },
        ...Array.from({ length: 5 }, (_, row) => ({ x: 3 * row, y: -2.5, row })),
      ],
      5,
    );
    expect(said({ route, project })["trench/crossings"]).toMatch(/crosses Farm lane/);
    expect(createTrench({ route, project }).dug.sleeves[0]?.length_m).toBeCloseTo(3.6, 6);
  });
});
