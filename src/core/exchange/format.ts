import type { Finding } from "../finding.ts";
import type { Plan } from "../plan.ts";
import type { CoordinateSystem } from "../systems/coordinate-system.ts";
import type { DocumentKind, HandOverChoice, Thing } from "./choice.ts";
import type { Layer, LayerGeometry } from "./layers/layer.ts";
import type { List } from "./lists/list.ts";
import type { Names } from "./naming.ts";
import type { Letters } from "./plain-letters.ts";

/** Choices that mean something in a format; others are not asked for. */
export type FormatChoice = (typeof askedChoices)[number] | "heights";

/** Those that count as asked for where they are other than usual; heights go along where a format has room for them. */
export const askedChoices = [
  "system",
  "unit",
  "naming",
  "nameLength",
  "pointsAFile",
  "order",
  "baseline",
  "together",
] as const;

/** An open format that a plan can be handed over in: how it is called, what fits into it, and how it is written. */
export interface Format {
  /** What the command line calls it. */
  readonly name: string;
  /** What it is called where room is short. */
  readonly word: string;
  /** "GPX 1.1". */
  readonly title: string;
  /** For whom, in a few words: "handhelds and crew phones". */
  readonly usedFor: string;
  readonly extension: string;
  readonly mediaType: string;
  /** What can be in it. What is asked for and does not fit is told in a finding, never dropped silently. */
  readonly holds: readonly Thing[];
  /** What goes out before anyone chose: what who reads it asks for most (common practice, no source). */
  readonly usual: readonly Thing[];
  readonly choices: readonly FormatChoice[];
  /** Usual pattern of names, with one block and with several. */
  readonly naming: { readonly one: string; readonly several: string };
  /** Longest name that its readers take as usual; null: any. */
  readonly nameLength: number | null;
  readonly letters: Letters;
  /** Datum, units and system stand in the file itself; else a text beside it says them. */
  readonly statesItself: boolean;
  /** The usual system: degrees, or the projected or local one that is chosen. */
  readonly places: "degrees" | "chosen" | "chosen, no degrees";
  write(job: HandOverJob): { readonly files: readonly OutFile[]; readonly findings: readonly Finding[] };
}

/** What a format writes. */
export interface HandOverJob {
  readonly plan: Plan;
  readonly choice: HandOverChoice;
  readonly layers: readonly Layer[];
  readonly lists: readonly List[];
  readonly documents: readonly DocumentKind[];
  readonly names: Names;
  readonly system: CoordinateSystem;
  /** When it is written, ISO 8601 with offset or Z; the core has no clock. */
  readonly writtenAt: string;
}

export type Chunk = string | Uint8Array;
export type SqlValue = string | number | Uint8Array | null;
/** One SQL statement; with `rows`, prepared once and run for each. */
export interface Statement {
  readonly sql: string;
  readonly rows: Iterable<readonly SqlValue[]> | null;
}

/** One file that is handed over. Its content is made as it is asked for, a few milliseconds of work a piece, and may be asked for again. */
export interface OutFile {
  readonly name: string;
  readonly mediaType: string;
  readonly content:
    | { readonly kind: "chunks"; chunks(): Iterable<Chunk> }
    /** A SQLite database: a door with SQLite runs these. */
    | { readonly kind: "database"; statements(): Iterable<Statement> };
}

/** What a file of these layers is called up to its ending: as its only layer, "plan" of several. */
export function stemOf(layers: readonly Layer[]): string {
  const [first] = layers;
  return layers.length === 1 && first !== undefined ? first.kind : "plan";
}

/** Features a piece of a file is made of at most, so that a page can do something else in between. */
export const featuresAChunk = 500;

/** Whether a layer's shape is one of these. */
export function ofShape(layers: readonly Layer[], shape: LayerGeometry["shape"]): readonly Layer[] {
  return layers.filter((layer) => layer.shape === shape);
}
