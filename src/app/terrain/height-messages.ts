import type { Feature, Polygon } from "geojson";
import type { LonLat } from "../../core/plane/coordinate.ts";
import type { UnitSystem } from "../../core/units.ts";
import type { ElevationFile } from "../../readers/elevation-file.ts";
import type { VerticalUnit } from "../../readers/vertical-unit.ts";

/** What a height file says of itself, and how it lies to the parcels. */
export interface AboutHeights {
  readonly file: ElevationFile;
  /** Does it cover the parcels? null while its coordinate system is not known. */
  readonly cover: Cover | null;
  /** What else there is to say of it. */
  readonly sentences: readonly string[];
}

export type Cover = "all" | "part" | "none";

/** What the page asks its worker. The file is handed over as it is: nothing of it is read on the page. */
export interface HeightQuestion {
  readonly number: number;
  readonly file: File;
  /** Definition of the coordinate system where the file does not say it, as typed; null: the file's own. */
  readonly system: string | null;
  /** Corners of the parcels. */
  readonly corners: readonly LonLat[];
  /** What its heights are counted in; null: only tell about the file. */
  readonly unit: VerticalUnit | null;
  /** Units that sentences are written in. */
  readonly units: UnitSystem;
}

/** What the worker answers to the question of the same number: progress any number of times, then one of the others. */
export type HeightAnswer = { readonly number: number } & (
  | { readonly kind: "progress"; readonly share_ratio: number }
  | { readonly kind: "about"; readonly about: AboutHeights }
  | { readonly kind: "taken"; readonly grid: Feature<Polygon>; readonly sentences: readonly string[] }
  | { readonly kind: "refused"; readonly sentences: readonly string[] }
);

/** Someone to ask. */
export interface HeightWorker {
  ask(question: HeightQuestion): void;
  /** Ends it, whatever it is at: that is how reading is stopped. */
  end(): void;
}

/** Starts a worker that tells its answers; `failed` is called when it breaks. */
export type StartHeightWorker = (tell: (answer: HeightAnswer) => void, failed: () => void) => HeightWorker;
