import { strToU8, Zip, ZipDeflate } from "fflate";
import type { Chunk } from "./format.ts";

/** One file inside a zip. */
export interface ZipEntry {
  /** With `/` between folders. */
  readonly name: string;
  chunks(): Iterable<Chunk>;
}

/** Fast packing: files of a quarter of a million points are a matter of a second, a tenth larger than packed as tightly as can be. */
const level = 1;
const nothing = new Uint8Array(0);

/** A zip archive, piece by piece as its entries are; `writtenAt` (ISO 8601) is the date of every entry, so that the same plan gives the same bytes. */
export function* zipped(entries: readonly ZipEntry[], writtenAt: string): Generator<Uint8Array> {
  let ready: Uint8Array[] = [];
  const zip = new Zip((problem, piece) => {
    if (problem !== null) throw problem;
    ready.push(piece);
  });
  const mtime = writtenAt.slice(0, 19);
  for (const { name, chunks } of entries) {
    const entry = new ZipDeflate(name, { level });
    entry.mtime = mtime;
    zip.add(entry);
    for (const chunk of chunks()) {
      entry.push(typeof chunk === "string" ? strToU8(chunk) : chunk);
      // Packing may hold back for a while; whoever asks for pieces gets his turn all the same.
      if (ready.length === 0) yield nothing;
      yield* ready;
      ready = [];
    }
    entry.push(nothing, true);
    yield* ready;
    ready = [];
  }
  zip.end();
  yield* ready;
}
