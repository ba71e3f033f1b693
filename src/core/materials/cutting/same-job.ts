import type { CutJob, CutRun } from "./cut-job.ts";

/** True when two jobs ask for the same: runs, coils and the rules of cutting, number by number. */
export function isSameJob(one: CutJob, other: CutJob): boolean {
  return (
    one.article === other.article &&
    one.reserve_ratio === other.reserve_ratio &&
    one.reserve_m === other.reserve_m &&
    one.slop_m === other.slop_m &&
    one.joinLength_m === other.joinLength_m &&
    one.joinPrice === other.joinPrice &&
    isSameList(one.onHand_m, other.onHand_m) &&
    one.sizes.length === other.sizes.length &&
    one.sizes.every((size, i) => {
      const twin = other.sizes[i];
      return twin?.length_m === size.length_m && twin.price === size.price && twin.mass_kg === size.mass_kg;
    }) &&
    one.runs.length === other.runs.length &&
    one.runs.every((run, i) => isSameRun(run, other.runs[i]))
  );
}

function isSameRun(one: CutRun, other: CutRun | undefined): boolean {
  return (
    other !== undefined &&
    one.row === other.row &&
    one.wire === other.wire &&
    one.copy === other.copy &&
    one.length_m === other.length_m &&
    isSameList(one.joinsAt_m, other.joinsAt_m)
  );
}

function isSameList(one: readonly number[], other: readonly number[]): boolean {
  return one.length === other.length && one.every((each, i) => each === other[i]);
}
