import { type Finding, say, unplaced } from "../../../core/finding.ts";

/** Coordinates with spaces in them. */
export function spacesInPlaces(name: string, count: number): Finding {
  return unplaced(
    "readers/spaces-in-places",
    "note",
    count === 1
      ? say`1 placemark in ${name} has spaces behind the commas of its coordinates; they were read without them.`
      : say`${count} placemarks in ${name} have spaces behind the commas of their coordinates; they were read without them.`,
    say`In KML a space begins the next place, so other programs may read these wrongly.`,
    say`Look whether they lie where they should.`,
  );
}

/** Parts that stand in other files. */
export function linkedElsewhere(name: string, count: number): Finding {
  return unplaced(
    "readers/linked-elsewhere",
    "warning",
    say`${name} leads to ${count} other ${count === 1 ? "file or page" : "files or pages"}; nothing was fetched from there.`,
    say`What stands in them is not in this file.`,
    say`Open them in a map program, and save what is wanted as a file of its own.`,
  );
}
