import type { Geometry } from "geojson";
import type { Phrase } from "../core/finding.ts";
import type { Outcome } from "../core/outcome.ts";
import type { FileBytes } from "./blob-source.ts";

/** A file to be read, whole or in part. */
export interface NamedBytes extends FileBytes {
  /** With its ending; the path it came by is of no meaning. */
  readonly name: string;
}

/** What a person has answered to what a file leaves open; nothing of it is ever guessed. */
export interface ReadingAnswers {
  /** Coordinate system of the numbers: "EPSG:2226", a proj4 text; null: what the file says, else longitude and latitude where they can be. */
  readonly system: string | null;
  /** What lengths are counted in, where the file does not say or says it doubtfully. */
  readonly unit: "m" | "ft" | "us-ft" | null;
  /** Latitude and longitude (or northing and easting) stand the other way round than expected. */
  readonly isSwapped: boolean | null;
  /** The north that bearings count from: "true", "grid" (of `system`), or by how many degrees it stood east of true north ("13.5", "-11"). */
  readonly north?: string | null;
}

export const noAnswers: ReadingAnswers = { system: null, unit: null, isSwapped: null };

/** Something a file leaves open; while one is open its features have no place and cannot be taken. */
export interface Question {
  readonly about: "system" | "unit" | "order" | "north";
  /** What is asked, in a sentence. */
  readonly asked: Phrase;
  /** Answers to choose from; empty where it is to be typed. Of an order: whether it is swapped, "yes" and "no". */
  readonly offered: readonly { readonly value: string; readonly told: Phrase }[];
}

/** One thing that a file holds. */
export interface FoundFeature {
  /** As the file calls it; null without a name. Shown as text, whatever is in it. */
  readonly name: string | null;
  /** The folder, layer, table or file inside that it stands in. */
  readonly layer: string | null;
  /** Longitude and latitude on WGS 84, degrees; a third number is a height in metres. */
  readonly geometry: Geometry;
  /** Its other properties, in their order: pairs, so that no name can mean anything to the language. */
  readonly values: readonly (readonly [name: string, value: string | number | boolean])[];
}

/** What a file holds, for a person to choose from. */
export interface FoundFile {
  /** "GPX 1.1". */
  readonly format: string;
  /** The coordinate system its numbers were read in, in words. */
  readonly system: string;
  readonly features: readonly FoundFeature[];
  readonly questions: readonly Question[];
}

/** To follow a reading and to stop it. */
export interface ReadingFollowed {
  readonly progress?: (share_ratio: number) => void;
  readonly signal?: AbortSignal;
}

/** An open format that can be read: one file a format, and a line in `read-file.ts`. */
export interface Reader {
  /** "GPX 1.1". */
  readonly title: string;
  /** Endings of file names, without the dot. */
  readonly endings: readonly string[];
  /** Largest file that is opened, bytes: memory for reading it stays under 512 MB. */
  readonly most_bytes: number;
  /** Whether the file's beginning (at most 4096 bytes, as Latin-1 text; of an archive with its end, where the names of its files stand) is of this format; asked when its ending says nothing or lies. */
  begins(head: string): boolean;
  read(file: NamedBytes, answers: ReadingAnswers, followed: ReadingFollowed): Promise<Outcome<FoundFile>>;
}
