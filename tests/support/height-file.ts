/** An invented height file: what a GeoTIFF says of itself, and its heights. */
export interface HeightFile {
  readonly width: number;
  readonly height: number;
  /** Side of a cell and the corner of the north-westernmost one, in the units of the coordinate system. */
  readonly cell: number;
  readonly west: number;
  readonly north: number;
  /** EPSG code; 4326 is longitude and latitude; null writes none. */
  readonly epsg: number | null;
  /** EPSG code of the unit of the heights (9001 metre, 9002 foot, 9003 US survey foot); null writes none. */
  readonly verticalUnit: number | null;
  readonly noData: number | null;
  /** Height of the cell in a column and a line, counted from the north-west. */
  readonly heightAt: (column: number, line: number) => number;
}

const rowsPerStrip = 16;

/**
 * A GeoTIFF of 32-bit heights in uncompressed strips, pixels being areas: TIFF 6.0 (Adobe, 1992), tags and keys of OGC 19-008r4. Lines are
 * written one strip after another, so that a large one is never twice in memory.
 */
export function heightFile(file: HeightFile): Buffer {
  const { width, height } = file;
  const strips = Math.ceil(height / rowsPerStrip);
  const isGeographic = file.epsg === 4326;
  const keys = [
    [1024, isGeographic ? 2 : 1],
    [1025, 1],
    ...(file.epsg === null ? [] : [[isGeographic ? 2048 : 3072, file.epsg]]),
    ...(file.verticalUnit === null ? [] : [[4099, file.verticalUnit]]),
  ];
  const shorts = (numbers: readonly number[]) => Buffer.from(Uint16Array.from(numbers).buffer);
  const longs = (numbers: readonly number[]) => Buffer.from(Uint32Array.from(numbers).buffer);
  const doubles = (numbers: readonly number[]) => Buffer.from(Float64Array.from(numbers).buffer);
  const stripBytes = (strip: number) => Math.min(rowsPerStrip, height - strip * rowsPerStrip) * width * 4;
  const counts = Array.from({ length: strips }, (_, strip) => stripBytes(strip));
  const directory = [1, 1, 0, keys.length, ...keys.flatMap(([key = 0, value = 0]) => [key, 0, 1, value])];
  type Entry = { readonly tag: number; readonly type: number; readonly count: number; data: Buffer };
  const entries: Entry[] = [
    { tag: 256, type: 4, count: 1, data: longs([width]) },
    { tag: 257, type: 4, count: 1, data: longs([height]) },
    { tag: 258, type: 3, count: 1, data: shorts([32]) },
    { tag: 259, type: 3, count: 1, data: shorts([1]) },
    { tag: 262, type: 3, count: 1, data: shorts([1]) },
    { tag: 273, type: 4, count: strips, data: longs(counts) },
    { tag: 277, type: 3, count: 1, data: shorts([1]) },
    { tag: 278, type: 4, count: 1, data: longs([rowsPerStrip]) },
    { tag: 279, type: 4, count: strips, data: longs(counts) },
    { tag: 284, type: 3, count: 1, data: shorts([1]) },
    { tag: 339, type: 3, count: 1, data: shorts([3]) },
    { tag: 33550, type: 12, count: 3, data: doubles([file.cell, file.cell, 0]) },
    { tag: 33922, type: 12, count: 6, data: doubles([0, 0, 0, file.west, file.north, 0]) },
    { tag: 34735, type: 3, count: directory.length, data: shorts(directory) },
  ];
  if (file.noData !== null) {
    const written = Buffer.from(`${file.noData}\0`, "latin1");
    entries.push({ tag: 42113, type: 2, count: written.length, data: written });
  }
  const tableBytes = 2 + 12 * entries.length + 4;
  let at = 8 + tableBytes;
  const places = entries.map(({ data }) => {
    if (data.length <= 4) return 0;
    const place = at;
    at += data.length + (data.length % 2);
    return place;
  });
  const begins: number[] = [];
  for (const bytes of counts) {
    begins.push(at);
    at += bytes;
  }
  const offsets = entries.find(({ tag }) => tag === 273);
  if (offsets) offsets.data = longs(begins);
  const whole = Buffer.alloc(at);
  whole.write("II", 0, "latin1");
  whole.writeUInt16LE(42, 2);
  whole.writeUInt32LE(8, 4);
  whole.writeUInt16LE(entries.length, 8);
  for (const [i, { tag, type, count, data }] of entries.entries()) {
    const entry = 10 + 12 * i;
    whole.writeUInt16LE(tag, entry);
    whole.writeUInt16LE(type, entry + 2);
    whole.writeUInt32LE(count, entry + 4);
    const place = places[i] ?? 0;
    if (place === 0) data.copy(whole, entry + 8);
    else {
      whole.writeUInt32LE(place, entry + 8);
      data.copy(whole, place);
    }
  }
  const first = begins[0] ?? at;
  for (let line = 0; line < height; line++) {
    for (let column = 0; column < width; column++) {
      whole.writeFloatLE(file.heightAt(column, line), first + 4 * (line * width + column));
    }
  }
  return whole;
}
