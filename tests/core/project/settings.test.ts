import { describe, expect, it, test } from "vitest";
import type { Block, Json, JsonObject, Project } from "../../../src/core/project/project.ts";
import { usualDrip } from "../../../src/core/project/water-defaults.ts";
import { text } from "../../../src/core/units.ts";
import { codes, createFile, fixtureText, projectIn } from "../../support/project-files.ts";

function only(project: Project): Block {
  const [block, ...others] = project.blocks;
  if (block === undefined || others.length > 0) throw new Error("one block was expected");
  return block;
}

function said(project: Project, code: string): readonly string[] {
  return project.findings.filter((finding) => finding.code === code).map(({ message }) => text(message, project.units));
}

describe("what a file does not state is taken as usual", () => {
  it("in round metres when the file is metric or does not say", () => {
    const { ground, units, blocks, materials } = projectIn(createFile());
    expect(units).toBe("metric");
    expect(ground).toEqual({
      setback_m: 3,
      obstacleDistance_m: 3,
      noPlantDistance_m: 3,
      alleyWidth_m: 6,
      steepestAlong_ratio: 0.15,
      steepestAcross_ratio: 0.08,
      heights: "triangles",
    });
    expect(blocks).toEqual([
      {
        id: "1",
        name: "Block 1",
        rows: {
          bearing: { kind: "edge", edge: "longest" },
          rowSpacing_m: 2.4,
          vineSpacing_m: 1.8,
          headland_m: 9,
          rowOne: { kind: "centred" },
          firstSide: "left",
          minRow: { kind: "length", length_m: 15 },
          rowEnd: "vines",
          trim: "both",
          endGap_m: 0.9144,
          vines: "centred",
          bay_vines: 4,
          bays: "whole-vines",
          distancesTo: "end-post",
          anchorOut_m: 1.5,
          lockedBearings: [],
          rowCost_m: 12,
        },
        trellis: expect.objectContaining({
          wires: [
            expect.objectContaining({ purpose: "drip", height_m: 0.4572, diameter_mm: 2.3241, count: 1 }),
            expect.objectContaining({ purpose: "fruiting", height_m: 0.9144, diameter_mm: 2.3241, count: 1 }),
            expect.objectContaining({ purpose: "fruiting", height_m: 1.1176, diameter_mm: 2.3241, count: 1 }),
          ],
          tieOffStart: { kind: "gripper", allowance_m: null },
          tieOffEnd: { kind: "loop", allowance_m: null },
          endPost: expect.objectContaining({ holds: "staple", diameter_mm: 120, embedment_m: 0.9, length_m: null }),
          linePost: expect.objectContaining({ holds: "staple", diameter_mm: 80, embedment_m: 0.6, length_m: null }),
          stakesPerVine: 1,
          frostDepth_m: null,
          cropPerVine_kg: null,
          anchorCapacity_n: null,
          coldest_c: -10,
          hottest_c: 40,
          tensionedAt_c: 15,
        }),
        drip: usualDrip("metric"),
        plantings: [],
      },
    ]);
    expect(materials).toEqual({
      wireCoils_m: [304.8],
      hoseCoils_m: [152.4],
      cutting: {
        reserve_ratio: 0.01,
        reserve_m: 2,
        slop_m: 0.3,
        wireJoins: "allowed",
        hoseJoins: "allowed",
        joinLength_m: 0.3,
        wireJoinPrice: null,
        hoseJoinPrice: null,
        heaviestCoil_kg: null,
      },
      stakeClipBag: 200,
      hoseClipBag: 500,
      emitterBag: 100,
      stapleBag: 500,
      vineSpare_ratio: 0.02,
      clipSpare_ratio: 0.05,
      gripperSpare_ratio: 0.05,
      emitterSpare_ratio: 0.05,
      linePostSpare_ratio: 0.02,
      stakeSpare_ratio: 0,
      endPostSpare: 1,
      onHand: [],
      prices: [],
      currency: null,
    });
  });

  it("in round feet when the file says so", () => {
    const project = projectIn(createFile({ units: "us" }));
    const { rows } = only(project);
    expect(rows.rowSpacing_m).toBe(2.4384);
    expect(rows.vineSpacing_m).toBe(1.8288);
    expect(rows.headland_m).toBe(9.144);
    expect(rows.minRow).toEqual({ kind: "length", length_m: 15.24 });
    expect(rows.anchorOut_m).toBe(1.524);
    expect(project.ground).toEqual({
      setback_m: 3.048,
      obstacleDistance_m: 3.048,
      noPlantDistance_m: 3.048,
      alleyWidth_m: 6.096,
      steepestAlong_ratio: 0.15,
      steepestAcross_ratio: 0.08,
      heights: "triangles",
    });
  });

  it("and is said once, with the values", () => {
    const [note, ...more] = said(
      projectIn(createFile({ units: "us", rows: { rowSpacing: "9 ft" } })),
      "project/defaults-used",
    );
    expect(more).toEqual([]);
    for (const value of [
      "vine spacing 6 ft",
      "headland 30 ft",
      "shortest row 50 ft",
      "setback 10 ft",
      "fruiting wire 13 ga at 3 ft",
      "emitter 0.5 gal/h",
      "wire coils of 1,000 ft",
      "spare vines 2 %",
    ]) {
      expect(note).toContain(value);
    }
    expect(note).not.toContain("row spacing");
  });

  it("and nothing is said when everything is stated", () => {
    expect(said(projectIn(fixtureText("good", "everything-stated.geojson")), "project/defaults-used")).toEqual([]);
  });

  it.each([
    ["1.2 m", 0.9144],
    ["2 m", 1],
    ["3 m", 1.5],
  ])("with vines %s apart the end gap is half of that, at least 3 ft: %d m", (vineSpacing, endGap_m) => {
    expect(only(projectIn(createFile({ rows: { vineSpacing } }))).rows.endGap_m).toBe(endGap_m);
  });

  it("null counts as not stated, zero as stated", () => {
    const { rows } = only(projectIn(createFile({ rows: { rowSpacing: null, headland: 0, endGap: "0 ft" } })));
    expect(rows.rowSpacing_m).toBe(2.4);
    expect(rows.headland_m).toBe(0);
    expect(rows.endGap_m).toBe(0);
  });
});

describe("what a file states", () => {
  it("is read in SI whatever unit it is written in", () => {
    const { name, units, frameOrigin, ground, mainLine, trench, blocks, materials } = projectIn(
      fixtureText("good", "everything-stated.geojson"),
    );
    expect({ name, units, frameOrigin }).toEqual({ name: "Home field", units: "us", frameOrigin: [-76.8994, 42.6004] });
    expect(ground).toEqual({
      setback_m: 3.048,
      obstacleDistance_m: 4,
      noPlantDistance_m: 5,
      alleyWidth_m: 6.096,
      steepestAlong_ratio: 0.2,
      steepestAcross_ratio: 0.1,
      heights: "plane",
    });
    expect(mainLine).toEqual({
      source: "well",
      lane: "between",
      postDistance_m: 0.9144,
      obstacleDistance_m: 1.8288,
      noPlantDistance_m: 1,
      boundaryDistance_m: 1.2192,
      pins: [
        { block: "east", fromRow: 1, toRow: 12, end: "start" },
        { block: null, fromRow: 13, toRow: 13, end: "end" },
      ],
      trenchPrice_pm: expect.closeTo(3 / 0.3048, 9),
      crossingPrice: 400,
      crossingAs_m: 12,
    });
    expect(trench).toEqual({
      pipe: { size: "my own", outside_mm: 63.5, inside_mm: 50.8, stick_m: 6.096, joint: "gasket" },
      cover_m: 0.6096,
      frostDepth_m: 0.762,
      grade_ratio: 0.005,
      bedding_m: 0.1016,
      tool: "excavator",
      width_m: 0.3048,
      sideSlope_ratio: 0.5,
      turningRoom_m: 3.6576,
      dug: "after-posts",
      soil: "clay",
      swell_ratio: 0.3,
      stationStep_m: 7.62,
      leastLow_m: 0.1524,
      dugPerHour_m: [20, 60],
      laidPerHour_m: [15.24, 45.72],
      hoursADay_h: 9,
      people: 3,
      testPressure_kpa: expect.closeTo(120 * 6.894757293168361, 9),
      soilBearing_kpa: 50,
    });
    expect(blocks[0]).toEqual({
      id: "east",
      name: "East block",
      rows: {
        bearing: { kind: "edge", edge: "lane" },
        rowSpacing_m: 2.4384,
        vineSpacing_m: 1.8288,
        headland_m: 9.144,
        rowOne: { kind: "from-side", distance_m: 3.048 },
        firstSide: "right",
        minRow: { kind: "vines", vines: 10 },
        rowEnd: "bays",
        trim: "end",
        endGap_m: 0.9144,
        vines: "from-start",
        bay_vines: 4,
        bays: "equal",
        distancesTo: "anchor",
        anchorOut_m: 1.524,
        lockedBearings: [{ from_deg: 80, to_deg: 100 }],
        rowCost_m: 12,
      },
      trellis: {
        wires: [
          {
            purpose: "fruiting",
            height_m: 0.9144,
            diameter_mm: 2.5146,
            count: 2,
            isMovable: false,
            tensile: "grade-200",
            coating: "class-3",
            tension_n: expect.closeTo(978.60875535731, 9),
            tieOffStart: { kind: "crimp", allowance_m: 0.6096 },
            tieOffEnd: { kind: "loop", allowance_m: 1 },
            tensioners: 1,
          },
        ],
        tieOffStart: { kind: "gripper", allowance_m: 0.762 },
        tieOffEnd: { kind: "loop", allowance_m: 1 },
        endAssembly: {
          kind: "leaning",
          postAngle_deg: 65,
          leanDirection: "out",
          tieHeight_m: 1.2192,
          braceHeight_m: 0.9144,
          braceLength_m: 2.1336,
          tieWire_mm: 3.76682,
          tieStrands: 1,
          concreteHole_m: 0.3048,
          concreteBag_l: 11.356235352,
        },
        endPost: {
          holds: "eye-bolt",
          diameter_mm: 152.4,
          embedment_m: 1.0668,
          above_m: 0.1524,
          length_m: 3.048,
          firstNotch_m: 0.3048,
          notchPitch_m: 0.0762,
        },
        linePost: {
          holds: "notch",
          diameter_mm: 50.8,
          embedment_m: 0.762,
          above_m: 0.0762,
          length_m: 2.4384,
          firstNotch_m: 0.254,
          notchPitch_m: 0.0508,
        },
        stake: { embedment_m: 0.3556, above_m: 0.0508, length_m: 1.8288 },
        stakesPerVine: 1,
        postLengths_m: [2.4384, 3.048],
        stakeLengths_m: [1.8288],
        frostDepth_m: 0.762,
        cropPerVine_kg: 5.44310844,
        tensionedAt_c: 15,
        coldest_c: -20,
        hottest_c: 45,
        anchorCapacity_n: expect.closeTo(8896.443230521, 9),
        leastClearance_m: 0.3048,
        warnShare_ratio: 0.3,
        mostShare_ratio: 0.5,
      },
      drip: expect.objectContaining({ emitterFlow_lph: 1.892705892, emittersPerVine: 2, overrun_m: 0.6096 }),
      plantings: [{ fromRow: 1, toRow: 12, variety: "red of our own", rootstock: "a strong one", spare_ratio: 0.03 }],
    });
    expect(materials.wireCoils_m).toEqual([304.8, 1219.2]);
    expect(materials.cutting).toEqual({
      reserve_ratio: 0.01,
      reserve_m: 1.8288,
      slop_m: 0.3048,
      wireJoins: "allowed",
      hoseJoins: "forbidden",
      joinLength_m: 0.3048,
      wireJoinPrice: 3.5,
      hoseJoinPrice: 0,
      heaviestCoil_kg: 27.2155422,
    });
    expect(materials.onHand).toEqual([
      { article: "wire-12.5ga-grade-200-class-3", pieces: 0, coils_m: [195.072, 300] },
      { article: "staple", pieces: 120, coils_m: [] },
    ]);
    expect(materials.prices).toEqual([
      { article: "wire-12.5ga-grade-200-class-3", size: 1219.2, price: 180, mass_kg: 47.62719885, note: "invented" },
      { article: "staple", size: 500, price: null, mass_kg: null, note: null },
    ]);
    expect(materials.vineSpare_ratio).toBe(0.02);
  });

  it("for a block stands above what it states for all, and both above the usual", () => {
    const settings = {
      rows: { rowSpacing: 3, vineSpacing: 2 },
      trellis: { stakesPerVine: 2 },
      blocks: [
        { id: "east", rows: { rowSpacing: 3.5 } },
        { id: 2, name: "West", drip: { emittersPerVine: 2 } },
      ],
    };
    const [east, west] = projectIn(createFile(settings)).blocks;
    expect([east?.rows.rowSpacing_m, east?.rows.vineSpacing_m, east?.rows.headland_m]).toEqual([3.5, 2, 9]);
    expect([west?.rows.rowSpacing_m, west?.id, west?.name, west?.drip.emittersPerVine]).toEqual([3, "2", "West", 2]);
    expect([east?.trellis.stakesPerVine, west?.trellis.stakesPerVine, east?.drip.emittersPerVine]).toEqual([2, 2, 1]);
  });

  it.each<[Json, Json]>([
    [24, { kind: "given", bearing_deg: 24 }],
    ["204 deg", { kind: "given", bearing_deg: 24 }],
    [-30, { kind: "given", bearing_deg: 150 }],
    [180, { kind: "given", bearing_deg: 0 }],
    [0, { kind: "given", bearing_deg: 0 }],
    ["longest-edge", { kind: "edge", edge: "longest" }],
    [{ edge: "lane" }, { kind: "edge", edge: "lane" }],
    [{ edge: 7 }, { kind: "edge", edge: "7" }],
    ["best", { kind: "best" }],
  ])("a bearing %j is %j", (bearing, expected) => {
    expect(only(projectIn(createFile({ rows: { bearing } }))).rows.bearing).toEqual(expected);
  });

  it("for the posts of a block goes before what it states for all, member by member", () => {
    const settings = {
      trellis: { endAssembly: { kind: "leaning", postAngle: 65 }, linePost: { holds: "notch" } },
      blocks: [
        { id: "east", trellis: { endAssembly: { postAngle: 70 }, linePost: { embedment: 0.7 } } },
        { id: "west" },
      ],
    };
    const [east, west] = projectIn(createFile(settings)).blocks;
    expect(east?.trellis.endAssembly).toMatchObject({ kind: "leaning", postAngle_deg: 70 });
    expect(east?.trellis.linePost).toMatchObject({ holds: "notch", embedment_m: 0.7 });
    expect(west?.trellis.endAssembly).toMatchObject({ kind: "leaning", postAngle_deg: 65 });
    expect(west?.trellis.linePost).toMatchObject({ holds: "notch", embedment_m: 0.6 });
  });

  it("of a wire decides what it is tightened to, unless that is stated too", () => {
    const wire = (more: JsonObject) =>
      only(projectIn(createFile({ trellis: { wires: [{ purpose: "fruiting", height: 1, ...more }] } }))).trellis
        .wires[0]?.tension_n;
    const lbf = 4.4482216152605;
    expect(wire({})).toBeCloseTo(75 * lbf, 9);
    expect(wire({ purpose: "drip" })).toBeCloseTo(60 * lbf, 9);
    expect(wire({ movable: true })).toBeCloseTo(35 * lbf, 9);
    expect(wire({ tensile: "grade-180" })).toBeCloseTo(200 * lbf, 9);
    expect(wire({ tensile: "grade-180", tension: "150 lbf" })).toBeCloseTo(150 * lbf, 9);
  });

  it("of another kind of tie-off does not keep the allowance of the usual kind", () => {
    const stated = {
      tieOffEnd: { kind: "loop", allowance: 1.2 },
      wires: [{ purpose: "drip", height: 0.5, tieOffEnd: { kind: "crimp" } }],
    };
    const { trellis } = only(projectIn(createFile({ trellis: stated })));
    expect(trellis.wires[0]?.tieOffEnd).toEqual({ kind: "crimp", allowance_m: null });
  });

  it("may leave parts of a tie-off or a wire as usual", () => {
    const { trellis } = only(
      projectIn(
        createFile({ trellis: { tieOffEnd: { allowance: "4 ft" }, wires: [{ purpose: "foliage", height: 1.4 }] } }),
      ),
    );
    expect(trellis.tieOffEnd).toEqual({ kind: "loop", allowance_m: 1.2192 });
    expect(trellis.wires).toMatchObject([
      { purpose: "foliage", height_m: 1.4, diameter_mm: 2.3241, count: 1, tieOffEnd: { allowance_m: 1.2192 } },
    ]);
  });

  it("that is not understood does not take its neighbours along", () => {
    const project = projectIn(createFile({ rows: { rowSpacing: "2,4 m", vineSpacing: 1.5, headland: "far" } }));
    expect(codes(project.findings).filter((code) => code === "project/bad-setting")).toHaveLength(2);
    expect(only(project).rows.vineSpacing_m).toBe(1.5);
    expect(only(project).rows.rowSpacing_m).toBe(2.4);
  });

  it("a setting that is nearly known is kept, with the name that may be meant", () => {
    const [note] = said(
      projectIn(createFile({ rows: { row_spacing: 3 }, blocks: [{ id: "east", trelis: {} }] })),
      "project/unknown-setting",
    );
    expect(note).toContain("did you mean rows.rowSpacing");
  });

  it("a setting that is nothing like any is kept without a guess", () => {
    const [note] = said(projectIn(createFile({ colour: "green" })), "project/unknown-setting");
    expect(note).toBe("The setting colour is not known. It is kept in the file, but not used.");
  });
});

describe("a spacing no vineyard has is an error that says the limits", () => {
  test.each<[string, Json, boolean]>([
    ["rows.rowSpacing", 0.5, true],
    ["rows.rowSpacing", 0.49, false],
    ["rows.rowSpacing", 20, true],
    ["rows.rowSpacing", 20.1, false],
    ["rows.vineSpacing", 0.2, true],
    ["rows.vineSpacing", 0, false],
    ["rows.headland", 0, true],
    ["rows.headland", -0.1, false],
    ["rows.headland", 101, false],
    ["ground.setback", 0, true],
    ["ground.setback", 501, false],
    ["rows.minRow", { vines: 0 }, true],
    ["rows.anchorOut", "70 ft", false],
    ["drip.emitterFlow", "30 gal/h", false],
  ])("%s %j", (path, value, isFine) => {
    const [section = "", name = ""] = path.split(".");
    const { findings } = projectIn(createFile({ [section]: { [name]: value } }));
    expect(codes(findings).includes("project/setting-out-of-range")).toBe(!isFine);
  });

  test("in the reader's units", () => {
    const project = projectIn(createFile({ units: "us", rows: { rowSpacing: "80 ft" } }));
    expect(said(project, "project/setting-out-of-range")).toEqual([
      "The setting rows.rowSpacing is 80 ft; it must be from 1.64 ft to 65.62 ft.",
    ]);
  });
});

test("a file of a newer format keeps everything, and none of its settings are used", () => {
  const project = projectIn(fixtureText("bad", "version-of-the-future.geojson"));
  expect(project.document.tautrow).toEqual({ version: 99, rows: { rowSpacing: "2 parsec" } });
  expect(project.parcels).toHaveLength(1);
  expect(codes(project.findings)).not.toContain("project/bad-setting");
});

test("the name is the settings', else the collection's, else none", () => {
  expect(projectIn(createFile({ name: "Hill" })).name).toBe("Hill");
  expect(projectIn(createFile({}).replace('"features"', '"name":"Vale","features"')).name).toBe("Vale");
  expect(projectIn(createFile({})).name).toBe("Unnamed parcel");
});
