import type { Geometry } from "geojson";

/** Something out of a file of another format, as it is to be taken into a project. */
export interface FoundThing {
  /** As the file calls it; any text. */
  readonly name: string | null;
  /** The folder, layer, table or file inside that it stands in. */
  readonly layer: string | null;
  /** Longitude and latitude, degrees; third numbers are heights in metres. */
  readonly geometry: Geometry;
  /** Pairs, so that no name can mean anything to the language. */
  readonly values: readonly (readonly [name: string, value: string | number | boolean])[];
}

/** What a found thing says under a name, whatever the case of its letters; undefined when it says nothing. */
export function saidValue({ values }: FoundThing, name: string): string | number | boolean | undefined {
  return values.find(([each]) => each.toLowerCase() === name)?.[1];
}
