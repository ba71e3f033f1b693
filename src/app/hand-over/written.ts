import type { OutFile } from "../../core/exchange/format.ts";
import { type ZipEntry, zipped } from "../../core/exchange/zip.ts";
import { inTurns, type Turns } from "./in-turns.ts";

/** How far the writing is. */
export interface Progress {
  /** The file that is being written, and its number from 1. */
  readonly file: string;
  readonly number: number;
  readonly files: number;
  readonly bytes: number;
}

/** What there is to hand to the person. */
export interface WrittenFile {
  readonly name: string;
  readonly blob: Blob;
}

interface Writing {
  /** Beginning of names: what the project is called. */
  readonly stem: string;
  /** Several files leave as `<stem>-<archive>.zip`. */
  readonly archive: string;
  /** ISO 8601; the date of what is in the archive. */
  readonly writtenAt: string;
  /** Runs the statements of a database; rejects when it is stopped. */
  readonly databaseBytes: (file: OutFile, signal: AbortSignal) => Promise<Uint8Array>;
  readonly tell: (progress: Progress) => void;
}

/** Of a file that is there as a whole, so much is packed in one go. */
const slice_bytes = 65_536;

/** The files as one to download, written while the page goes on answering: a zip where there are several. Null when it was stopped. */
export async function written(files: readonly OutFile[], writing: Writing, turns: Turns): Promise<WrittenFile | null> {
  const { stem, archive, writtenAt, databaseBytes, tell } = writing;
  let begun: Progress = { file: "", number: 0, files: files.length, bytes: 0 };
  const entries: ZipEntry[] = [];
  for (const [i, file] of files.entries()) {
    const { name, content } = file;
    const begin = (): void => {
      begun = { ...begun, file: name, number: i + 1 };
      tell(begun);
    };
    if (content.kind === "chunks") {
      entries.push({ name, chunks: () => after(begin, content.chunks()) });
      continue;
    }
    begin();
    await turns.breath();
    const bytes = await databaseBytes(file, turns.signal);
    if (turns.signal.aborted) return null;
    entries.push({ name, chunks: () => after(begin, slices(bytes)) });
  }
  const [only] = files;
  const isOne = files.length === 1 && only !== undefined;
  const chunks = isOne ? (entries[0]?.chunks() ?? []) : zipped(entries, writtenAt);
  const blob = await blobOf(chunks, isOne ? only.mediaType : "application/zip", turns, (bytes) => {
    begun = { ...begun, bytes };
    tell(begun);
  });
  if (blob === null) return null;
  return { name: isOne ? `${stem}-${only.name}` : `${stem}-${archive}.zip`, blob };
}

async function blobOf(
  chunks: Iterable<string | Uint8Array>,
  type: string,
  turns: Turns,
  wrote: (bytes: number) => void,
): Promise<Blob | null> {
  const turnsWork: Blob[] = [];
  let pieces: BlobPart[] = [];
  let bytes = 0;
  const done = await inTurns(
    chunks[Symbol.iterator](),
    turns,
    // A copy of its own buffer: a piece may be a view into one that is used again.
    (chunk) => pieces.push(typeof chunk === "string" ? chunk : chunk.slice()),
    () => {
      // A blob a turn: making one of everything at the end would hold the page.
      const blob = new Blob(pieces);
      pieces = [];
      bytes += blob.size;
      turnsWork.push(blob);
      wrote(bytes);
    },
  );
  return done && new Blob(turnsWork, { type });
}

function* after<Piece>(begin: () => void, pieces: Iterable<Piece>): Generator<Piece, undefined, undefined> {
  begin();
  yield* pieces;
}

function* slices(bytes: Uint8Array): Generator<Uint8Array, undefined, undefined> {
  for (let at = 0; at < bytes.length; at += slice_bytes) yield bytes.subarray(at, at + slice_bytes);
}
