import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { elevationOf, flatGround } from "../../../src/core/ground/elevation.ts";
import type { Block, EndAssemblySettings, TrellisSettings } from "../../../src/core/project/project.ts";
import type { Rows } from "../../../src/core/rows/rows.ts";
import { trellis } from "../../../src/core/trellis/lay-trellis.ts";
import { text } from "../../../src/core/units.ts";
import { at, createRowSettings, createTrellisSettings, createWire, testFrame } from "../../support/create-project.ts";
import { createBlock, createRows } from "../../support/create-rows.ts";

/** Nine line posts 7.3152 m (24 ft) apart, a metre from each end: the bay of the handbook's checks. */
const bay_m = 7.3152;
const checkRow = { length_m: 8 * bay_m + 2, linePosts: 9 };
const strong = createWire({ tensile: "grade-200", coating: "bare", diameter_mm: 2.5, tension_n: 890 });

function createOwn(change: Partial<TrellisSettings>, rows: Partial<Block["rows"]> = {}): Block {
  return createBlock({
    rows: createRowSettings(rows),
    trellis: createTrellisSettings({ wires: [strong], tensionedAt_c: 15, coldest_c: -15, hottest_c: 45, ...change }),
  });
}

function loaded(block: Block, rows: Rows = createRows(checkRow), elevation = flatGround) {
  const laid = trellis(rows, elevation, [block]);
  if (!laid.ok) throw new Error("the trellis is not laid");
  const [own] = laid.value.loads.blocks;
  if (own === undefined) throw new Error("the block has no loads");
  return { ...own, dips: laid.value.loads.dips, structure: laid.value.blocks[0], findings: laid.findings };
}

const codes = ({ findings }: ReturnType<typeof loaded>) => findings.map(({ code }) => code);
const messageOf = ({ findings }: ReturnType<typeof loaded>, code: string) =>
  text(findings.find((each) => each.code === code)?.message ?? [], "metric");
const force_n = 0.01;

describe("tension and sag of a wire", () => {
  test("cold, heat and crop change the tension as the handbook's checks 2-11 and 2-12 say", () => {
    const crop = createOwn({ cropPerVine_kg: (30 * 2) / 9.80665 }, { vineSpacing_m: 2 });
    const [wire] = loaded(crop).wires;
    expect(wire?.bay_m).toBeCloseTo(bay_m, 9);
    expect(wire?.ownWeight_npm).toBeCloseTo(0.3778855, 6);
    expect(wire?.cropWeight_npm).toBeCloseTo(30, 9);
    expect(Math.abs(Number(wire?.coldest_n) - 1234.404)).toBeLessThan(force_n);
    expect(Math.abs(Number(wire?.hottest_n) - 546.06)).toBeLessThan(force_n);
    expect(Math.abs(Number(wire?.cropRigid_n) - 1640.342)).toBeLessThan(force_n);
    expect(wire?.cropSag_m).toBeCloseTo(0.228313, 6);
    expect(wire?.sag_m).toBeCloseTo(0.002840094, 8);
    expect(wire?.share_ratio).toBeCloseTo(1640.342 / 6769, 4);
  });

  test("the take-up is the stretch of the longest run: 90.65 mm for 100 m (check 2-7)", () => {
    const [wire] = loaded(
      createOwn({}),
      createRows({ length_m: 60, linePosts: 9 }, { length_m: 100, linePosts: 14 }),
    ).wires;
    expect(wire?.run_m).toBe(100);
    expect(wire?.takeUp_m).toBeCloseTo(0.0906547, 6);
  });

  test("a litre of water hung at mid-bay brings the wire down by P L / (4 T)", () => {
    const [wire] = loaded(createOwn({})).wires;
    expect(wire?.check.mass_kg).toBe(1);
    expect(wire?.check.drop_m).toBeCloseTo((9.80665 * bay_m) / (4 * 890), 9);
  });

  test("the hose full of water hangs on the drip wires, the fruit on the fruiting wires, each in equal shares", () => {
    const wires = [
      createWire({ purpose: "drip", count: 2, height_m: 0.5 }),
      createWire({ height_m: 0.9 }),
      createWire({ height_m: 1.1 }),
      createWire({ purpose: "foliage", height_m: 1.5 }),
    ];
    const own = loaded(createOwn({ wires, cropPerVine_kg: 4 }, { vineSpacing_m: 2 }));
    expect(own.wires.map(({ hoseWeight_npm }) => hoseWeight_npm)).toEqual([2.38318 / 2, 0, 0, 0]);
    expect(own.wires.map(({ cropWeight_npm }) => cropWeight_npm)).toEqual([0, 9.80665, 9.80665, 0]);
  });

  test("a wire that is not tightened at all has loads that can be written down, and hangs too low", () => {
    const own = loaded(createOwn({ wires: [createWire({ tension_n: 0 })] }));
    expect(
      Object.values(own.wires[0] ?? {}).every((value) => typeof value === "object" || Number.isFinite(value)),
    ).toBe(true);
    expect(codes(own)).toContain("trellis/hangs-too-low");
  });
});

/** What holds an end: wires, anchor and tie as places in the plane of the row, metres outward and up. */
function createEnd(end: Partial<EndAssemblySettings>, anchorOut_m = 1.8, change: Partial<TrellisSettings> = {}): Block {
  const usual = createTrellisSettings().endAssembly;
  return createOwn({ endAssembly: { ...usual, tieHeight_m: null, ...end }, ...change }, { anchorOut_m });
}

/** Wires of check 2-25, tightened in the cold so that the cold changes nothing. */
const sixWires: Partial<TrellisSettings> = {
  wires: [
    createWire({ height_m: 0.9, tension_n: 1000, tensile: "grade-200" }),
    createWire({ height_m: 1.2, tension_n: 445, count: 2, tensile: "grade-200" }),
    createWire({ height_m: 1.5, tension_n: 445, count: 2, tensile: "grade-200" }),
    createWire({ height_m: 1.8, tension_n: 445, tensile: "grade-200" }),
  ],
  tensionedAt_c: -15,
};

describe("loads on the end of a row", () => {
  test("an upright post tied at 1.8 m and 45 degrees bears what check 2-25 says", () => {
    const { end } = loaded(createEnd({ kind: "vertical" }, 1.8, sixWires));
    expect(end.pull_n).toBeCloseTo(3225, 6);
    expect(end.coldestPull_n).toBeCloseTo(3225, 3);
    expect(end.moment_nm).toBeCloseTo(4104, 3);
    expect(end.tie_n).toBeCloseTo(3224.407, 3);
    expect(end.anchorUplift_n).toBeCloseTo(2280, 3);
    expect(end.anchorDrag_n).toBeCloseTo(2280, 3);
    expect(end.postThrust_n).toBeCloseTo(2280, 3);
    expect(end.atGround_n).toBeCloseTo(945, 3);
    expect([end.brace_n, end.diagonal_n, end.freeDepth_m]).toEqual([null, null, null]);
  });

  test("tie, post and wires are in balance where they meet, however the post leans", () => {
    const leaning = fc.record({
      postAngle_deg: fc.integer({ min: 50, max: 90 }),
      leanDirection: fc.constantFrom("out" as const, "in" as const),
      past_m: fc.integer({ min: 3, max: 30 }),
    });
    fc.assert(
      fc.property(leaning, ({ past_m, ...lean }) => {
        const topOut_m = lean.leanDirection === "out" ? 1.8 / Math.tan((lean.postAngle_deg * Math.PI) / 180) : 0;
        const { end, structure } = loaded(createEnd({ kind: "leaning", ...lean }, topOut_m + past_m / 10, sixWires));
        const tie = structure?.end.tie;
        if (!tie) throw new Error("a leaning post has a tie");
        const [alongTie_m, alongPost_m] = [
          Math.hypot(tie.anchorOut_m - tie.postOut_m, tie.height_m),
          Math.hypot(tie.postOut_m, tie.height_m),
        ];
        // Outward and upward at the tie: the wires pull in, the tie pulls towards the anchor, the post pushes from its foot.
        const out_n =
          -end.moment_nm / tie.height_m +
          (Number(end.tie_n) * (tie.anchorOut_m - tie.postOut_m)) / alongTie_m +
          (end.postThrust_n * tie.postOut_m) / alongPost_m;
        const up_n = (-Number(end.tie_n) * tie.height_m) / alongTie_m + (end.postThrust_n * tie.height_m) / alongPost_m;
        expect(Math.abs(out_n)).toBeLessThan(1e-6);
        expect(Math.abs(up_n)).toBeLessThan(1e-6);
        expect(Number(end.anchorUplift_n)).toBeCloseTo((Number(end.tie_n) * tie.height_m) / alongTie_m, 6);
      }),
      { seed: 25001, numRuns: 200 },
    );
  });

  test("an H-brace 1.5 m high and 2.4 m long lifts its end post by 0.625 of the pull (check 2-26)", () => {
    const { end } = loaded(createEnd({ kind: "h-brace", braceHeight_m: 1.5, braceLength_m: 2.4 }, 1.8, sixWires));
    const held_n = 4104 / 1.5;
    expect(end.brace_n).toBeCloseTo(held_n, 3);
    expect(Number(end.diagonal_n) / held_n).toBeCloseTo(1.179248, 6);
    expect(-end.postThrust_n / held_n).toBeCloseTo(0.625, 6);
    expect(end.tie_n).toBeNull();
  });

  test.each(["slant-brace", "inside-brace"] as const)("the strut of an end with %s is pressed by H / cos f", (kind) => {
    const { end } = loaded(createEnd({ kind, braceHeight_m: 1.2, braceLength_m: 2.4 }, 1.8, sixWires));
    const held_n = 4104 / 1.2;
    expect(end.brace_n).toBeCloseTo((held_n * Math.hypot(1.2, 2.4)) / 2.4, 3);
    expect(end.postThrust_n).toBeCloseTo(-held_n / 2, 3);
    // Only an inside brace has a ground wire that keeps its foot from sliding.
    if (kind === "inside-brace") expect(end.diagonal_n).toBeCloseTo(held_n, 3);
    else expect(end.diagonal_n).toBeNull();
  });

  test("a single post must stand in soil what nothing else holds", () => {
    const { end } = loaded(createEnd({ kind: "single" }, 1.8, sixWires));
    expect(end.atGround_n).toBeCloseTo(3225, 3);
    expect(Number(end.freeDepth_m)).toBeGreaterThan(1.5);
    expect([end.tie_n, end.brace_n]).toEqual([null, null]);
  });
});

/** Ground along the rows of `createRows`, which run north. */
function groundAlong(height: (y_m: number) => number, ys: readonly number[]) {
  const spots = ys.flatMap((y) =>
    [-10, 40].map((x) => ({ key: `${x} ${y}`, name: null, at: at([x, y]), height_m: height(y) })),
  );
  return elevationOf(spots, testFrame).elevation;
}

describe("posts in dips", () => {
  const rows = createRows({ length_m: 82, linePosts: 9 }, { length_m: 82, linePosts: 9 });
  const block = createOwn({ ...sixWires });

  test("the post at the bottom of a dip of 5 % down and up is pulled up by 2 T sin f, as check 2-32 says", () => {
    const own = loaded(
      block,
      rows,
      groundAlong((y) => 0.05 * Math.abs(y - 41), [-5, 41, 90]),
    );
    expect(own.dips.map(({ row }) => row)).toEqual([0, 1]);
    for (const { station_m, uplift_n } of own.dips) {
      expect(station_m).toBeCloseTo(41, 9);
      expect(uplift_n).toBeCloseTo((3225 / 6000) * 599.251, 2);
    }
    expect(messageOf(own, "trellis/posts-in-dips")).toBe(
      "Block 1: in dips of rows 1 and 2 the wires pull line posts up, by 322 N at worst.",
    );
  });

  test("on a crest, on an even slope and on flat ground no post is pulled up", () => {
    const even = [-5, 41, 90];
    expect(
      loaded(
        block,
        rows,
        groundAlong((y) => -0.05 * Math.abs(y - 41), even),
      ).dips,
    ).toEqual([]);
    expect(
      loaded(
        block,
        rows,
        groundAlong((y) => 0.1 * y, even),
      ).dips,
    ).toEqual([]);
    expect(loaded(block, rows).dips).toEqual([]);
  });
});

describe("what loads give to say", () => {
  test("a strong wire on a short bay with a known anchor gives the caution and nothing more", () => {
    const own = loaded(createOwn({ anchorCapacity_n: 10_000 }));
    expect(codes(own).filter((code) => code !== "trellis/stiff-loop")).toEqual(["trellis/wire-under-tension"]);
    expect(messageOf(own, "trellis/wire-under-tension")).not.toContain("not given");
  });

  test("the caution says the pull, the tie and the uplift, and that the anchors are not known", () => {
    const own = loaded(createEnd({ kind: "vertical" }, 1.8, sixWires));
    expect(messageOf(own, "trellis/wire-under-tension")).toBe(
      "Block 1: each end post is pulled by 3,225 N when the wires are set, by 3,225 N in the cold. The tie-back takes 3,224 N and pulls its anchor up with 2,280 N; what your anchors hold is not given.",
    );
  });

  test("of a braced end it says what the brace bears and that the post is lifted", () => {
    const own = loaded(createEnd({ kind: "h-brace", braceHeight_m: 1.5, braceLength_m: 2.4 }, 1.8, sixWires));
    expect(messageOf(own, "trellis/wire-under-tension")).toContain(
      "The brace is pressed by 2,736 N and pulls the end post up with 1,710 N.",
    );
  });

  test("it is said once, for the hardest pulled of several blocks", () => {
    const rows = createRows({ length_m: 60, linePosts: 9, block: "1" }, { length_m: 60, linePosts: 9, block: "2" });
    const [first] = rows.blocks;
    if (first === undefined) throw new Error("rows have a block");
    const both = {
      ...rows,
      blocks: [
        { ...first, count: 1 },
        { ...first, block: "2", first: 1, count: 1 },
      ],
    };
    const soft = createOwn({ wires: [createWire({ tension_n: 100 })] });
    const laid = trellis(both, flatGround, [soft, { ...createOwn(sixWires), id: "2", name: "Block 2" }]);
    const said = laid.findings.filter(({ code }) => code === "trellis/wire-under-tension");
    expect(said).toHaveLength(1);
    expect(text(said[0]?.message ?? [], "metric")).toContain("Block 2");
  });

  const pulled = (tension_n: number) =>
    createOwn({ wires: [createWire({ tensile: "low-carbon", tension_n })], anchorCapacity_n: 10_000 });

  test.each([
    { tension_n: 200, severity: null },
    { tension_n: 450, severity: "warning", code: "trellis/over-share-of-breaking" },
    { tension_n: 800, severity: "error", code: "trellis/over-most-of-breaking" },
  ])(
    "a low carbon wire of 13 gauge at $tension_n N in a cold snap of 30 K: $severity",
    ({ tension_n, severity, code }) => {
      const said = loaded(pulled(tension_n)).findings.filter((each) => each.code.includes("of-breaking"));
      expect(said.map((each) => [each.code, each.severity])).toEqual(severity === null ? [] : [[code, severity]]);
    },
  );

  test("of several wires that are loaded too much the worst is named", () => {
    const wires = [createWire({ tension_n: 800 }), createWire({ tension_n: 900, height_m: 1.2 })];
    const own = loaded(createOwn({ wires }));
    expect(messageOf(own, "trellis/over-most-of-breaking")).toMatch(
      /fruiting wire at 1\.2.* in the cold, and so is one more/,
    );
  });

  test("wire that is tightened outside the temperatures it lives through is told", () => {
    const crossed = loaded(createOwn({ coldest_c: 30, tensionedAt_c: 15, hottest_c: 40 }));
    expect(codes(crossed)).toContain("trellis/temperatures-crossed");
    const level = loaded(createOwn({ coldest_c: -10, tensionedAt_c: -10, hottest_c: -10 }));
    expect(codes(level)).not.toContain("trellis/temperatures-crossed");
  });

  test("a wire of unknown class is reckoned as low carbon, and that is said", () => {
    const own = loaded(createOwn({ wires: [createWire({ tension_n: 200 })] }));
    expect(messageOf(own, "trellis/class-unknown")).toBe(
      "Block 1: the strength of the fruiting wire is not known, so it is reckoned as low carbon steel.",
    );
    expect(codes(loaded(createOwn({})))).not.toContain("trellis/class-unknown");
  });

  test.each([
    { tension_n: 1110, said: false },
    { tension_n: 1115, said: true },
  ])("high-tensile 12 1/2 gauge at $tension_n N is over the suppliers' 250 lbf: $said", ({ tension_n, said }) => {
    const wires = [{ ...strong, diameter_mm: 2.5146, tension_n }];
    expect(codes(loaded(createOwn({ wires }))).includes("trellis/tension-over-usual")).toBe(said);
  });

  test("a drip wire that sags with its hose under the clearance is told with how low it comes", () => {
    const wires = [createWire({ purpose: "drip", height_m: 0.3, tension_n: 120 })];
    const own = loaded(createOwn({ wires, leastClearance_m: 0.25 }));
    expect(messageOf(own, "trellis/hangs-too-low")).toMatch(
      /drip wire at 0\.3.* comes down to 0\.\d+ m at mid-bay; 0\.25 m is to stay clear/,
    );
  });

  test("a wire that its crop brings down on to the next is told; a movable wire is not", () => {
    const lower = createWire({ height_m: 0.9, purpose: "foliage", tension_n: 300 });
    const upper = createWire({ height_m: 1, tension_n: 300 });
    const crop = { cropPerVine_kg: 8, warnShare_ratio: 1, mostShare_ratio: 1 };
    expect(codes(loaded(createOwn({ wires: [lower, upper], ...crop })))).toContain("trellis/wires-touch");
    const lifted = { ...lower, isMovable: true };
    expect(codes(loaded(createOwn({ wires: [lifted, upper], ...crop })))).not.toContain("trellis/wires-touch");
  });

  test("an anchor that is pulled by more than it is said to hold is an error", () => {
    const own = loaded(createOwn({ anchorCapacity_n: 1000 }));
    const [said] = own.findings.filter(({ code }) => code === "trellis/anchor-over-capacity");
    expect(said?.severity).toBe("error");
    expect(text(said?.message ?? [], "metric")).toContain("1,000 N");
  });

  test("an end post with nothing to hold it is told how deep it would have to stand", () => {
    const own = loaded(createEnd({ kind: "single" }, 1.8, sixWires));
    expect(messageOf(own, "trellis/free-post-too-shallow")).toMatch(
      /would have to stand about \d\.\d+ m deep in sandy soil against 3,225 N/,
    );
  });
});
