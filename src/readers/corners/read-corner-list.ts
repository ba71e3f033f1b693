import { failure, type Outcome } from "../../core/outcome.ts";
import { brokenFile } from "../file-findings.ts";
import type { FoundFile, ReadingAnswers } from "../reading.ts";

/** What a pasted list of corners came to, beside its features. */
export interface CornerList extends FoundFile {
  /** In words: "degrees, minutes and seconds". */
  readonly notation: string;
  /** Of a boundary told by bearings and distances: by how much its end misses its beginning; null for other lists. */
  readonly closure: {
    readonly east_m: number;
    readonly north_m: number;
    readonly error_m: number;
    readonly length_m: number;
    /** Perimeter over error: 5000 is "1 in 5000"; null without an error. */
    readonly ratio: number | null;
  } | null;
}

/** Corners as they are pasted or typed, in any of the common notations. A list of three places or more is an outline. */
export function readCornerList(
  _text: string,
  _answers: ReadingAnswers,
  _begin: readonly [lon_deg: number, lat_deg: number] | null,
): Outcome<CornerList> {
  return failure([brokenFile("the list", "corners", "it is not read yet")]);
}
