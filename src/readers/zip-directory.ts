import { windows1252 } from "./windows-1252.ts";
/** What an archive says of one of its files. */
export interface ZipRecord {
  /** With folders, as the archive has it. */
  readonly path: string;
  readonly isLocked: boolean;
  /** 0: as it is, 8: DEFLATE. */
  readonly method: number;
  readonly checksum: number;
  readonly packed_bytes: number;
  readonly unpacked_bytes: number;
  /** Where its bytes begin, packed. */
  readonly from: number;
}

/** The end record is 22 bytes and a comment of at most 65 535. */
const endRecord_bytes = 22;
const longestComment_bytes = 65_535;
const unknown32 = 0xff_ff_ff_ff;

/**
 * The directory at the end of a zip archive, in its order, or half a sentence that says why it cannot be read. More than `mostEntries` are counted, not
 * listed. Source: PKWARE APPNOTE.TXT 6.3, sections 4.3.7, 4.3.12 and 4.3.16.
 */
export function zipDirectory(
  bytes: Uint8Array,
  mostEntries: number,
): { readonly count: number; readonly records: readonly ZipRecord[] } | string {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endRecord(view);
  if (end === null) return "it has no list of what is in it, so it is cut off or no zip archive";
  const count = view.getUint16(end + 10, true);
  const size = view.getUint32(end + 12, true);
  if (count === 0xff_ff || size === unknown32)
    return "it is in the form for archives of more than 4 GB or 65 534 files";
  if (count > mostEntries) return { count, records: [] };
  // What stands before the archive moves all its places alike.
  const begin = end - size;
  const before = begin - view.getUint32(end + 16, true);
  const records: ZipRecord[] = [];
  let at = begin;
  for (let i = 0; i < count; i++) {
    if (at < 0 || at + 46 > end || view.getUint32(at, true) !== 0x02_01_4b_50)
      return "the list of what is in it is damaged";
    const nameLength = view.getUint16(at + 28, true);
    const extraLength = view.getUint16(at + 30, true);
    const nameEnd = at + 46 + nameLength;
    if (nameEnd + extraLength > end) return "the list of what is in it is damaged";
    const sizes = sizesOf(view, at, nameEnd, extraLength);
    const local = sizes.offset + before;
    if (local < 0 || local + 30 > begin || view.getUint32(local, true) !== 0x04_03_4b_50) {
      return "what its list names is not where the list says, so it is damaged or cut off";
    }
    const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    if (from + sizes.packed_bytes > begin) return "it is cut off";
    const flags = view.getUint16(at + 8, true);
    records.push({
      path: pathOf(bytes.subarray(at + 46, nameEnd)),
      isLocked: (flags & 1) !== 0,
      method: view.getUint16(at + 10, true),
      checksum: view.getUint32(at + 16, true),
      packed_bytes: sizes.packed_bytes,
      unpacked_bytes: sizes.unpacked_bytes,
      from,
    });
    at = nameEnd + extraLength + view.getUint16(at + 32, true);
  }
  return { count, records };
}

/** Where the record at the end of the archive begins; null without one. */
function endRecord(view: DataView): number | null {
  const last = view.byteLength - endRecord_bytes;
  for (let at = last; at >= Math.max(0, last - longestComment_bytes); at--) {
    if (view.getUint32(at, true) === 0x06_05_4b_50 && view.getUint16(at + 20, true) === last - at) return at;
  }
  return null;
}

/** Sizes and place; numbers of 64 bits stand in an extra field, in this order, where those of 32 are all ones. */
function sizesOf(view: DataView, at: number, extra: number, extraLength: number) {
  const numbers = [view.getUint32(at + 24, true), view.getUint32(at + 20, true), view.getUint32(at + 42, true)];
  for (let field = extra; field + 4 <= extra + extraLength; field += 4 + view.getUint16(field + 2, true)) {
    if (view.getUint16(field, true) !== 1) continue;
    let next = field + 4;
    for (const [i, number] of numbers.entries()) {
      if (number !== unknown32 || next + 8 > extra + extraLength) continue;
      numbers[i] = Number(view.getBigUint64(next, true));
      next += 8;
    }
  }
  const [unpacked_bytes = 0, packed_bytes = 0, offset = 0] = numbers;
  return { unpacked_bytes, packed_bytes, offset };
}

/** Names are UTF-8 where they can be; old archivers wrote bytes of some other set, which are kept letter by letter. */
function pathOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return windows1252(bytes);
  }
}
