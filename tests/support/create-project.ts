import { type LonLat, lonLat, planePoint } from "../../src/core/plane/coordinate.ts";
import { createFrame, type Frame } from "../../src/core/plane/frame.ts";
import { defaults } from "../../src/core/project/defaults.ts";
import type {
  Block,
  GroundSettings,
  KeepOut,
  Parcel,
  Project,
  RowSettings,
  Shape,
  TrellisSettings,
  Wire,
} from "../../src/core/project/project.ts";
import { usualWire } from "../../src/core/project/usual-wire.ts";
import type { DripSettings } from "../../src/core/project/water-settings.ts";

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
    trenchDistance_m: 2,
    crossing: "never",
    ...change,
  };
}

export function createGroundSettings(change: Partial<GroundSettings> = {}): GroundSettings {
  return {
    ...defaults.metric.ground,
    setback_m: 3,
    obstacleDistance_m: 3,
    noPlantDistance_m: 3,
    alleyWidth_m: 6,
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
    trellis: createTrellisSettings(),
    drip: createDripSettings({ emitterFlow_lph: 1.9 }),
    plantings: [],
    ...change,
  };
}

/** The metric defaults with 0.6 m of overrun and no slack. */
export function createDripSettings(change: Partial<DripSettings> = {}): DripSettings {
  return { ...defaults.metric.drip, overrun_m: 0.6, slack_ratio: 0, ...change };
}

/** The metric defaults with one drip and one fruiting wire, a gripper of 0.75 m at the start and a loop of 1 m at the end. */
export function createTrellisSettings(change: Partial<TrellisSettings> = {}): TrellisSettings {
  return {
    ...defaults.metric.trellis,
    tieOffStart: { kind: "gripper", allowance_m: 0.75 },
    tieOffEnd: { kind: "loop", allowance_m: 1 },
    wires: [createWire({ purpose: "drip", height_m: 0.45 }), createWire({ purpose: "fruiting", height_m: 0.9 })],
    ...change,
  };
}

/** A fixed fruiting wire of 13 gauge at 0.9 m, 445 N, a gripper of 0.75 m at the start and a loop of 1 m at the end. */
export function createWire(change: Partial<Wire> = {}): Wire {
  return {
    ...usualWire(
      { purpose: "fruiting", height_m: 0.9, diameter_mm: 2.3241 },
      { tieOffStart: { kind: "gripper", allowance_m: 0.75 }, tieOffEnd: { kind: "loop", allowance_m: 1 } },
    ),
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
    heightGrids: [],
    ground: createGroundSettings(),
    mainLine: defaults.metric.mainLine,
    trench: defaults.metric.trench,
    water: defaults.metric.water,
    sets: defaults.metric.sets,
    season: defaults.metric.season,
    blocks: [createBlock()],
    materials: {
      ...defaults.us.materials,
    },
    ...change,
  };
}
