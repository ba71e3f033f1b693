import type { LonLat } from "../../plane/coordinate.ts";

/** What has a place and can be handed over, each kind as one layer. */
export const layerKinds = [
  "parcels",
  "blocks",
  "rows",
  "vines",
  "stakes",
  "posts",
  "anchors",
  "pegs",
  "marks",
  "route",
  "pipes",
  "fittings",
  "stations",
] as const;
export type LayerKind = (typeof layerKinds)[number];

export type Value = string | number | boolean | null;

/** One property that every feature of a layer has; the unit stands in the name ("length_m"). */
export interface Column {
  readonly name: string;
  /** "whole" numbers have no decimals; "yes" is true or null. */
  readonly type: "text" | "number" | "whole" | "yes";
  /** Of a number: as many as it is rounded to. */
  readonly decimals?: number;
}

/** A place with the height of the ground there, metres above whatever heights of the project are counted from; null where it is not known. */
export interface Place {
  readonly at: LonLat;
  readonly height_m: number | null;
}

/** Points, lines and areas. Areas: a list of polygons, each with its outer ring (counter-clockwise) first, then its holes (clockwise); rings do not repeat their first place. */
export type LayerGeometry =
  | { readonly shape: "point"; readonly place: Place }
  | { readonly shape: "line"; readonly places: readonly Place[] }
  | { readonly shape: "area"; readonly polygons: readonly (readonly (readonly Place[])[])[] };

/** What a name may be put together from; see naming.ts. */
export interface NameParts {
  /** "vine", "end-post". */
  readonly kind: string;
  /** A letter or two a kind, such as V. */
  readonly code: string;
  readonly block: string | null;
  /** The row's number, "14a"; of trench stations the branch. */
  readonly row: string | null;
  readonly number: number | null;
  /** What the person calls it, or what it is called in the plan: such a name is kept whatever the pattern. */
  readonly own: string | null;
}

/** A thing that is handed over, as far as its name goes. */
export interface Named {
  /** Stable and unique within a plan: "vine-14a-3". */
  readonly id: string;
  readonly parts: NameParts;
}

export interface LayerFeature extends Named {
  readonly geometry: LayerGeometry;
  /** In the order of the layer's columns. Rounded as the columns say. */
  readonly values: readonly Value[];
}

/** The one description of what is handed over: every format writes these, and knows nothing of a plan. */
export interface Layer {
  readonly kind: LayerKind;
  readonly shape: LayerGeometry["shape"];
  readonly columns: readonly Column[];
  readonly count: number;
  /** One feature after another, made when asked for: a quarter of a million vines are never held at once. May be asked for again. */
  features(): Iterable<LayerFeature>;
  /** The same in the same order without their places, which take longer to make. */
  named(): Iterable<Named>;
}
