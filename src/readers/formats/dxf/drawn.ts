import type { FoundFeature } from "../../reading.ts";

/** A place in a drawing, in its own numbers; z null where none is said. */
export type Drawn = readonly [x: number, y: number, z: number | null];

/** One thing of a drawing, before its numbers are places. */
export interface DrawnThing {
  /** "LWPOLYLINE". */
  readonly type: string;
  readonly layer: string;
  readonly name: string | null;
  readonly values: FoundFeature["values"];
  readonly shape:
    | { readonly kind: "point"; readonly at: Drawn }
    | { readonly kind: "line"; readonly points: readonly Drawn[] }
    /** Rings without order: which lies in which is found out later. */
    | { readonly kind: "area"; readonly rings: readonly (readonly Drawn[])[] };
  /** What our own drawings say of a thing. */
  readonly own: OwnData | null;
  /** A symbol to be put in its place, else null. */
  readonly symbol: DrawnSymbol | null;
}

/** Where a block of a drawing goes. */
export interface DrawnSymbol {
  readonly block: string;
  readonly scaleX: number;
  readonly scaleY: number;
  readonly scaleZ: number;
  readonly turned_rad: number;
}

/** Extended data of our own drawings, as pairs; ring and polygon of a piece of an area. */
export interface OwnData {
  readonly pairs: FoundFeature["values"];
}

/** A definition of a symbol. */
export interface Block {
  readonly base: Drawn;
  readonly things: readonly DrawnThing[];
}

/** A whole drawing. */
export interface Drawing {
  /** `$INSUNITS`; null where it is not said. */
  readonly units: number | null;
  readonly blocks: ReadonlyMap<string, Block>;
  readonly things: readonly DrawnThing[];
  /** What is neither point, line, outline nor text, by kind. */
  readonly others: ReadonlyMap<string, number>;
  readonly curves: number;
  /** Things without numbers: how many, and what the first one was. */
  readonly broken: { readonly count: number; readonly example: string };
}
