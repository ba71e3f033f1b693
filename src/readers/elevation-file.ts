import type { LonLatBox } from "./lon-lat-box.ts";
import type { VerticalUnit } from "./vertical-unit.ts";

/** What a file of heights says of itself. */
export interface ElevationFile {
  readonly columns: number;
  readonly rows: number;
  /** The coordinate system, or null while it is not known: then the person has to state it. */
  readonly system: string | null;
  /** A cell in metres, east and north, about; null while the system is not known. */
  readonly cell_m: readonly [east: number, north: number] | null;
  readonly box: LonLatBox | null;
  /** Heights are those of the cells' middles or of their corners ("PixelIsArea", "PixelIsPoint"). */
  readonly heightsAre: "cells" | "points";
  readonly noData: number | null;
  /** What the file says its heights are counted in: only ever offered, because it is often left out or wrong. */
  readonly verticalUnit: VerticalUnit | null;
}

/** How a file is to be read. */
export interface ElevationReading {
  /** The ground that is wanted. */
  readonly box: LonLatBox;
  readonly verticalUnit: VerticalUnit;
  /** In place of the file's own system: a proj4 text or "EPSG:26910". */
  readonly system?: string | undefined;
  /** Of the feature: free in the project, or that of the grid it replaces. */
  readonly id: string;
  /** What to call it: the file's name. */
  readonly name: string;
}

/** To follow a reading and to stop it. */
export interface Following {
  /** Called with 0 to 1 as the work goes on. */
  readonly progress?: ((share: number) => void) | undefined;
  readonly signal?: AbortSignal | undefined;
}
