import { describe, expect, it, test } from "vitest";
import { withCornerMoved, withoutCorner } from "../../../src/core/drawing/corners.ts";
import { drawnThing } from "../../../src/core/drawing/drawn.ts";
import { edgeSetback, withBearingAlong, withEdgeSetback, withTapedSide } from "../../../src/core/drawing/edges.ts";
import { withoutThing } from "../../../src/core/drawing/things.ts";
import { createPlanner } from "../../../src/core/planner.ts";
import type { Json, Project } from "../../../src/core/project/project.ts";
import { serializeProject } from "../../../src/core/project/serialize.ts";
import {
  area,
  drawnAt,
  drawnProject,
  feature,
  fieldCorners,
  fieldProject,
  line,
  refused,
  ring,
  spot,
  statedSetbacks,
  taken,
} from "../../support/drawn-files.ts";
import { projectIn } from "../../support/project-files.ts";

const side = (edge: number, path = 0, key = "home") => ({ key, path, edge });
const edgesIn = (project: Project) => project.document.features.slice(1).map(({ id, properties }) => [id, properties]);
const bearing = (project: Project, block = "1") => createPlanner().bearing(project, block);

/** Degrees: what six decimals of a bearing may differ by. */
const bearingTolerance_deg = 1e-6;

describe("the setback of a side", () => {
  it("is a feature of its own, and the parcel's where there is none", () => {
    const parcel = area("home", { role: "parcel", setback: "4 m" }, fieldCorners);
    const before = drawnProject([parcel]);
    expect(edgeSetback(before, side(2))).toEqual({ own: null, inForce_m: 4, taped: null, name: null, feature: null });
    const after = taken(withEdgeSetback(before, side(2), "20 ft"));
    expect(edgesIn(after)).toEqual([["edge-1", { role: "edge", setback: "20 ft" }]]);
    expect(edgeSetback(after, side(2))).toMatchObject({ own: "20 ft", inForce_m: 6.096, feature: "edge-1" });
    expect(edgeSetback(after, side(1))).toMatchObject({ own: null, inForce_m: 4 });
    const plan = createPlanner().plan(after);
    expect(plan.findings.filter(({ code }) => code.startsWith("ground/"))).toEqual([]);
  });

  it("is what the project says when neither the side nor the parcel says it", () => {
    expect(edgeSetback(fieldProject([], { ground: { setback: 2.5 } }), side(0)).inForce_m).toBe(2.5);
  });

  it("changes in its place, and goes with its feature when it is taken out", () => {
    const five = taken(withEdgeSetback(fieldProject(), side(2), 5));
    const eight = taken(withEdgeSetback(five, side(2), 8));
    expect(edgesIn(eight)).toEqual([["edge-1", { role: "edge", setback: 8 }]]);
    expect(edgesIn(taken(withEdgeSetback(eight, side(2), null)))).toEqual([]);
    expect(edgesIn(taken(withEdgeSetback(fieldProject(), side(2), null)))).toEqual([]);
  });

  it.each([
    ["a name", { name: "hedge" }, {}],
    ["a taped length", { tapedLength: 60 }, {}],
    ["rows along it", {}, { rows: { bearing: { edge: "north" } } }],
  ])("leaves the feature when that has %s", (_, says, settings) => {
    const north = line("north", { role: "edge", setback: 5, ...says }, [
      [60, 120],
      [0, 120],
    ]);
    const after = taken(withEdgeSetback(fieldProject([north], settings), side(2), null));
    expect(edgesIn(after)).toEqual([["north", { role: "edge", ...says }]]);
    expect(edgeSetback(after, side(2))).toMatchObject({ own: null, feature: "north" });
  });

  it("is put on the feature that lies there already", () => {
    const north = line("north", { role: "edge", name: "hedge" }, [
      [0, 120],
      [60, 120],
    ]);
    const after = taken(withEdgeSetback(fieldProject([north]), side(2), 5));
    expect(edgesIn(after)).toEqual([["north", { role: "edge", name: "hedge", setback: 5 }]]);
  });

  describe("one of several along one feature", () => {
    const stream = line("stream", { role: "edge", setback: 5, name: "stream", depth: 1 }, [
      [0, 0],
      [60, 0],
      [60, 120],
      [0, 120],
    ]);

    it("is set apart, and the others keep theirs", () => {
      const after = taken(withEdgeSetback(fieldProject([stream]), side(1), 9));
      expect(statedSetbacks(after, "home", 0, 4)).toEqual([5, 9, 5, null]);
      expect(edgesIn(after)).toEqual([
        ["stream", { role: "edge", setback: 5, name: "stream", depth: 1 }],
        ["edge-1", { role: "edge", name: "stream", depth: 1, setback: 9 }],
      ]);
      expect(drawnThing(after, "stream")?.paths.map(({ corners }) => corners)).toEqual([
        [drawnAt([0, 0]), drawnAt([60, 0])],
        [drawnAt([60, 120]), drawnAt([0, 120])],
      ]);
      expect(statedSetbacks(taken(withEdgeSetback(after, side(1), 5)), "home", 0, 4)).toEqual([5, 5, 5, null]);
    });

    it("is taken out, and the others keep theirs", () => {
      const bare = line("bare", { role: "edge", setback: 5 }, [
        [0, 0],
        [60, 0],
        [60, 120],
        [0, 120],
      ]);
      const after = taken(withEdgeSetback(fieldProject([bare]), side(0), null));
      expect(statedSetbacks(after, "home", 0, 4)).toEqual([null, 5, 5, null]);
      expect(edgesIn(after)).toHaveLength(1);
    });

    it("keeps the rows along the longest side, which keeps the feature's key", () => {
      const settings = { rows: { bearing: { edge: "stream" } } };
      const before = fieldProject([stream], settings);
      for (const value of [9, null]) {
        const after = taken(withEdgeSetback(before, side(1), value));
        expect(statedSetbacks(after, "home", 0, 4)).toEqual([5, value, 5, null]);
        expect(after.document.tautrow?.rows).toEqual(settings.rows);
        expect(bearing(after)).toBe(bearing(before));
      }
      const other = taken(withEdgeSetback(before, side(0), 9));
      expect(bearing(other)).toBe(bearing(before));
    });

    it.each([0, 1, 2, 3])("of an edge feature all around is set apart at side %i", (edge) => {
      const corners = [...fieldCorners, ...fieldCorners.slice(0, 1)];
      for (const points of [corners, [...corners].reverse()]) {
        const around = fieldProject([line("hedge", { role: "edge", setback: 5 }, points)]);
        const after = taken(withEdgeSetback(around, side(edge), 9));
        expect(statedSetbacks(after, "home", 0, 4)).toEqual([0, 1, 2, 3].map((each) => (each === edge ? 9 : 5)));
        expect(drawnThing(after, "hedge")?.paths).toHaveLength(1);
      }
    });

    it("no longer has the taped length of all of them", () => {
      const taped = line("taped", { role: "edge", setback: 5, tapedLength: 180 }, [
        [0, 0],
        [60, 0],
        [60, 120],
      ]);
      const after = taken(withEdgeSetback(fieldProject([taped]), side(1), 9));
      expect(edgesIn(after)).toEqual([
        ["taped", { role: "edge", setback: 5 }],
        ["edge-1", { role: "edge", setback: 9 }],
      ]);
    });
  });

  it("of a hole, and of a parcel drawn clockwise, is no other", () => {
    const parcel = feature(
      "home",
      { role: "parcel" },
      {
        type: "Polygon",
        coordinates: [
          ring([...fieldCorners].reverse()),
          ring([
            [20, 20],
            [40, 20],
            [30, 40],
          ]),
        ],
      },
    );
    let project = drawnProject([parcel]);
    project = taken(withEdgeSetback(project, side(1, 0), 7));
    project = taken(withEdgeSetback(project, side(2, 1), 1));
    expect(statedSetbacks(project, "home", 0, 4)).toEqual([null, 7, null, null]);
    expect(statedSetbacks(project, "home", 1, 3)).toEqual([null, null, 1]);
    expect(
      createPlanner()
        .plan(project)
        .findings.filter(({ code }) => code.startsWith("ground/")),
    ).toEqual([]);
  });

  it("is the later one where two features lie along a side, as for whoever reads the file", () => {
    const two = [5, 9].map((setback) =>
      line(`e${setback}`, { role: "edge", setback }, [
        [0, 0],
        [60, 0],
      ]),
    );
    const project = fieldProject(two);
    expect(edgeSetback(project, side(0))).toMatchObject({ own: 9, feature: "e9" });
    expect(statedSetbacks(taken(withEdgeSetback(project, side(0), null)), "home", 0, 4)[0]).toBeNull();
  });

  test.each<[Json, string]>([
    ["2,5 m", "project/bad-setting"],
    [-1, "project/setting-out-of-range"],
    [{}, "project/bad-setting"],
  ])("%j is refused as reading the file would", (value, code) => {
    expect(refused(withEdgeSetback(fieldProject(), side(0), value))).toEqual([code]);
    expect(refused(withTapedSide(fieldProject(), side(0), value))).toEqual([code]);
  });

  it("can only be given to a side of a parcel", () => {
    const project = fieldProject([
      area("shed", { role: "obstacle" }, [
        [5, 5],
        [9, 5],
        [9, 9],
      ]),
      spot("oak", { role: "obstacle" }, [30, 30]),
    ]);
    for (const edit of [withEdgeSetback, withTapedSide]) {
      expect(refused(edit(project, side(0, 0, "shed"), 5))).toEqual(["drawing/not-an-outline"]);
      expect(refused(edit(project, side(0, 0, "oak"), 5))).toEqual(["drawing/not-an-outline"]);
      expect(refused(edit(project, side(4), 5))).toEqual(["drawing/not-there"]);
      expect(refused(edit(project, side(0, 1), 5))).toEqual(["drawing/not-there"]);
    }
    expect(edgeSetback(project, side(0, 0, "shed"))).toMatchObject({ own: null, inForce_m: 0, feature: null });
  });

  it("can be given while the outline crosses itself", () => {
    const bowTie = drawnProject([
      area("home", { role: "parcel" }, [
        [0, 0],
        [60, 120],
        [60, 0],
        [0, 120],
      ]),
    ]);
    expect(statedSetbacks(taken(withEdgeSetback(bowTie, side(0), 9)), "home", 0, 4)).toEqual([9, null, null, null]);
  });
});

describe("the taped length of a side", () => {
  it("stands beside its setback, or alone", () => {
    const alone = taken(withTapedSide(fieldProject(), side(2), "197 ft"));
    expect(edgesIn(alone)).toEqual([["edge-1", { role: "edge", tapedLength: "197 ft" }]]);
    expect(edgeSetback(alone, side(2))).toMatchObject({ own: null, inForce_m: 3, taped: "197 ft", feature: "edge-1" });
    expect(edgesIn(taken(withTapedSide(alone, side(2), null)))).toEqual([]);
    const both = taken(withEdgeSetback(alone, side(2), 5));
    expect(edgesIn(taken(withTapedSide(both, side(2), 61)))).toEqual([
      ["edge-1", { role: "edge", tapedLength: 61, setback: 5 }],
    ]);
  });

  it("is not that of a feature along more sides", () => {
    const bank = line("bank", { role: "edge", setback: 5 }, [
      [0, 0],
      [60, 0],
      [60, 120],
    ]);
    const after = taken(withTapedSide(fieldProject([bank]), side(0), 61));
    expect(edgesIn(after)).toEqual([
      ["bank", { role: "edge", setback: 5 }],
      ["edge-1", { role: "edge", tapedLength: 61 }],
    ]);
    expect(statedSetbacks(after, "home", 0, 4)).toEqual([5, 5, null, null]);
    expect(edgeSetback(after, side(0))).toMatchObject({ own: 5, taped: 61, feature: "bank" });
  });
});

describe("rows along a side", () => {
  it("turn with it", () => {
    const before = taken(withCornerMoved(fieldProject(), { key: "home", path: 0, corner: 1 }, drawnAt([60, 10])));
    const along = taken(withBearingAlong(before, "1", side(0)));
    expect(along.document.tautrow?.blocks).toEqual([{ id: "1", rows: { bearing: { edge: "edge-1" } } }]);
    expect(bearing(along)).toBeCloseTo(90 - (Math.atan2(10, 60) * 180) / Math.PI, 3);
    const turned = taken(withCornerMoved(along, { key: "home", path: 0, corner: 1 }, drawnAt([60, 20])));
    expect(bearing(turned)).toBeCloseTo(90 - (Math.atan2(20, 60) * 180) / Math.PI, 3);
  });

  it("take the feature that is there, and leave none behind that says nothing", () => {
    const first = taken(withBearingAlong(fieldProject(), "1", side(0)));
    const second = taken(withBearingAlong(first, "1", side(1)));
    expect(edgesIn(second)).toEqual([["edge-2", { role: "edge" }]]);
    const named = taken(withEdgeSetback(first, side(0), 5));
    expect(edgesIn(taken(withBearingAlong(named, "1", side(1))))).toHaveLength(2);
    expect(edgesIn(taken(withBearingAlong(named, "1", side(0))))).toHaveLength(1);
  });

  it("are refused for a block that is not there", () => {
    expect(refused(withBearingAlong(fieldProject(), "9", side(0)))).toEqual(["project/bad-setting"]);
  });

  const lane: Json = line("lane", { role: "edge" }, [
    [0, 0],
    [60, 10],
  ]);
  const sloping = area("home", { role: "parcel" }, [
    [0, 0],
    [60, 10],
    [60, 120],
    [0, 120],
  ]);

  it.each<[string, Json, Json]>([
    ["the project's", { rows: { bearing: { edge: "lane" } } }, { rows: { bearing: 80.53768 } }],
    [
      "a block's",
      { blocks: [{ id: "1", rows: { bearing: { edge: "lane" }, rowSpacing: 2 } }] },
      { blocks: [{ id: "1", rows: { bearing: 80.53768, rowSpacing: 2 } }] },
    ],
  ])("keep their bearing as a number when the edge goes: %s", (_, settings) => {
    const before = drawnProject([sloping, lane], settings);
    const after = taken(withoutThing(before, "lane"));
    expect(bearing(before)).toBeCloseTo(80.54, 2);
    expect(after.blocks[0]?.rows.bearing).toMatchObject({ kind: "given" });
    expect(Math.abs(Number(bearing(after)) - Number(bearing(before)))).toBeLessThan(bearingTolerance_deg);
    expect(
      createPlanner()
        .plan(after)
        .findings.map(({ code }) => code),
    ).not.toContain("rows/bearing-edge-missing");
  });

  it("keep it block by block, where blocks far apart take it from the project", () => {
    const far = [
      [900, 0],
      [960, 10],
      [960, 120],
      [900, 120],
    ] as const;
    const settings = {
      rows: { bearing: { edge: "lane" } },
      blocks: [{ id: "west" }, { id: "east", rows: { headland: 5 } }],
    };
    const blocks = [
      area("w", { role: "block", block: "west" }, fieldCorners),
      area("e", { role: "block", block: "east" }, far),
    ];
    const before = drawnProject([sloping, lane, area("far", { role: "parcel" }, far), ...blocks], settings);
    const after = taken(withoutThing(before, "lane"));
    for (const block of ["west", "east"]) {
      expect(Math.abs(Number(bearing(after, block)) - Number(bearing(before, block)))).toBeLessThan(
        bearingTolerance_deg,
      );
    }
    expect(bearing(after, "west")).not.toBe(bearing(after, "east"));
  });

  it("keep it when the edge goes with its parcel, or while that is broken", () => {
    const bowTie = area("home", { role: "parcel" }, [
      [0, 0],
      [60, 10],
      [0, 120],
      [60, 120],
    ]);
    const before = drawnProject([bowTie, lane], { rows: { bearing: { edge: "lane" } } });
    const after = taken(withoutThing(before, "home"));
    expect(edgesIn(after)).toEqual([]);
    expect(after.blocks[0]?.rows.bearing).toMatchObject({ kind: "given" });
    const read = projectIn(serializeProject(after)).blocks[0]?.rows.bearing;
    expect(read?.kind === "given" ? read.bearing_deg : null).toBeCloseTo(80.54, 2);
  });

  it("keep it when the side they ran along goes with a corner", () => {
    const low = line("low", { role: "edge", setback: 2 }, [
      [0, 0],
      [60, 10],
    ]);
    const high = line("high", { role: "edge", setback: 9 }, [
      [60, 10],
      [60, 120],
    ]);
    const before = drawnProject([sloping, low, high], { rows: { bearing: { edge: "low" } } });
    const after = taken(withoutCorner(before, { key: "home", path: 0, corner: 1 }));
    expect(after.edges.map(({ key }) => key)).toEqual(["high"]);
    expect(statedSetbacks(after, "home", 0, 3)).toEqual([9, null, null]);
    expect(Math.abs(Number(bearing(after)) - Number(bearing(before)))).toBeLessThan(bearingTolerance_deg);
  });

  it("run along the longest edge, as they did, when the edge lay on no outline", () => {
    const lost = line("lane", { role: "edge" }, [
      [10, 10],
      [20, 20],
    ]);
    const before = fieldProject([lost], { rows: { bearing: { edge: "lane" } } });
    const after = taken(withoutThing(before, "lane"));
    expect(after.document.tautrow?.rows).toEqual({ bearing: "longest-edge" });
    expect(bearing(after)).toBe(bearing(before));
  });
});
