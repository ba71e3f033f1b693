import { mostRecords } from "../../most-found.ts";

/*
 * ESRI Shapefile Technical Description, July 1998: header page 4, records page 6 to 16, index page 24; lengths are in words of two bytes.
 */
const fileCode = 9994;
const header_bytes = 100;
const recordHead_bytes = 8;

/** Where the content of one record stands. */
export interface ShapeRecord {
  readonly from: number;
  readonly length: number;
}

/** The records of a .shp, in the order of the table. */
export interface ShapeFile {
  readonly view: DataView;
  readonly records: readonly ShapeRecord[];
  /** West, south, east and north of all, as the file says. */
  readonly box: readonly [number, number, number, number];
  /** Whether there was an index that could not be used. */
  readonly isIndexUnfit: boolean;
}

/** The records of a .shp by its index, which leaves out what was taken away later; else one after another. Half a sentence when it is none, or cut off. */
export function shapeFile(bytes: Uint8Array, index: Uint8Array | null): ShapeFile | string {
  if (bytes.length < header_bytes) return "it is cut off";
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.getInt32(0) !== fileCode) return "it does not begin like one";
  const stated_bytes = 2 * view.getInt32(24);
  const indexed = index === null ? null : recordsByIndex(view, index);
  const records = indexed ?? recordsInTurn(view, stated_bytes);
  if (typeof records === "string") return records;
  const number = (at: number): number => view.getFloat64(at, true);
  return {
    view,
    records,
    box: [number(36), number(44), number(52), number(60)],
    isIndexUnfit: index !== null && indexed === null,
  };
}

/** Null when the index leads nowhere, or to more than there is. */
function recordsByIndex(view: DataView, index: Uint8Array): readonly ShapeRecord[] | null {
  const count = Math.floor((index.length - header_bytes) / 8);
  if (index.length < header_bytes || (index.length - header_bytes) % 8 !== 0 || count > mostRecords + 1) return null;
  const places = new DataView(index.buffer, index.byteOffset, index.byteLength);
  if (places.getInt32(0) !== fileCode) return null;
  const records: ShapeRecord[] = [];
  let together = 0;
  for (let at = header_bytes; at < index.length; at += 8) {
    const from = 2 * places.getInt32(at) + recordHead_bytes;
    if (from < header_bytes + recordHead_bytes || from > view.byteLength) return null;
    // The record's own length holds; both are the same in a sound file.
    const length = 2 * view.getInt32(from - 4);
    if (length < 4 || length !== 2 * places.getInt32(at + 4) || from + length > view.byteLength) return null;
    together += length;
    records.push({ from, length });
  }
  // Many entries that lead to one place would unpack a small file to a large one.
  return together > view.byteLength ? null : records;
}

function recordsInTurn(view: DataView, stated_bytes: number): readonly ShapeRecord[] | string {
  const records: ShapeRecord[] = [];
  const end = stated_bytes >= header_bytes && stated_bytes < view.byteLength ? stated_bytes : view.byteLength;
  let at = header_bytes;
  while (at + recordHead_bytes <= end) {
    const length = 2 * view.getInt32(at + 4);
    const from = at + recordHead_bytes;
    if (length < 4 || from + length > view.byteLength)
      return `shape ${records.length + 1} ends behind the end of the file`;
    records.push({ from, length });
    if (records.length > mostRecords) return records;
    at = from + length;
  }
  if (at < stated_bytes || at < end) return `it is cut off after shape ${records.length}`;
  return records;
}
