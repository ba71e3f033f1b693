import type { LayerKind } from "./layers/layer.ts";
import type { ListKind } from "./lists/list.ts";

/** Whole documents, for programs. */
export const documentKinds = ["plan"] as const;
export type DocumentKind = (typeof documentKinds)[number];

export type Thing = LayerKind | ListKind | DocumentKind;

/** What a person wants handed over, and how. Plain data. */
export interface HandOverChoice {
  /** Name of a format in `formats`. */
  readonly as: string;
  readonly of: readonly Thing[];
  /** "1-10, 14a, east-3": ids or numbers of rows and ranges of them; null: all. */
  readonly rows: string | null;
  /** See naming.ts; null: the format's usual one. */
  readonly naming: string | null;
  /** Longest name, letters; null: the format's usual one, which may be none. */
  readonly nameLength: number | null;
  /** Points that fit into one file; null: no limit. */
  readonly pointsAFile: number | null;
  /** "EPSG:32610", "utm" for the zone of the place, "local" for the plane of the project, null for longitude and latitude. */
  readonly system: string | null;
  /** Of the local plane, and of what a format counts by itself. */
  readonly unit: "m" | "ft" | "us-ft";
  /** Which comes first in a table for a survey controller. */
  readonly order: "northing-first" | "easting-first";
  /** Third ordinates where the ground is known. */
  readonly heights: boolean;
  readonly pegBeyond_m: number;
  /** Names of two marks, "gate pin, oak nail", or a row, "row 1"; null: none. */
  readonly baseline: string | null;
  /** All of a kind in one file, for formats that could have a file a layer (GeoJSON). */
  readonly together: boolean;
}

/** What holds where nothing else is said. */
export const usualChoice: HandOverChoice = {
  as: "geojson",
  of: ["rows"],
  rows: null,
  naming: null,
  nameLength: null,
  pointsAFile: null,
  system: null,
  unit: "m",
  order: "northing-first",
  heights: true,
  pegBeyond_m: 1,
  baseline: null,
  together: false,
};
