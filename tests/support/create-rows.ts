import { planePoint } from "../../src/core/plane/coordinate.ts";
import type { Block, MaterialSettings } from "../../src/core/project/project.ts";
import type { Positions, Row, Rows } from "../../src/core/rows/rows.ts";
import { createDripSettings, createProject, createBlock as createProjectBlock, createWire } from "./create-project.ts";

interface RowSketch {
  readonly length_m: number;
  readonly groundLength_m?: number;
  readonly vines?: number;
  readonly linePosts?: number;
  readonly number?: number;
  readonly block?: string;
  readonly given?: string | null;
}

const endGap_m = 1;
const rowSpacing_m = 3;

/** Rows due north, 3 m apart, vines spread evenly between end gaps of 1 m; one stake a vine. */
export function createRows(...sketches: readonly RowSketch[]): Rows {
  const rows = sketches.map((sketch, index): Row => {
    const vines = sketch.vines ?? 0;
    return {
      id: String(sketch.number ?? index + 1),
      block: sketch.block ?? "1",
      number: sketch.number ?? index + 1,
      start: planePoint(index * rowSpacing_m, 0),
      end: planePoint(index * rowSpacing_m, sketch.length_m),
      length_m: sketch.length_m,
      groundLength_m: sketch.groundLength_m ?? sketch.length_m,
      slopeAlong_ratio: null,
      slopeAcross_ratio: null,
      aspect_deg: null,
      startLeftover_m: 0,
      endLeftover_m: 0,
      startCut: null,
      endCut: null,
      given: sketch.given ?? null,
      vines,
      linePosts: sketch.linePosts ?? 0,
      stakes: vines,
    };
  });
  const length_m = rows.reduce((sum_m, row) => sum_m + row.length_m, 0);
  const vines = createPositions(rows, (row) => row.vines);
  return {
    rows,
    blocks: [
      {
        block: "1",
        bearing_deg: 0,
        gridBearing_deg: 0,
        rowSpacing_m,
        first: 0,
        count: rows.length,
        length_m,
        shortPieces: 0,
        shortLength_m: 0,
        plantedArea_m2: length_m * rowSpacing_m,
      },
    ],
    vines,
    linePosts: createPositions(rows, (row) => row.linePosts),
    stakes: vines,
  };
}

function createPositions(rows: readonly Row[], count: (row: Row) => number): Positions {
  const offsets = [0];
  const stations: number[] = [];
  const xy: number[] = [];
  for (const row of rows) {
    const many = count(row);
    for (let i = 0; i < many; i++) {
      const share = many === 1 ? 0 : i / (many - 1);
      const station_m = endGap_m + share * (row.length_m - 2 * endGap_m);
      stations.push(station_m);
      xy.push(row.start[0], row.start[1] + station_m);
    }
    offsets.push(stations.length);
  }
  return { offsets: Uint32Array.from(offsets), station_m: Float64Array.from(stations), xy: Float64Array.from(xy) };
}

/** A block with two fruiting wires and a drip wire, 0.75 m of wire at each tie-off, one stake and one 2 L/h emitter a vine. */
export function createBlock(changes: Partial<Block> = {}): Block {
  const usual = createProjectBlock();
  const [drip] = usual.trellis.wires.filter((wire) => wire.purpose === "drip");
  const gripper = { kind: "gripper", allowance_m: 0.75 } as const;
  const ends = { tieOffStart: gripper, tieOffEnd: gripper };
  const fruiting = [0.9, 1.1].map((height_m) => createWire({ height_m, ...ends }));
  return {
    ...usual,
    trellis: {
      ...usual.trellis,
      wires: drip === undefined ? fruiting : [{ ...drip, ...ends }, ...fruiting],
      ...ends,
    },
    drip: createDripSettings({ emitterFlow_lph: 2 }),
    ...changes,
  };
}

/** Package sizes and spares of the defaults in US units. */
export function createMaterialSettings(changes: Partial<MaterialSettings> = {}): MaterialSettings {
  return { ...createProject().materials, ...changes };
}
