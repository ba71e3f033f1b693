import { type LonLat, lonLat, planePoint } from "../../src/core/plane/coordinate.ts";
import { createFrame, type Frame } from "../../src/core/plane/frame.ts";
import type { Block, KeepOut, Parcel, Project, RowSettings, Shape } from "../../src/core/project/project.ts";

type Point = readonly [x_m: number, y_m: number];

/** Open country, invented; the frame's origin of every project made here. */
export const testOrigin: LonLat = lonLat(-76.9, 42.6);
export const testFrame: Frame = createFrame(testOrigin);

/** A place given in metres east and north of the test origin. */
export function at([x_m, y_m]: Point, frame: Frame = testFrame): LonLat {
  return frame.toLonLat(planePoint(x_m, y_m));
}

export function createParcel(rings: readonly (readonly Point[])[], change: Partial<Parcel> = {}): Parcel {
  return {
    key: "parcel",
    polygons: [rings.map((ring) => ring.map((point) => at(point)))],
    setback_m: null,
    outline: "surveyed",
    ...change,
  };
}

/** A rectangle with its south-west corner at a place, counter-clockwise. */
export function rectangle(width_m: number, height_m: number, [x, y]: Point = [0, 0]): readonly Point[] {
  return [
    [x, y],
    [x + width_m, y],
    [x + width_m, y + height_m],
    [x, y + height_m],
  ];
}

export function createShape(shape: {
  readonly points?: readonly Point[];
  readonly lines?: readonly (readonly Point[])[];
  readonly areas?: readonly (readonly (readonly Point[])[])[];
}): Shape {
  return {
    points: (shape.points ?? []).map((point) => at(point)),
    lines: (shape.lines ?? []).map((line) => line.map((point) => at(point))),
    areas: (shape.areas ?? []).map((area) => area.map((ring) => ring.map((point) => at(point)))),
  };
}

export function createKeepOut(shape: Parameters<typeof createShape>[0], change: Partial<KeepOut> = {}): KeepOut {
  return {
    key: "oak",
    role: "obstacle",
    name: "oak",
    shape: createShape(shape),
    distance_m: 4,
    wiresPass: false,
    largestGap_m: null,
    ...change,
  };
}

export function createRowSettings(change: Partial<RowSettings> = {}): RowSettings {
  return {
    bearing: { kind: "given", bearing_deg: 0 },
    rowSpacing_m: 2.5,
    vineSpacing_m: 2,
    headland_m: 8,
    rowOne: { kind: "centred" },
    firstSide: "left",
    minRow: { kind: "length", length_m: 15 },
    rowEnd: "vines",
    trim: "both",
    endGap_m: 1,
    vines: "centred",
    bay_vines: 4,
    bays: "whole-vines",
    distancesTo: "end-post",
    anchorOut_m: 1.5,
    lockedBearings: [],
    rowCost_m: 12,
    ...change,
  };
}

export function createBlock(rows: Partial<RowSettings> = {}, change: Partial<Block> = {}): Block {
  return {
    id: "1",
    name: "Block 1",
    rows: createRowSettings(rows),
    trellis: {
      wires: [
        { purpose: "drip", height_m: 0.45, diameter_mm: 2.3241, count: 1 },
        { purpose: "fruiting", height_m: 0.9, diameter_mm: 2.3241, count: 1 },
      ],
      tieOffStart: { kind: "gripper", allowance_m: 0.75 },
      tieOffEnd: { kind: "loop", allowance_m: 1 },
      stakesPerVine: 1,
    },
    drip: { emitterFlow_lph: 1.9, emittersPerVine: 1, overrun_m: 0.6 },
    plantings: [],
    ...change,
  };
}

/** A project on a rectangle of 60 by 120 m, rows north, 3 m setback; change what the test is about. */
export function createProject(change: Partial<Project> = {}): Project {
  return {
    document: { type: "FeatureCollection", features: [] },
    findings: [],
    name: "Test ground",
    units: "metric",
    frameOrigin: testOrigin,
    parcels: [createParcel([rectangle(60, 120)])],
    edges: [],
    keepOuts: [],
    crossAlleys: [],
    blockAreas: [],
    givenRows: [],
    keptPlaces: [],
    sources: [],
    marks: [],
    mainLines: [],
    spotHeights: [],
    ground: { setback_m: 3, obstacleDistance_m: 3, noPlantDistance_m: 3, alleyWidth_m: 6 },
    blocks: [createBlock()],
    materials: {
      wireCoil_m: 304.8,
      hoseCoil_m: 152.4,
      stakeClipBag: 200,
      hoseClipBag: 500,
      emitterBag: 100,
      vineSpare_ratio: 0.02,
      clipSpare_ratio: 0.05,
      emitterSpare_ratio: 0.05,
      linePostSpare_ratio: 0.02,
      endPostSpare: 1,
    },
    ...change,
  };
}
