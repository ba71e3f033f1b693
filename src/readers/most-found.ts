import { type Finding, say, unplaced } from "../core/finding.ts";

/*
 * What is taken from one file of records at most. A record, a value and a place come to some 100, 100 and 60 bytes once they are read, so that
 * a file made to fill the memory stays under 512 MB; the vines of 40 ha are a tenth to a third of this.
 */
export const mostRecords = 400_000;
export const mostValues = 3_000_000;
export const mostPlaces = 2_000_000;

/** More in a file than fits into memory. */
export function tooMuchInside(name: string): Finding {
  return unplaced(
    "readers/too-much-inside",
    "error",
    say`${name} holds more than ${thousands(mostRecords)} things, ${thousands(mostPlaces)} places or ${thousands(mostValues)} values.`,
    say`So many may not fit into memory, and then the page and what is in it would be lost.`,
    say`Have only the ground around the parcel written to a file.`,
  );
}

function thousands(count: number): string {
  return `${count / 1000},000`.replace(/(\d)(\d{3},000)$/, "$1,$2");
}
