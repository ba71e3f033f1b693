import type { QuantityKind } from "../units.ts";

/** Numbers along a hose or a pipe, one panel above the other over the same distances. */
export interface AlongChart {
  readonly length_m: number;
  /** What the distance is counted from: "hose from the end post". */
  readonly along: string;
  readonly panels: readonly AlongPanel[];
  /** Places that are named on the distance. */
  readonly marks: readonly AlongMark[];
}

export interface AlongPanel {
  readonly kind: Extract<QuantityKind, "pressure" | "flow">;
  /** "pressure at the emitters" */
  readonly name: string;
  readonly points: readonly AlongPoint[];
  /** Holds from the point before up to each point, as the flow of a pipe does; else straight between them. */
  readonly isStepped: boolean;
  readonly hasDots: boolean;
  /** Level lines to read against. */
  readonly rules: readonly AlongRule[];
  /** The least that the panel spans; null: from 0. */
  readonly from: number | null;
}

export interface AlongPoint {
  readonly at_m: number;
  readonly value: number;
}

export interface AlongRule {
  readonly value: number;
  readonly text: string;
}

export interface AlongMark {
  readonly at_m: number;
  readonly text: string;
}
