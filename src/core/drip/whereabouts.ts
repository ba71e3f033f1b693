import type { Finding } from "../finding.ts";

/** Where things are and what rows are called. */
export interface Whereabouts {
  placeOf(point: number): Finding["at"];
  /** Name of the row of a lateral. */
  rowOf(lateral: number): string;
}
