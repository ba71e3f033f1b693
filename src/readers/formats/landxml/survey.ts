import type { FoundFeature } from "../../reading.ts";

/** A place in a survey file: easting, northing, height, in its own numbers. */
export type SurveyPlace = readonly [x: number, y: number, z: number | null];

/** One thing of a survey file before its numbers are places. */
export interface SurveyThing {
  readonly name: string | null;
  readonly layer: string | null;
  readonly values: FoundFeature["values"];
  readonly shape:
    | { readonly kind: "point"; readonly at: SurveyPlace }
    | { readonly kind: "lines"; readonly lines: readonly (readonly SurveyPlace[])[] }
    /** Each closed, without its first place once more. */
    | { readonly kind: "area"; readonly rings: readonly (readonly SurveyPlace[])[] };
}

/** Every place of a thing. */
export function placesOfThing({ shape }: SurveyThing): readonly SurveyPlace[] {
  switch (shape.kind) {
    case "point":
      return [shape.at];
    case "lines":
      return shape.lines.flat();
    case "area":
      return shape.rings.flat();
    default:
      return shape satisfies never;
  }
}
