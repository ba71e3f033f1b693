import { describe, expect, it } from "vitest";
import type { Ground } from "../../../src/core/ground/ground.ts";
import { layGround } from "../../../src/core/ground/lay-ground.ts";
import { withPlantingArea } from "../../../src/core/ground/planting-area.ts";
import { plantingArea } from "../../../src/core/plane/overlay.ts";
import type { Project } from "../../../src/core/project/project.ts";
import {
  at,
  createBlock,
  createKeepOut,
  createParcel,
  createProject,
  createShape,
  rectangle,
} from "../../support/create-project.ts";

/** Overlay polygons lie on a grid of 0.1 mm with arcs within 1 mm. */
const overlayTolerance_m2 = 0.05;

function lay(change: Partial<Project> = {}): { readonly ground: Ground; readonly codes: readonly string[] } {
  const project = createProject(change);
  const outcome = layGround({
    ...project,
    settings: project.ground,
    blocks: project.blocks.map(({ id, rows }) => ({ id, rowSpacing_m: rows.rowSpacing_m })),
  });
  if (!outcome.ok) throw new Error("the ground was not laid");
  const { ground, findings } = withPlantingArea(outcome.value, plantingArea(outcome.value.plantingParts));
  return { ground, codes: [...outcome.findings, ...findings].map((finding) => finding.code) };
}

/** Distances of all segments, sorted. */
function distances(ground: Ground): readonly number[] {
  return [...(ground.blocks[0]?.segments.distance_m ?? [])].sort((a, b) => a - b);
}

describe("the ground of a project", () => {
  it("of a rectangle is what the setback leaves", () => {
    const { ground, codes } = lay();
    expect(ground.parcelArea_m2).toBeCloseTo(60 * 120, 4);
    expect(Math.abs(Number(ground.plantingArea_m2) - 54 * 114)).toBeLessThan(overlayTolerance_m2);
    expect(codes).toEqual([]);
  });

  it("loses a disc around an oak", () => {
    const { ground } = lay({ keepOuts: [createKeepOut({ points: [[30, 60]] }, { distance_m: 5 })] });
    expect(Math.abs(Number(ground.plantingArea_m2) - (54 * 114 - Math.PI * 25))).toBeLessThan(overlayTolerance_m2);
  });

  it("takes a hole out of the parcel and keeps the setback around it", () => {
    const hole = [...rectangle(10, 10, [25, 50])].reverse();
    const { ground } = lay({ parcels: [createParcel([rectangle(60, 120), hole])] });
    expect(ground.parcelArea_m2).toBeCloseTo(60 * 120 - 100, 4);
    const taken = 100 + 4 * 10 * 3 + Math.PI * 9;
    expect(Math.abs(Number(ground.plantingArea_m2) - (54 * 114 - taken))).toBeLessThan(overlayTolerance_m2);
  });

  it("gives an edge the setback of the line drawn along it", () => {
    const { ground, codes } = lay({
      edges: [
        { key: "stream side", line: [at([0, 0]), at([60, 0])], setback_m: 15, tapedLength_m: null, name: "stream" },
      ],
    });
    expect(distances(ground)).toEqual([3, 3, 3, 15]);
    expect(ground.causes.map((cause) => cause.name)).toEqual(["stream", null, null, null]);
    expect(codes).toEqual([]);
  });

  it("divides an edge where the line drawn along it ends", () => {
    const { ground } = lay({
      edges: [{ key: "pond", line: [at([20, 0]), at([40, 0])], setback_m: 15, tapedLength_m: null, name: null }],
    });
    expect(distances(ground)).toEqual([3, 3, 3, 3, 3, 15]);
    expect(ground.parcelArea_m2).toBeCloseTo(60 * 120, 4);
  });

  it("follows a line drawn around a corner", () => {
    const { ground } = lay({
      edges: [
        { key: "road", line: [at([0, 0]), at([60, 0]), at([60, 120])], setback_m: 10, tapedLength_m: null, name: null },
      ],
    });
    expect(distances(ground)).toEqual([3, 3, 10, 10]);
  });

  it("says when an edge lies on no outline", () => {
    const { codes } = lay({
      edges: [{ key: "lost", line: [at([0, 5]), at([60, 5])], setback_m: 10, tapedLength_m: null, name: null }],
    });
    expect(codes).toEqual(["ground/edge-off-outline"]);
  });

  it("takes a parcel's own setback before the general one", () => {
    const { ground } = lay({ parcels: [createParcel([rectangle(60, 120)], { setback_m: 6 })] });
    expect(distances(ground)).toEqual([6, 6, 6, 6]);
  });

  it("unites parcels that overlap: no setback is kept from an edge inside the other", () => {
    const { ground } = lay({
      parcels: [
        createParcel([rectangle(60, 120)], { key: "west" }),
        createParcel([rectangle(60, 120, [40, 0])], { key: "east" }),
      ],
    });
    expect(Math.abs(ground.parcelArea_m2 - 100 * 120)).toBeLessThan(overlayTolerance_m2);
    expect(Math.abs(Number(ground.plantingArea_m2) - 94 * 114)).toBeLessThan(overlayTolerance_m2);
  });

  it("unites parcels that share an edge", () => {
    const { ground } = lay({
      parcels: [
        createParcel([rectangle(60, 120)], { key: "west" }),
        createParcel([rectangle(40, 120, [60, 0])], { key: "east" }),
      ],
    });
    expect(Math.abs(Number(ground.plantingArea_m2) - 94 * 114)).toBeLessThan(overlayTolerance_m2);
  });

  it("does not count a cross alley as lost planting area", () => {
    const alley = {
      key: "alley",
      name: null,
      shape: createShape({
        lines: [
          [
            [0, 60],
            [60, 60],
          ],
        ],
      }),
      width_m: 6,
    };
    const { ground } = lay({ crossAlleys: [alley] });
    expect(Math.abs(Number(ground.plantingArea_m2) - 54 * 114)).toBeLessThan(overlayTolerance_m2);
    expect(distances(ground)).toEqual([3, 3, 3, 3, 3]);
  });

  it("has its frame near the middle of the parcels when the file has none", () => {
    const { ground } = lay({ frameOrigin: null });
    const middle = ground.frame.toPlane(at([30, 60]));
    expect(Math.hypot(...middle)).toBeLessThan(0.2);
  });

  it("says when setbacks leave nothing", () => {
    const { codes } = lay({ parcels: [createParcel([rectangle(5, 120)])] });
    expect(codes).toEqual(["ground/nothing-to-plant"]);
  });
});

describe("several blocks", () => {
  const south = { key: "a", block: "south", polygons: [[rectangle(60, 50).map((point) => at(point))]] };
  const blocks = [createBlock({}, { id: "south" }), createBlock({}, { id: "north" })];

  it("share the parcel: one as drawn, the other what is left", () => {
    const { ground, codes } = lay({ blocks, blockAreas: [south] });
    const [first, second] = ground.blocks;
    expect(Math.abs(Number(first?.area_m2) - 60 * 50)).toBeLessThan(overlayTolerance_m2);
    expect(Math.abs(Number(second?.area_m2) - 60 * 70)).toBeLessThan(overlayTolerance_m2);
    expect(codes).toEqual([]);
  });

  it("keep half a row spacing from the border between them", () => {
    const { ground } = lay({ blocks, blockAreas: [south] });
    for (const block of ground.blocks) {
      expect([...block.segments.distance_m].filter((distance) => distance === 1.25)).toHaveLength(1);
    }
  });

  it("that both take what is left are told so, and the second stays empty", () => {
    const { ground, codes } = lay({ blocks });
    expect(codes).toEqual(["ground/blocks-share-ground"]);
    expect(ground.blocks.map((block) => block.outlines.length)).toEqual([1, 0]);
  });

  it("whose areas overlap are told so", () => {
    const north = { key: "b", block: "north", polygons: [[rectangle(60, 80, [0, 40]).map((point) => at(point))]] };
    expect(lay({ blocks, blockAreas: [south, north] }).codes).toEqual(["ground/blocks-overlap"]);
  });

  it("that are left the rest get none of the ground where two others overlap", () => {
    const west = { key: "w", block: "west", polygons: [[rectangle(40, 120).map((point) => at(point))]] };
    const east = { key: "e", block: "east", polygons: [[rectangle(40, 50, [20, 0]).map((point) => at(point))]] };
    const three = ["west", "east", "rest"].map((id) => createBlock({}, { id }));
    const { ground } = lay({ blocks: three, blockAreas: [west, east] });
    expect(Math.abs(Number(ground.blocks[2]?.area_m2) - 20 * 70)).toBeLessThan(overlayTolerance_m2);
  });

  it("that lie outside the parcels are told so", () => {
    const away = { key: "b", block: "north", polygons: [[rectangle(60, 80, [500, 0]).map((point) => at(point))]] };
    expect(lay({ blocks, blockAreas: [south, away] }).codes).toEqual(["ground/block-outside"]);
  });

  it("that reach across a parcel with every corner outside it lie in it all the same", () => {
    const across = { key: "b", block: "north", polygons: [[rectangle(100, 30, [-20, 80]).map((point) => at(point))]] };
    const { ground, codes } = lay({ blocks, blockAreas: [south, across] });
    expect(codes).toEqual([]);
    expect(ground.blocks[1]?.area_m2).toBeCloseTo(60 * 30, 0);
  });
});
