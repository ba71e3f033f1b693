import type { Finding } from "../finding.ts";
import type {
  BlockArea,
  CrossAlley,
  EdgeSetback,
  GivenRow,
  HeightGrid,
  KeepOut,
  KeptPlace,
  MainLine,
  Parcel,
  PlacedPoint,
  SpotHeight,
} from "./project.ts";

/** The same, with what it takes from the settings still open. */
type Open<T, K extends keyof T> = Omit<T, K> & { readonly [P in K]: T[P] | null };

/** What features give a project. Distances, widths and blocks that a feature does not state are null until the settings are known. */
export interface FeatureParts {
  readonly parcels: readonly Parcel[];
  readonly edges: readonly EdgeSetback[];
  readonly keepOuts: readonly Open<KeepOut, "distance_m" | "trenchDistance_m">[];
  readonly crossAlleys: readonly Open<CrossAlley, "width_m">[];
  readonly blockAreas: readonly Open<BlockArea, "block">[];
  readonly givenRows: readonly GivenRow[];
  readonly keptPlaces: readonly KeptPlace[];
  readonly sources: readonly PlacedPoint[];
  readonly marks: readonly PlacedPoint[];
  readonly mainLines: readonly MainLine[];
  readonly spotHeights: readonly SpotHeight[];
  readonly heightGrids: readonly HeightGrid[];
  readonly findings: readonly Finding[];
}

/** The parts of several features, in their order. */
export function joinParts(list: readonly Partial<FeatureParts>[]): FeatureParts {
  return {
    parcels: list.flatMap(({ parcels }) => parcels ?? []),
    edges: list.flatMap(({ edges }) => edges ?? []),
    keepOuts: list.flatMap(({ keepOuts }) => keepOuts ?? []),
    crossAlleys: list.flatMap(({ crossAlleys }) => crossAlleys ?? []),
    blockAreas: list.flatMap(({ blockAreas }) => blockAreas ?? []),
    givenRows: list.flatMap(({ givenRows }) => givenRows ?? []),
    keptPlaces: list.flatMap(({ keptPlaces }) => keptPlaces ?? []),
    sources: list.flatMap(({ sources }) => sources ?? []),
    marks: list.flatMap(({ marks }) => marks ?? []),
    mainLines: list.flatMap(({ mainLines }) => mainLines ?? []),
    spotHeights: list.flatMap(({ spotHeights }) => spotHeights ?? []),
    heightGrids: list.flatMap(({ heightGrids }) => heightGrids ?? []),
    findings: list.flatMap(({ findings }) => findings ?? []),
  };
}
