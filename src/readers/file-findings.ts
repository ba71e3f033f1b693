import { type Finding, say, unplaced } from "../core/finding.ts";
import type { Reader } from "./reading.ts";

/** No reader knows the file. */
export function unknownFormat(name: string, readers: readonly Reader[]): Finding {
  return unplaced(
    "readers/unknown-format",
    "error",
    say`${name} is in no format that is read here.`,
    say`Read are ${readers.map(({ title }) => title).join(", ")}.`,
    say`Have it written in one of these.`,
  );
}

/** Larger than what is opened of its format. */
export function fileTooLarge(name: string, size_bytes: number, { title, most_bytes }: Reader): Finding {
  return unplaced(
    "readers/file-too-large",
    "error",
    say`${name} has ${megabytes(size_bytes)}; of ${title} at most ${megabytes(most_bytes)} are read.`,
    say`A larger file may not fit into memory, and then the page and what is in it would be lost.`,
    say`Have only the ground around the parcel written to a file.`,
  );
}

/** The file is damaged, cut off, or not what its beginning says. */
export function brokenFile(name: string, title: string, why: string): Finding {
  return unplaced(
    "readers/broken-file",
    "error",
    say`${name} cannot be read as ${title}: ${why}.`,
    say`Nothing of it was taken; what was open is as it was.`,
    say`Get the file again, or have it written anew.`,
  );
}

/** An archive that would fill the memory, or holds more files than any of ours would. */
export function archiveTooLarge(name: string, most_bytes: number, mostEntries: number): Finding {
  return unplaced(
    "readers/archive-too-large",
    "error",
    say`${name} is an archive that unpacks to more than ${megabytes(most_bytes)}, or holds more than ${mostEntries} files.`,
    say`What it unpacks to may not fit into memory; some archives are made to that end.`,
    say`Unpack it yourself, look at what is in it, and bring in the one file that is wanted.`,
  );
}

/** Letters that are not what the file says of them. */
export function lettersDiffer(name: string, stated: string, taken: string): Finding {
  return unplaced(
    "readers/letters-differ",
    "warning",
    say`${name} should be written in ${stated} and is not; it was read as ${taken}.`,
    say`Names with letters beyond A to Z may come out wrong; numbers do not.`,
    say`Look at the names, or have the file written anew as UTF-8.`,
  );
}

/** More things than a person could choose from, and than fit into memory with what is read beside them. */
export function tooManyThings(name: string, most: number): Finding {
  return unplaced(
    "readers/too-many-things",
    "error",
    say`${name} holds more than ${most} things.`,
    say`So many may not fit into memory, and nobody can choose among them; nothing of it was taken.`,
    say`Have only the ground around the parcel written to a file.`,
  );
}

/** Things without a place that can be used. */
export function thingsWithoutPlace(name: string, count: number, example: string): Finding {
  return unplaced(
    "readers/things-without-place",
    "warning",
    count === 1
      ? say`1 thing in ${name} has no place and was left out: ${example}.`
      : say`${count} things in ${name} have no place and were left out, such as ${example}.`,
    say`Their coordinates are missing, no numbers, too few for a line or an outline, or not on the globe.`,
    say`Look at them in the program that wrote the file.`,
  );
}

/** A file with nothing in it that has a place. */
export function nothingFound(name: string, title: string): Finding {
  return unplaced(
    "readers/nothing-found",
    "error",
    say`${name} (${title}) holds no point, line or outline.`,
    say`Only what has a place on the ground can be taken into a plan.`,
    say`Check that the right file was chosen, and what was selected when it was written.`,
  );
}

function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;
}
