import type { Cause } from "../ground/ground.ts";
import type { PlanePoint } from "../plane/coordinate.ts";
import type { FeatureKey } from "../project/project.ts";
import type { RowLayout } from "./vines.ts";

/** A row before it has its number: oriented from its start, laid into its piece. */
export interface RowDraft {
  /** Across the rows, where its line lies; rows of one line share a number. */
  readonly across_m: number;
  /** From the start, along the bearing or against it, for the order within a line. */
  readonly along_m: number;
  readonly start: PlanePoint;
  readonly end: PlanePoint;
  readonly length_m: number;
  readonly layout: RowLayout;
  /** Stations of the gaps that wires run through. */
  readonly gaps: readonly (readonly [from_m: number, to_m: number])[];
  readonly startLeftover_m: number;
  readonly endLeftover_m: number;
  readonly startCut: Cause | null;
  readonly endCut: Cause | null;
  readonly given: FeatureKey | null;
}
