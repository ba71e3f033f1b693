import { Inflate } from "fflate";
import { failure, type Outcome, success } from "../core/outcome.ts";
import { crc32 } from "./crc32.ts";
import { archiveTooLarge, brokenFile } from "./file-findings.ts";
import { type ZipRecord, zipDirectory } from "./zip-directory.ts";

/** One file inside an archive. */
export interface UnzippedFile {
  /** Without folders: where an archive wants a file to be is of no meaning here. */
  readonly name: string;
  /** As the archive says, for telling files of one name apart. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** What is unpacked at most, whatever an archive claims. */
export const mostUnpacked_bytes = 200e6;
export const mostEntries = 2000;

/** Bytes that are unpacked at a time: they cannot come to more than 17 MB. */
const piece_bytes = 16_384;
/** DEFLATE makes at most 1032 bytes of one. */
const mostInflation_ratio = 1032;
const title = "a zip archive";

/**
 * The wanted files of a zip archive, in its order; folders, and what some archivers put beside each file, are left out. What is unpacked is
 * counted while it is, so that an archive that claims less than it holds is found out. Findings: `readers/broken-file`,
 * `readers/archive-too-large`.
 */
export function unzipped(
  bytes: Uint8Array,
  name: string,
  isWanted: (path: string) => boolean,
  most_bytes: number = mostUnpacked_bytes,
): Outcome<readonly UnzippedFile[]> {
  const directory = zipDirectory(bytes, mostEntries);
  if (typeof directory === "string") return failure([brokenFile(name, title, directory)]);
  const tooLarge = () => failure([archiveTooLarge(name, most_bytes, mostEntries)]);
  if (directory.count > mostEntries) return tooLarge();
  const wanted = directory.records.filter(({ path }) => !isBeside(path) && isWanted(path));
  if (wanted.reduce((sum, { unpacked_bytes }) => sum + unpacked_bytes, 0) > most_bytes) return tooLarge();
  const files: UnzippedFile[] = [];
  for (const record of wanted) {
    const content = contentOf(bytes, record);
    if (typeof content === "string") return failure([brokenFile(name, title, content)]);
    files.push({ name: lastName(record.path), path: record.path, bytes: content });
  }
  return success(files);
}

/** A path's last name: neither folders nor drives are followed. */
function lastName(path: string): string {
  return path.split(/[/\\]/).at(-1) ?? path;
}

function isBeside(path: string): boolean {
  const name = lastName(path);
  return name === "" || name.startsWith("._") || path.startsWith("__MACOSX/");
}

/** A file of the archive, or half a sentence that says why it cannot be had. */
function contentOf(bytes: Uint8Array, record: ZipRecord): Uint8Array | string {
  const { path, isLocked, method, checksum, packed_bytes, unpacked_bytes, from } = record;
  const called = lastName(path).slice(0, 60);
  const packed = bytes.subarray(from, from + packed_bytes);
  if (isLocked) return `${called} in it is locked with a password`;
  if (method !== 0 && method !== 8) return `${called} in it is packed in a way that is not read here`;
  if (unpacked_bytes > packed_bytes * mostInflation_ratio + 64) return `it says of ${called} what cannot be`;
  const content = method === 0 ? packed.slice() : inflated(packed, unpacked_bytes);
  const isWhole = content !== null && content.length === unpacked_bytes && crc32(content) === checksum;
  return isWhole ? content : `${called} in it is damaged`;
}

/** Exactly so many bytes, or null when there are more, fewer, or none. */
function inflated(packed: Uint8Array, size: number): Uint8Array | null {
  const whole = new Uint8Array(size);
  let filled = 0;
  let isOver = false;
  const inflate = new Inflate((piece) => {
    if (filled + piece.length > size) isOver = true;
    else whole.set(piece, filled);
    filled += piece.length;
  });
  try {
    for (let at = 0; at < packed.length && !isOver; at += piece_bytes) {
      inflate.push(packed.subarray(at, at + piece_bytes), at + piece_bytes >= packed.length);
    }
  } catch {
    return null;
  }
  return isOver || filled !== size ? null : whole;
}
