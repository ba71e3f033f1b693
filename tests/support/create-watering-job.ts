import type { BlockJob, LateralsJob, LineJob, PricedSize, WateringJob } from "../../src/core/drip/watering-job.ts";
import { pipeSizes } from "../../src/core/hydraulics/pipe-sizes.ts";
import { defaults } from "../../src/core/project/defaults.ts";
import type {
  DripSettings,
  SeasonSettings,
  SetSettings,
  WaterSettings,
} from "../../src/core/project/water-settings.ts";
import { createDripSettings } from "./create-project.ts";

export interface WateringSketch {
  /** Rows of each block; usual: one block of four rows. */
  readonly rows?: number;
  readonly blocks?: number;
  readonly vines?: number;
  /** Vines of single rows, by index; others as `vines`. */
  readonly vinesOfRow?: Readonly<Record<number, number>>;
  readonly rowSpacing_m?: number;
  readonly vineSpacing_m?: number;
  /** From the source to the first tee. */
  readonly main_m?: number;
  /** Rise along the rows away from the water, and along the main line away from the source. */
  readonly rise_ratio?: number;
  readonly lineRise_ratio?: number;
  readonly riser_m?: number;
  readonly drip?: Partial<DripSettings>;
  /** Of the second block and on, over `drip`. */
  readonly dripOfOthers?: Partial<DripSettings>;
  readonly water?: Partial<WaterSettings>;
  readonly sets?: Partial<SetSettings>;
  readonly season?: Partial<SeasonSettings>;
  /** Number of the variety of each row, by index; usual: 0 for all. */
  readonly varieties?: readonly number[];
  /** No route is laid. */
  readonly isWithoutLine?: boolean;
  /** Rows, by index, that no trench gets to. */
  readonly unreached?: readonly number[];
  readonly sizes?: readonly PricedSize[];
  readonly prices?: Readonly<Record<string, number>>;
}

const head_mpkpa = 1 / 9.80665;

/**
 * A watering by hand: everything level at height 0, rows 3 m apart with a vine every 2 m and one emitter at each, 2 L/h at 10 m of water, plain
 * (x 0.5) without barbs; the main line runs straight past the water ends of all rows, 10 m from the source to the first, and a riser is 1 m. The
 * water is a tank 15 m above the source, without head works, with no margin; pipes are PVC Schedule 40, a metre counted by its inside diameter in mm.
 */
export function createWateringJob(sketch: WateringSketch = {}): WateringJob {
  const { rows = 4, blocks = 1, rowSpacing_m = 3, main_m = 10, lineRise_ratio = 0 } = sketch;
  const count = rows * blocks;
  const usual = defaults.metric;
  return {
    water: {
      ...usual.water,
      kind: "tank",
      tankLevel_m: 15,
      headWorks: [],
      margin_ratio: 0,
      ...sketch.water,
    },
    sets: { ...usual.sets, family: "pvc-40", ...sketch.sets },
    season: { ...usual.season, ...sketch.season },
    source: { height_m: sketch.water?.height_m ?? 0, isLevel: false, latitude_deg: 42.6 },
    line: sketch.isWithoutLine === true ? null : straightLine(count, main_m, rowSpacing_m, lineRise_ratio),
    blocks: Array.from({ length: blocks }, (_, i) => blockJob(i, sketch)),
    laterals: laterals(count, rows, sketch),
    pipe: usual.trench.pipe,
    sizes: sketch.sizes ?? testSizes,
    prices: sketch.prices ?? {},
  };
}

/** PVC Schedule 40; what a metre counts is invented. */
export const testSizes: readonly PricedSize[] = pipeSizes
  .filter(({ size }) => size.startsWith("pvc-40-"))
  .map(({ size, outside_mm, inside_mm, stick_m, joint }) => {
    return { size, outside_mm, inside_mm, stick_m, joint, cost_pm: inside_mm, rating_kpa: 1500 };
  });

function straightLine(rows: number, main_m: number, rowSpacing_m: number, rise_ratio: number): LineJob {
  const station_m = (point: number): number => (point === 0 ? 0 : main_m + (point - 1) * rowSpacing_m);
  const points = Array.from({ length: rows + 1 }, (_, point) => point);
  return {
    upstream: Int32Array.from(points, (point) => point - 1),
    length_m: Float64Array.from(points, (point) => (point === 0 ? 0 : station_m(point) - station_m(point - 1))),
    height_m: Float64Array.from(points, (point) => station_m(point) * rise_ratio),
  };
}

function dripOf(block: number, { drip, dripOfOthers }: WateringSketch): DripSettings {
  return createDripSettings({
    emitterFlow_lph: 2,
    emitterPressure_kpa: 10 / head_mpkpa,
    emitterKind: "plain",
    emitterExponent: 0.5,
    emitterOffset_m: 0,
    barb: "none",
    overrun_m: 0,
    ...drip,
    ...(block > 0 ? dripOfOthers : {}),
  });
}

function blockJob(block: number, sketch: WateringSketch): BlockJob {
  const drip = dripOf(block, sketch);
  return {
    id: String(block + 1),
    name: `Block ${block + 1}`,
    drip,
    emitter: {
      kind: "emitter",
      nominal_lps: drip.emitterFlow_lph / 3600,
      nominalHead_m: drip.emitterPressure_kpa * head_mpkpa,
      exponent: drip.emitterExponent,
      from_m: drip.emitterKind === "compensating" ? drip.emitterLeast_kpa * head_mpkpa : null,
    },
    rowSpacing_m: sketch.rowSpacing_m ?? 3,
    vineSpacing_m: sketch.vineSpacing_m ?? 2,
  };
}

/** The first vine stands one spacing from the end post; emitters of a vine are all at its trunk. */
function laterals(count: number, rowsOfBlock: number, sketch: WateringSketch): LateralsJob {
  const { vines = 20, vineSpacing_m = 2, rowSpacing_m = 3, main_m = 10, riser_m = 1 } = sketch;
  const { rise_ratio = 0, lineRise_ratio = 0, varieties = [], unreached = [], vinesOfRow = {} } = sketch;
  const rows = Array.from({ length: count }, (_, row) => row);
  const blockOf = (row: number): number => Math.floor(row / rowsOfBlock);
  const vinesAt = (row: number): number => vinesOfRow[row] ?? vines;
  const foot_m = (row: number): number => (main_m + row * rowSpacing_m) * lineRise_ratio;
  const offsets = [0];
  const at_m: number[] = [];
  const height_m: number[] = [];
  for (const row of rows) {
    for (let vine = 0; vine < vinesAt(row); vine++) {
      for (let i = 0; i < dripOf(blockOf(row), sketch).emittersPerVine; i++) {
        at_m.push((vine + 1) * vineSpacing_m);
        height_m.push(foot_m(row) + (vine + 1) * vineSpacing_m * rise_ratio);
      }
    }
    offsets.push(at_m.length);
  }
  const hose_m = Float64Array.from(
    rows,
    (row) => vinesAt(row) * vineSpacing_m + dripOf(blockOf(row), sketch).overrun_m,
  );
  return {
    row: Int32Array.from(rows),
    point: Int32Array.from(rows, (row) => (sketch.isWithoutLine === true || unreached.includes(row) ? -1 : row + 1)),
    block: Int32Array.from(rows, blockOf),
    line: Int32Array.from(rows, (row) => (row % rowsOfBlock) + 1),
    variety: Int32Array.from(rows, (row) => varieties[row] ?? 0),
    vines: Int32Array.from(rows, vinesAt),
    riser_m: new Float64Array(count).fill(riser_m),
    hose_m,
    tailHeight_m: Float64Array.from(rows, (row) => foot_m(row) + Number(hose_m[row]) * rise_ratio),
    offsets: Uint32Array.from(offsets),
    at_m: Float64Array.from(at_m),
    height_m: Float64Array.from(height_m),
  };
}
