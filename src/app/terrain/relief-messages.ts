import type { Elevation } from "../../core/ground/elevation.ts";
import type { LonLat } from "../../core/plane/coordinate.ts";
import type { UnitSystem } from "../../core/units.ts";
import type { LngLat } from "../../plugin/placing.ts";

/** What the page asks its worker. */
export interface ReliefQuestion {
  readonly number: number;
  readonly elevation: Elevation;
  /** Origin of the plane the heights lie in. */
  readonly origin: LonLat;
  /** Corners of the parcels: the relief is drawn around them. */
  readonly corners: readonly LonLat[];
  readonly units: UnitSystem;
}

/** A picture of light and shade over the ground. */
export interface Shading {
  readonly picture: ImageBitmap;
  /** North-west, north-east, south-east, south-west. */
  readonly corners: readonly [LngLat, LngLat, LngLat, LngLat];
}

/** What the worker answers to the question of the same number. */
export interface ReliefAnswer {
  readonly number: number;
  /** GeoJSON text, handed over unread: lines with `height_m`, `label` and `isMain`. The page neither builds nor copies it. */
  readonly contours: Blob;
  readonly shading: Shading | null;
}

/** Someone to ask, one question after another. */
export interface ReliefWorker {
  ask(question: ReliefQuestion): void;
  /** Ends it, whatever it is at. */
  end(): void;
}

/** Starts a worker that tells its answers. */
export type StartReliefWorker = (tell: (answer: ReliefAnswer) => void) => ReliefWorker;
