import type { EmitterLaw } from "../hydraulics/outlet.ts";
import type { PipeSettings } from "../project/project.ts";
import type { DripSettings, SeasonSettings, SetSettings, WaterSettings } from "../project/water-settings.ts";

/** What the watering depends on: plain data, so that it can be worked out beside the page. */
export interface WateringJob {
  readonly water: WaterSettings;
  readonly sets: SetSettings;
  readonly season: SeasonSettings;
  readonly source: SourcePlace;
  /** The route of the main line; null while there is none. */
  readonly line: LineJob | null;
  readonly blocks: readonly BlockJob[];
  readonly laterals: LateralsJob;
  /** The pipe that is taken where none is chosen. */
  readonly pipe: PipeSettings;
  /** What can be chosen, the narrowest first. */
  readonly sizes: readonly PricedSize[];
  /** Of a piece, a stick of pipe or a metre of wire, by article, where the price list has one. */
  readonly prices: Readonly<Record<string, number>>;
}

export interface SourcePlace {
  /** Of the gauge: as stated, else the ground at the source; 0 where heights are not known. */
  readonly height_m: number;
  /** Heights of source, line or laterals are not all known: those that are not are taken as the source's own. */
  readonly isLevel: boolean;
  readonly latitude_deg: number;
}

/** The route as parallel arrays by point; point 0 is the source. */
export interface LineJob {
  readonly upstream: Int32Array;
  /** Along the ground, of the leg up to the point. */
  readonly length_m: Float64Array;
  /** Of the pipe. */
  readonly height_m: Float64Array;
}

export interface BlockJob {
  readonly id: string;
  readonly name: string;
  readonly drip: DripSettings;
  readonly emitter: EmitterLaw;
  readonly rowSpacing_m: number;
  readonly vineSpacing_m: number;
}

/** The laterals of the rows that have vines, in the order of the plan's rows, as parallel arrays. */
export interface LateralsJob {
  /** Index of the row in the plan. */
  readonly row: Int32Array;
  /** Point of the route with its tee; -1 where no trench gets to it. */
  readonly point: Int32Array;
  /** Index into the blocks; number of the row line; which variety it is planted with (equal numbers, equal variety). */
  readonly block: Int32Array;
  readonly line: Int32Array;
  readonly variety: Int32Array;
  readonly vines: Int32Array;
  /** Pipe from the tee to where the hose begins, and the hose with its overrun and slack. */
  readonly riser_m: Float64Array;
  readonly hose_m: Float64Array;
  /** Of the end of the hose, as of the emitters. */
  readonly tailHeight_m: Float64Array;
  /** Emitters of lateral i are offsets[i] to offsets[i + 1], from the water end on. */
  readonly offsets: Uint32Array;
  /** Along the hose. */
  readonly at_m: Float64Array;
  readonly height_m: Float64Array;
}

/** A pipe size with what a metre of it counts: its price, or its mass where none of the family is priced. */
export interface PricedSize extends PipeSettings {
  readonly cost_pm: number;
  /** Highest pressure it is sold for, at 23 °C (PVC) or 20 °C (metric). */
  readonly rating_kpa: number;
}
