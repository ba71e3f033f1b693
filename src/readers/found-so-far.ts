import type { Finding } from "../core/finding.ts";
import { failure, type Outcome, success } from "../core/outcome.ts";
import { nothingFound, thingsWithoutPlace, tooManyThings } from "./file-findings.ts";
import type { FoundFeature, FoundFile, Question } from "./reading.ts";

/** Things of a file at most: with each of them some 300 bytes, they stay under 120 MB beside the text they come from. */
export const mostThings = 400_000;

/** What is found going through a file. */
export interface FoundSoFar {
  readonly features: readonly FoundFeature[];
  add(feature: FoundFeature): void;
  /** Something that is there and has no place: counted, and the first one told. */
  leaveOut(called: string): void;
  isTooMany(): boolean;
  /**
   * The file, once it is gone through, with these features; with none where a question is open. Findings: `readers/too-many-things`,
   * `readers/things-without-place`, `readers/nothing-found`.
   */
  file(
    said: Pick<FoundFile, "format" | "system">,
    features: readonly FoundFeature[],
    questions: readonly Question[],
    findings: readonly Finding[],
  ): Outcome<FoundFile>;
}

/** Nothing yet, of a file of that name. */
export function createFoundSoFar(name: string): FoundSoFar {
  const found: FoundFeature[] = [];
  let leftOut = 0;
  let example = "";
  return {
    features: found,
    add: (feature) => {
      found.push(feature);
    },
    leaveOut: (called) => {
      leftOut++;
      if (example === "") example = called.slice(0, 80);
    },
    isTooMany: () => found.length > mostThings,
    file: (said, features, questions, findings) => {
      if (found.length > mostThings) return failure([tooManyThings(name, mostThings)]);
      const all = [...findings, ...(leftOut === 0 ? [] : [thingsWithoutPlace(name, leftOut, example)])];
      if (questions.length > 0) return success({ ...said, features: [], questions }, all);
      if (features.length === 0) return failure([...all, nothingFound(name, said.format)]);
      return success({ ...said, features, questions }, all);
    },
  };
}
